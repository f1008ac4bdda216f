/** What is put into the questions of a crowd, by the number of the question. */

export const pick = (list: readonly string[], run: number): string => list[run % list.length] ?? '';

const PARTIALS = [
  'n',
  'ng',
  'ngc 7',
  'NGC 73',
  'm',
  'm 1',
  'alph',
  'bet',
  'whirl',
  'andromida',
  '61 c',
  'sat',
  'ic 4',
  'zz',
];
const PLACES = ['el', 'ely', 'cor', 'hobart', 'spring', 'york'];
const siteOf = (run: number): string => `${((run * 7) % 130) - 65},${((run * 11) % 360) - 180}`;

/** What is put into the questions, by the number of the question. */
export interface Wording {
  readonly partial: (run: number) => string;
  readonly place: (run: number) => string;
  readonly site: (run: number) => string;
}
/** As on an evening, when many type the same. */
export const ALIKE: Wording = {
  partial: (run) => pick(PARTIALS, run),
  place: (run) => pick(PLACES, run),
  site: siteOf,
};
const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
/** No place twice in a hundred thousand questions and seldom the same letters, so that next to nothing of an answer is remembered. */
export const FRESH: Wording = {
  partial: (run) =>
    `${pick(['ngc ', 'ngc', 'ic ', 'hip '], run)}${((run * 7919) % 999_983) + 1}`.slice(0, 3 + (run % 5)),
  place: (run) => [1, 26, 676].map((by) => LETTERS[Math.floor((run * 7919) / by) % 26] ?? '').join(''),
  site: (run) =>
    `${(((run * 7919) % 130_000) / 1000 - 65).toFixed(3)},${(((run * 104_729) % 360_000) / 1000 - 180).toFixed(3)}`,
};
