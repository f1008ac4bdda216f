/** A plain yes or no, before all else: is it up then, can it be seen, is it too late for it, does it get so high, is it bright. */
import { bright, circumpolar, ever, highOrLow, moonlight, reaches } from './whether-figures.js';
import type { SaidWhether, WhetherQuestion } from './whether-question.js';
import { hoursAround, seen } from './whether-seen.js';
import { down, upThen } from './whether-stand.js';

export const WHETHER = [
  'seen',
  'up',
  'down',
  'late',
  'early',
  'reaches',
  'high',
  'low',
  'bright',
  'circumpolar',
  'sets-here',
  'moonlight',
  'ever',
] as const;
export type Whether = (typeof WHETHER)[number];
const ALL: readonly string[] = WHETHER;
export const isWhether = (first: string | undefined): first is Whether => first !== undefined && ALL.includes(first);

const everSeen = (question: WhetherQuestion): SaidWhether => ever(question) ?? seen(question);

/** Seen at an hour, where one is said and some hour of that night would help; else in the night. */
const seenThen = (question: WhetherQuestion): SaidWhether =>
  question.utcMs === null || isHopeless(question) ? seen(question) : upThen(question);

export const whetherWords = (
  first: Whether,
  question: WhetherQuestion,
  aboveWords: (aboveDeg: number) => string,
): SaidWhether => {
  switch (first) {
    case 'seen':
      return seenThen(question);
    case 'up':
      return upThen(question);
    case 'down':
      return down(question);
    case 'late':
    case 'early':
      return hoursAround(question, first);
    case 'reaches':
      return reaches(question, aboveWords);
    case 'high':
    case 'low':
      return highOrLow(question, first);
    case 'bright':
      return bright(question);
    case 'circumpolar':
    case 'sets-here':
      return circumpolar(question, first);
    case 'moonlight':
      return moonlight(question);
    case 'ever':
      return everSeen(question);
  }
};

/** No hour of that night helps. */
const isHopeless = ({ found: { verdict: found } }: WhetherQuestion): boolean =>
  ['too-faint', 'washed-out', 'lost-in-sun', 'never-up'].includes(found);
