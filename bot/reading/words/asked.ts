/** What rules ask of a word again and again, each a bit (31 have room), so that it is told of a word, or of all words of a sentence, at once. */

const ENTRIES = [
  'small',
  'not',
  'turn',
  'asker',
  'condition',
  'pronoun',
  'mount',
  'computer',
  'port',
  'program',
  'say',
  'stranger',
  'hearsay',
  'guess',
  'wish',
  'ended',
  'solved',
  'past',
  'plan',
  'bare-kind',
  'holds-always',
  'as-a-rule',
  'approved',
  'all-well',
  'moment',
  'other-gear',
] as const;
const OTHERS = ['thing', 'agrees', 'right', 'why', 'unmeant'] as const;

type Asked = (typeof ENTRIES)[number] | (typeof OTHERS)[number];

/**
 * Entries of words.yaml; `thing`: one of those that name a thing; `agrees`, `right`: words that call a thing good by themselves;
 * `unmeant`: quoted from a guide, or irony.
 */
export const IS = Object.fromEntries([...ENTRIES, ...OTHERS].map((what, i) => [what, 1 << i])) as Readonly<
  Record<Asked, number>
>;

const THINGS: readonly string[] = [
  'mount',
  'computer',
  'cable',
  'adapter',
  'handset',
  'program',
  'pronoun',
  'other-gear',
  'power',
  'light',
];

const bitOfEntry = new Map<string, number>(ENTRIES.map((id) => [id, IS[id]]));
// What the rest of life is about is said of as little as other gear is.
bitOfEntry.set('other-things', IS['other-gear']);
for (const id of THINGS) bitOfEntry.set(id, (bitOfEntry.get(id) ?? 0) | IS.thing);

/** Of an entry of words.yaml. */
export const bitsOfEntry = (id: string): number => bitOfEntry.get(id) ?? 0;

/** "UTC offset agrees" calls it good by itself; "is right", as against "right beside it". */
const bitOfWord = new Map<string, number>([
  ...['agree', 'agrees', 'agreed', 'matches', 'tally', 'tallies'].map((word) => [word, IS.agrees] as const),
  ...['right', 'correct'].map((word) => [word, IS.right] as const),
  ['why', IS.why],
]);

export const bitsOfWord = (word: string, ids: readonly string[]): number =>
  ids.reduce((bits, id) => bits | bitsOfEntry(id), bitOfWord.get(word) ?? 0);
