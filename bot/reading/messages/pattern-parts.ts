/**
 * What a pattern tells before it is run: the words a text must hold for it to be worth trying, how far it can reach, and the
 * pattern as a machine may have read it from a picture (0 for O, 1 for l, rn for m).
 */
import { writeTree, type Sequence, type Sign } from './pattern-tree.js';
import { tableOf } from '../../ground/table-of.js';

/** What machines take for each other in screen type, both ways. */
const LOOK_ALIKES = tableOf({
  o: '[o0]',
  '0': '[0o]',
  l: '[l1i|!]',
  i: '[i1l|!]',
  '1': '[1li|!]',
  '5': '[5s]',
  s: '[s5]',
  '8': '[8b]',
  b: '[b8]',
  m: '(?:m|rn)',
  ' ': ' ?',
});
const BLURRED_ESCAPE = tableOf({ '\\d': '[\\dolisb]', '\\b': '' });

const blurredSign = ({ raw, literal }: Sign): string =>
  BLURRED_ESCAPE.get(raw) ?? (literal === null ? raw : (LOOK_ALIKES.get(literal.toLowerCase()) ?? raw));

export const blurred = (options: readonly Sequence[]): string =>
  writeTree(options, blurredSign, ({ raw }, written) => {
    // A blurred place has gone; a blurred blank may already be missing and takes no second sign.
    if (written === '' || raw === '') return written;
    return written === ' ?' ? ` ${raw}` : written + raw;
  });

/** Texts and words brought to one form in which look-alikes are equal. */
export const skeleton = (text: string): string =>
  text
    .toLowerCase()
    .replace(/rn/gu, 'm')
    .replace(/[1i|!]/gu, 'l')
    .replace(/0/gu, 'o')
    .replace(/5/gu, 's')
    .replace(/8/gu, 'b')
    .replace(/ /gu, '');

type Needs = readonly string[] | null;

const shortest = (needs: Needs): number => (needs === null ? 0 : Math.min(...needs.map((need) => need.length)));
const better = (a: Needs, b: Needs): Needs => (shortest(b) > shortest(a) ? b : a);

/** Of a run of letters with some that may be missing, so many forms at most. */
const MOST_FORMS = 4;
const NO_RUN: readonly string[] = [''];

/** The letters of a class of a few ("[ÿþ]"); null: it has a range, many, or an escape. */
const lettersOf = (raw: string): readonly string[] | null =>
  /^\[[^\]\\^-]{1,4}\]$/u.test(raw) ? Array.from(raw.slice(1, -1)) : null;

const needsOfSequence = (items: Sequence): Needs => {
  let needs: Needs = null;
  /** What the run of letters in hand may be: "wi-?f" is "wi-f" or "wif". */
  let runs = NO_RUN;
  const endRun = (): void => {
    if (!runs.includes(''))
      needs = better(
        needs,
        runs.map((run) => run.toLowerCase()),
      );
    runs = NO_RUN;
  };
  for (const { node, repeat } of items) {
    const letter = node.kind === 'sign' ? node.literal : null;
    if (letter !== null && repeat.raw === '') runs = runs.map((run) => run + letter);
    else if (letter !== null && repeat.raw === '?' && runs !== NO_RUN && 2 * runs.length <= MOST_FORMS)
      runs = runs.flatMap((run) => [run, run + letter]);
    else {
      endRun();
      if (node.kind === 'group' && repeat.least > 0) needs = better(needs, wordsNeededBy(node.options));
      else if (node.kind === 'sign' && repeat.least > 0) needs = better(needs, lettersOf(node.raw));
    }
  }
  endRun();
  return needs;
};

/** Lower case; a text without any of these cannot match. Null: there are no such words. */
export const wordsNeededBy = (options: readonly Sequence[]): Needs => {
  const all = options.map(needsOfSequence);
  return all.every((needs) => needs !== null) ? all.flat() : null;
};

/** A short word is worth looking for where few texts hold it: it has a sign that no plain text has. */
const isTelling = (need: string): boolean => need.length >= 3 || /[^\w\s.,:;!?'"()/-]/u.test(need);

/** Lower case; a text without any of these cannot match. Null: no such words that few texts hold. */
export const needsOf = (options: readonly Sequence[]): Needs => {
  const needs = wordsNeededBy(options);
  return needs?.every(isTelling) === true ? needs : null;
};

/** The most characters that a match can have. */
export const reachOf = (options: readonly Sequence[]): number =>
  Math.max(
    ...options.map((items) =>
      items.reduce((sum, { node, repeat }) => {
        if (node.kind === 'group') return sum + repeat.most * reachOf(node.options);
        return sum + (node.place ? 0 : repeat.most);
      }, 0),
    ),
  );
