/** What is below the horizon at the hour asked for, said before all clearances: where it goes, and where it is said to stand. */
import { MS_PER_DAY } from '../../ground/durations.js';
import type { Level } from '../../reply/reply.js';
import { degrees } from '../../reply/wording.js';
import { placeOf } from '../../sky/place.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime } from '../../times/index.js';
import { settingOf } from '../asking/sets-soon.js';

export interface StandsThen {
  readonly name: string;
  readonly body: SkyBody;
}

interface Then {
  readonly observer: Observer;
  readonly zone: string;
  readonly utcMs: UtcMs;
}

const downDeg = ({ body }: StandsThen, { observer, utcMs }: Then): number | null => {
  const { apparentAltitudeDeg, altitudeDeg } = placeOf(body, observer, utcMs);
  return apparentAltitudeDeg > 0 ? null : -altitudeDeg;
};

/** "The Moon" as a sentence begins with it. */
const begun = (name: string): string => (name === 'Moon' ? 'The Moon' : name);

const HALF_DAY_MS = MS_PER_DAY / 2;

const risesWords = ({ body }: StandsThen, { observer, utcMs, zone }: Then): string => {
  const { riseUtcMs } = riseTransitSet(body, observer, utcMs, utcMs + MS_PER_DAY);
  if (riseUtcMs === null) return '';
  const format = riseUtcMs - utcMs < HALF_DAY_MS ? formatLocalTime : formatLocalDateTime;
  return `; it rises at ${format(riseUtcMs, zone)}`;
};

export interface DownFirst {
  readonly isTargetDown: boolean;
  /** A sentence for each that is down or sets within the hour; none where both are well up. */
  readonly words: readonly string[];
  readonly level: Level;
}

export const NOTHING_DOWN: DownFirst = { isTargetDown: false, words: [], level: 'good' };

/** "Saturn sets at 02:17 GMT, in 47 min": what is soon gone is said before all clearances as well. */
const setsSoonWords = (target: StandsThen, then: Then): readonly string[] => {
  const setting = settingOf(target.body, then);
  return setting?.isSoon === true ? [`${begun(target.name)} sets at ${setting.words}.`] : [];
};

export const downFirst = (target: StandsThen, start: StandsThen | null, then: Then): DownFirst => {
  const targetDeg = downDeg(target, then);
  const startDeg = start === null ? null : downDeg(start, then);
  const ofTarget =
    targetDeg === null
      ? setsSoonWords(target, then)
      : [
          `${begun(target.name)} is ${degrees(targetDeg)} below the horizon then: do not send the tube there${risesWords(target, then)}.`,
        ];
  const ofStart =
    start === null || startDeg === null
      ? []
      : [
          `${begun(start.name)} is ${degrees(startDeg)} below the horizon then, so the tube cannot be on it: say where it stands.`,
        ];
  const words = [...ofTarget, ...ofStart];
  return { isTargetDown: targetDeg !== null, words, level: words.length > 0 ? 'caution' : 'good' };
};
