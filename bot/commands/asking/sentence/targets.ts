/** The targets a sentence names, wherever they stand; a slip in one is mended where nothing else is named. */
import { isProblem } from '../../../ground/problem.js';
import { isNamed, latinAsGreek, resolveTarget, type Catalogue, type Target } from '../../../catalogue/index.js';
import { editDistance } from '../../../ground/edit-distance.js';
import { isLittle, runsOf, take, type Run, type Sentence } from './words.js';

const LONGEST = 5;

const isNothing = (plain: string): boolean =>
  /^(?:stars?|galax(?:y|ies)|nebulae?|nebulas|clusters?|planets?|comets?|asteroids?|globulars?|doubles?|constellations?|moons|meteors?|night sky|telescopes?|double stars?|open clusters?|globular clusters?|planetary nebulae?|alignment stars?|guide stars?|the sky)$/u.test(
    plain,
  );

/** "jupiter's" and "jupiters" are Jupiter where the word itself is nothing. */
const spellings = (plain: string): readonly string[] => [
  plain,
  ...(/'s$/u.test(plain) ? [plain.replace(/'s$/u, '')] : []),
  // Of three letters, the "s" is part of the word: "ios" is no moon's.
  ...(plain.length > 3 && /[^s']s$/u.test(plain) ? [plain.slice(0, -1)] : []),
  // "hercules glob", "perseus clust": the word of kind in full.
  ...(/ (?:globs?|globulars?)$/u.test(plain) ? [plain.replace(/ \S+$/u, ' globular cluster')] : []),
  // "orions nebula", "andromeda's galaxy": the possessive before the word of kind.
  ...(/^\S+?'?s \S/u.test(plain) ? [plain.replace(/^(\S+?)'?s (?=\S)/u, '$1 ')] : []),
];

const beginsOrEndsLittle = (plain: string): boolean => {
  const words = plain.split(' ');
  const isNumbered = words.length > 1 && /^\d{1,3}$/u.test(words[0] ?? '');
  return (isLittle(words[0] ?? '') && !isNumbered) || (isLittle(words.at(-1) ?? '') && !/\d/u.test(words.at(-1) ?? ''));
};

/** No target, and the answer says why. */
const TOLD_APART: readonly string[] = ['moves-unlisted', 'moon-of-planet', 'variable-unlisted'];

/** The words under which it is found as it stands, else null; the Moon and the Sun are not looked for. */
export const targetNamed = (catalogue: Catalogue, plain: string): string | null => {
  if (plain.length < 2 || isNothing(plain) || plain === 'moon' || plain === 'sun') return null;
  for (const spelling of spellings(plain)) {
    const resolved = resolveTarget(catalogue, spelling);
    if (isNamed(resolved)) return spelling;
    if (isProblem(resolved) && resolved.problem === 'unknown-target' && TOLD_APART.includes(resolved.reason))
      return spelling;
  }
  return null;
};

/** Its own name for "the big dipper": "new", "north", "big", "southern" and the like begin names though they are little words. */
const BEGINS_NAMES =
  /^(?:north|northern|southern|south|big|little|great|double|wild|cat's|eye|man|christmas|hand|summer|winter|wall)\b/u;

/** Names' short forms that are English words: nobody means Hercules by "her", nor Sirius by "the dog". */
const IS_WORD = /^(?:dog|her|men|car|pup|per|nor|pic|ant|sex|gem|del|com|tel|col|ret|ind|mic|for|cap|and|vol|mon)$/u;

export interface NamedTarget {
  /** As typed, or without its possessive. */
  readonly text: string;
  readonly at: number;
}

/** "The crescent Moon" is no nebula. */
const isOfMoonPhase = ({ words }: Sentence, { at, count, plain }: Run): boolean =>
  plain === 'crescent' && (words[at + count]?.plain === 'moon' || words[at - 1]?.plain === 'moon');

/** "Fornax A", a constellation's brightest source of radio; "is Fornax a cluster" goes on after it. */
const isRadioSource = ({ words }: Sentence, { at, count, plain }: Run): boolean =>
  count === 2 &&
  /^(?:fornax|centaurus|virgo|perseus|hydra|sagittarius|cygnus|cassiopeia|taurus|puppis|pictor|hercules) a$/u.test(
    plain,
  ) &&
  /^(?:|in|at|with|tonight|tomorrow|now|up|from|on|and|by|through)$/u.test(words[at + count]?.plain ?? '');

/** "a Ori": a letter of a constellation's short form. */
const isLetterOf = ({ count, plain }: Run): boolean => {
  const [, name = ''] = /^[a-z] ([a-z]{3})$/u.exec(plain) ?? [];
  return count === 2 && !IS_WORD.test(name) && latinAsGreek(plain) !== null;
};

/** Every run of words that is a name, in the order they stand in; their words are taken. */
export const takeNamed = (
  sentence: Sentence,
  longest: number | undefined,
  read: (plain: string) => string | null,
): readonly NamedTarget[] => {
  const named: NamedTarget[] = [];
  for (const run of runsOf(sentence, longest ?? LONGEST)) {
    if (
      beginsOrEndsLittle(run.plain) &&
      !BEGINS_NAMES.test(run.plain) &&
      !isRadioSource(sentence, run) &&
      !isLetterOf(run)
    )
      continue;
    if (isLittle(run.plain) || IS_WORD.test(run.plain) || isOfMoonPhase(sentence, run) || !isFree(sentence, run))
      continue;
    const text = read(run.plain);
    if (text === null) continue;
    // "sirius b": the letter is the companion's.
    const letter = sentence.words[run.at + run.count];
    const isCompanion = letter !== undefined && /^[bc]$/u.test(letter.plain) && run.plain === text;
    take(sentence, { at: run.at, count: run.count + Number(isCompanion) });
    named.push({ text: isCompanion ? `${text} ${letter.plain}` : text, at: run.at });
  }
  return named.sort((a, b) => a.at - b.at);
};

/** "saturn ring tilt": the rings are Saturn's own, and no nebula. */
const takeRings = (sentence: Sentence): void => {
  const isOfSaturn = sentence.words.some(({ plain }) => /^saturn(?:'?s)?$/u.test(plain));
  const rings = runsOf(sentence, 1).find(({ plain }) => /^(?:ring|rings|ring's)$/u.test(plain));
  const next = rings === undefined ? undefined : sentence.words[rings.at + 1]?.plain;
  if (isOfSaturn && rings !== undefined && next !== 'nebula') take(sentence, rings);
};

/** Every target named; the Moon and the Sun only when nothing else is. */
export const takeTargets = (sentence: Sentence, catalogue: Catalogue): readonly NamedTarget[] => {
  takeRings(sentence);
  const named = takeNamed(sentence, LONGEST, (plain) => targetNamed(catalogue, plain));
  if (named.length > 0) return named;
  const nearby = runsOf(sentence, 1).find(
    ({ plain }) => /^(?:the )?(?:moon|sun)(?:'?s)?$/u.test(plain) || plain === 'sunspots',
  );
  if (nearby === undefined) return [];
  take(sentence, nearby);
  return [{ text: nearby.plain.startsWith('moon') ? 'moon' : 'sun', at: nearby.at }];
};

/** Where coordinates are spoken of, and nowhere else: their figures would be hours. */
const OF_COORDINATES = /\bprecess\w*|\bj ?2000\b|\bcoordinates?\b|\bra\b.*\bdec\b|\bjnow\b|\bof date\b|\bepoch\b/u;
const LONGEST_COORDINATES = 9;
const EPOCHS = /\b(?:j ?2000(?:\.0)?|b ?1950|jnow|20\d\d)\b/u;

/** "RA 05h 35m 17s Dec -05 23 28", as a target; its words are taken. */
export const takeCoordinates = (sentence: Sentence, plain: string, catalogue: Catalogue): NamedTarget | null => {
  if (!OF_COORDINATES.test(plain)) return null;
  for (const run of runsOf(sentence, LONGEST_COORDINATES)) {
    if (!/\d.*\s.*\d/u.test(run.plain) || EPOCHS.test(run.plain)) continue;
    const found = resolveTarget(catalogue, run.typed);
    if (isProblem(found) || found.target.kind !== 'coordinates') continue;
    take(sentence, run);
    return { text: run.typed.toLowerCase(), at: run.at };
  }
  return null;
};

const isFree = ({ taken }: Sentence, { at, count }: Run): boolean => !taken.slice(at, at + count).some((used) => used);

const LEAST_LETTERS = 5;
const LONGEST_SLIP = 3;

/** Words that are no part of a name with a slip in it, unless a name begins so. */
const hasLittle = (plain: string): boolean => !BEGINS_NAMES.test(plain) && plain.split(' ').some(isLittle);

/** A name with a slip in it, its word of kind with it ("whirpool galaxy"); the command then says as what it was taken. */
export const takeSlip = (
  sentence: Sentence,
  catalogue: Catalogue,
  isWord: (word: string) => boolean = () => false,
): NamedTarget | null => {
  for (const run of runsOf(sentence, LONGEST_SLIP)) {
    if (run.plain.length < LEAST_LETTERS || hasLittle(run.plain) || isNothing(run.plain)) continue;
    // "Meridian" is right as it stands, and no slip of Meridiana.
    if (run.count === 1 && isWord(run.plain)) continue;
    const resolved = resolveTarget(catalogue, run.plain);
    if (isProblem(resolved) || resolved.isSlip !== true) continue;
    take(sentence, run);
    return { text: run.plain, at: run.at };
  }
  return null;
};

const MOST_SLIPS = 2;

/** "darling" is no slip of anything, though some names are nearer to it than others. */
const isSlipOf = (typed: string, { name, aliases }: Target): boolean =>
  [name, ...aliases].some((known) => editDistance(typed, known.toLowerCase(), MOST_SLIPS) <= MOST_SLIPS);

/** A name that none is near enough to be taken for, where some are near: the answer offers those. */
export const takeGuess = (sentence: Sentence, catalogue: Catalogue): NamedTarget | null => {
  const left = runsOf(sentence, LONGEST_SLIP).filter(({ plain }) => plain.length > LEAST_LETTERS && !hasLittle(plain));
  for (const run of left) {
    const resolved = resolveTarget(catalogue, run.plain);
    const isNear =
      isProblem(resolved) && 'nearest' in resolved && resolved.nearest.some((near) => isSlipOf(run.plain, near));
    if (!isNear || isNothing(run.plain)) continue;
    take(sentence, run);
    return { text: run.plain, at: run.at };
  }
  return null;
};
