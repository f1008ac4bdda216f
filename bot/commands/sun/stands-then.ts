/** Where the target itself stands at the hour asked about, and how bright the sky is, beside what the Sun does. */
import { compassWord, degrees, direction } from '../../reply/wording.js';
import type { Fact, Reply } from '../../reply/reply.js';
import type { SunSafety } from '../../sky/sun-safety.js';
import type { Place } from '../../sky/types.js';
import type { Question } from './sun-summary.js';

/** Lower than this it is no good sight whatever the Sun does; common practice, no source. */
const LEAST_DEG = 5;
const CIVIL_DEG = -6;
const NAUTICAL_DEG = -12;

const isOfSun = ({ target }: Question): boolean => target.kind === 'sun';

export const targetFact = (question: Question, { apparentAltitudeDeg, azimuthDeg }: Place): readonly Fact[] =>
  isOfSun(question)
    ? []
    : [
        {
          label: question.target.name,
          value:
            apparentAltitudeDeg > 0
              ? `${degrees(apparentAltitudeDeg)} high in the ${direction(azimuthDeg)}`
              : `${degrees(-apparentAltitudeDeg)} below the horizon`,
        },
      ];

/** "Jupiter stands only 2° high in the west." where it is low; "The sky is bright: …" where the Sun is just down. Empty where neither is worth a word. */
export const standsWords = (
  question: Question,
  { apparentAltitudeDeg, azimuthDeg }: Place,
  { isSunUp, sunAltitudeDeg }: SunSafety,
): readonly string[] => {
  if (isOfSun(question)) return [];
  const { name } = question.target;
  const down = degrees(-sunAltitudeDeg, 1);
  const sky =
    isSunUp || sunAltitudeDeg < NAUTICAL_DEG
      ? []
      : [
          sunAltitudeDeg > CIVIL_DEG
            ? `The Sun is only ${down} down: bright twilight, for the brightest alone.`
            : `The Sun is ${down} down: twilight.`,
        ];
  if (apparentAltitudeDeg <= 0) return sky;
  const only = apparentAltitudeDeg < LEAST_DEG ? 'only ' : '';
  return [...sky, `${name} stands ${only}${degrees(apparentAltitudeDeg)} high in the ${compassWord(azimuthDeg)} then.`];
};

/** Nothing is good about what stands in the murk, or in bright twilight. */
export const levelThen = (
  level: Reply['level'],
  question: Question,
  { apparentAltitudeDeg }: Place,
  { isSunUp, sunAltitudeDeg }: SunSafety,
): Reply['level'] => {
  const isPoor = apparentAltitudeDeg < LEAST_DEG || (!isSunUp && sunAltitudeDeg > CIVIL_DEG);
  return level === 'good' && isPoor && !isOfSun(question) ? 'info' : level;
};
