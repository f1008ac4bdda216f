/** Meteor showers: the great ones to come, or one that was asked about. */
import { showersHere, type Shower } from '../../ahead/showers.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { isAbout, type Question, type Section } from './ahead-question.js';
import { radiantWords, showerFact } from './ahead-words.js';

/** Those that one goes out for; common practice, no source. */
const LEAST_RATE = 10;
const MOST_SHOWERS = 5;

const lastWord = (name: string): string => name.split(' ').at(-1)?.toLowerCase() ?? '';

/** Its code only in full: "quasars" are no Quadrantids. */
const isAboutShower = (question: Question, { name, code }: Shower): boolean =>
  isAbout(question, name) || question.about === code.toLowerCase();

export const showers = (question: Question): Section => {
  const { observer, zone, span, kind } = question;
  const all = showersHere(observer, span).filter(({ shower }) => isAboutShower(question, shower));
  const isOne = question.about !== null;
  const great = all.filter(({ shower }) => isOne || shower.zenithalHourlyRate >= LEAST_RATE);
  const found = isOne || kind === 'all' ? great : great.slice(0, MOST_SHOWERS);
  const others = all.length - found.length;
  return {
    notes: [
      ...(isOne ? found.map(radiantWords) : []),
      ...(kind === 'showers' && found.length > 0
        ? [
            `Rates are for a dark sky.${others > 0 ? ` ${others} more in that time: name one, such as about:${lastWord(all.find((here) => !found.includes(here))?.shower.name ?? '')}.` : ''}`,
          ]
        : []),
    ],
    facts: found.map((here) => showerFact(here, zone, span.startUtcMs)),
    times: found.map(({ bestUtcMs }) => bestUtcMs),
    data: found.map(({ shower, maximumUtcMs, bestUtcMs, radiantAltitudeDeg }) => ({
      what: 'shower',
      code: shower.code,
      name: shower.name,
      maximumUtc: isoUtc(maximumUtcMs),
      bestUtc: isoUtc(bestUtcMs),
      radiantAltitudeDeg: rounded(radiantAltitudeDeg, 1),
    })),
  };
};
