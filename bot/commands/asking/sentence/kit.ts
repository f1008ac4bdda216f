/** With what and under which sky, in a sentence: "in binoculars", "my 8 inch dob", "from the suburbs". */
import { LEAST_MM } from '../../../evening/equipment.js';
import { numberOf, runsOf, take, takeFirst, wordBefore, type Run, type Sentence } from './words.js';

const LONGEST = 4;

const ARTICLES = /^(?:(?:a|an|my|the|our|just|only|some|of) )+/u;
const DESIGN =
  'dobs?|dobson|dobsonian|scope|telescope|refractor|reflector|newtonian|newt|(?:schmidt[- ])?cassegrain|sct|rc|frac|mak|maksutov|apo|achromat';
const SCOPE = `(?: (?:${DESIGN}))?`;
const APERTURE = new RegExp(`^(\\w+(?:\\.\\d+)?) ?-?(mm|cm|inch(?:es)?|in|"|″|'')${SCOPE}$`, 'u');
const LEADS = /^(?:with|through|in|using|by|via|a|an|my|the|own|just)$/u;

/** "a 127 mak", "my mak 127", "10 dob": millimetres, or inches where they are few. */
const BARE = new RegExp(`^(?:(\\d{1,3}) ?(?:${DESIGN})|(?:${DESIGN})[ -]?(\\d{2,3}))$`, 'u');
const MOST_INCHES = 30;

const bareIn = (words: string): string | null => {
  const [, before, after] = BARE.exec(words) ?? [];
  const value = Number(before ?? after ?? 0);
  if (value <= 1) return null;
  return value <= MOST_INCHES ? `${value} inch` : `${value}mm`;
};

const apertureIn = (words: string): string | null => {
  const bare = bareIn(words);
  if (bare !== null) return bare;
  const size = APERTURE.exec(words);
  const value = numberOf(size?.[1] ?? '');
  const unit = size?.[2] ?? '';
  if (value === null || value <= 1 || (unit === 'in' && value > 40)) return null;
  if (unit !== 'mm' && unit !== 'cm') return `${value} inch`;
  // "I have 20 and 9 mm": eyepieces, and no telescope.
  return value * (unit === 'cm' ? 10 : 1) < LEAST_MM ? null : `${value}${unit}`;
};

const NO_TELESCOPE =
  /^(?:without|no|w\/o) (?:using |needing )?(?:(?:a|any|the|my) )?(?:telescopes?|scopes?|binoculars|binos|optics|instruments?|equipment|kit|optical aid)$/u;

/** "In a small scope": millimetres of one that people call so; common practice, no source. */
const SMALL_TELESCOPE = new RegExp(
  `^(?:an? |my |our |his |her |the )(?:(?:very|really|quite|rather|just) )?(?:small|little|tiny|kids?'?|child'?s|toy|starter) (?:${DESIGN})s?$`,
  'u',
);
const SMALL = '80mm';

const kitIn = ({ plain }: Run, before: string): string | null => {
  if (NO_TELESCOPE.test(plain)) return 'eyes';
  if (SMALL_TELESCOPE.test(plain)) return SMALL;
  const words = plain.replace(ARTICLES, '');
  if (
    /^(?:binos?|binoculars?|bins|(?:(?:binos?|binoculars?|bins) )?\d{1,2} ?x ?\d{2,3}s?(?: (?:binos?|binoculars?|bins))?)$/u.test(
      words,
    )
  )
    return 'binoculars';
  const isOwnEyes = /^eyes?$/u.test(words) && (words !== plain || /^(?:with|by)$/u.test(before));
  return isOwnEyes || /^(?:naked|unaided|bare|own) eyes?$/u.test(words) ? 'eyes' : apertureIn(words);
};

/** "8 in the morning" is an hour. */
const isHourAfter = ({ words }: Sentence, { at, count, plain }: Run): boolean =>
  / in$/u.test(plain) && words[at + count]?.plain === 'the';

/** "With a 135mm lens", "at 200mm", "135mm and tracker": how long a lens is, and no aperture. */
const isLens = ({ words }: Sentence, { at, count, plain }: Run, before: string): boolean => {
  if (!/^\d{2,4} ?mm$/u.test(plain.replace(ARTICLES, ''))) return false;
  const next = words.slice(at + count, at + count + 2).map((word) => word.plain);
  const isOfPhotos = words.some((word) =>
    /^(?:photo\w*|imag(?:e|ing)|shoot\w*|expos\w*|subs?|dslr|camera|tracker|lens)$/u.test(word.plain),
  );
  return (
    /^(?:lens|lenses|focal|camera|prime|telephoto|f\/?\d\S*)$/u.test(next[0] ?? '') ||
    (isOfPhotos && (before === 'at' || next.includes('lens')))
  );
};

/** "m 31 in binoculars" is no telescope of 31 inches. */
const isNumberInList = ({ plain }: Run, before: string): boolean =>
  /^\d+ in$/u.test(plain) &&
  /^(?:m|messier|ngc|ic|c|caldwell|sh2|barnard|abell|hip|hd|sao|arp|collinder|cr|melotte|mel)$/u.test(before);

/** "Fornax A in 14in": the letter is the name's. */
const isOfName = ({ words }: Sentence, at: number): boolean =>
  words[at]?.plain === 'a' && /^(?:in|with|through|using|by|via)$/u.test(words[at + 1]?.plain ?? '');

/** "F/6", "f6": with which eyepiece is reckoned by it. */
const RATIO = /^f\/?(\d{1,2}(?:\.\d)?)$/u;

export const takeKit = (sentence: Sentence): string | null => {
  const read = (run: Run, before: string): string | null =>
    isHourAfter(sentence, run) || isNumberInList(run, before) || isLens(sentence, run, before)
      ? null
      : kitIn(run, before);
  const kit = takeFirst(sentence, LONGEST, read, LEADS);
  if (kit === null) return null;
  // "with my own" leads to it by several words.
  for (let at = kit.at - 1; LEADS.test(wordBefore(sentence, at + 1)) && !isOfName(sentence, at); at--)
    take(sentence, { at, count: 1 });
  const ratio = /\d/u.test(kit.text)
    ? takeFirst(sentence, 1, ({ plain }) => RATIO.exec(plain)?.[1] ?? null, /^(?:at|of|an?)$/u)
    : null;
  return ratio === null ? kit.text : `${kit.text} f/${ratio.text}`;
};

const SKY_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:pretty |very |really )?(?:bad|awful|terrible)$/u, 'city'],
  [
    /^(?:the |a |my )?(?:light[- ]polluted|city|city cent(?:re|er)|inner city)(?: skies| sky)?$|^light pollution$/u,
    'city',
  ],
  [/^(?:the |a |my )?(?:suburbs?|suburban|town)(?: skies| sky)?$/u, 'suburb'],
  [/^(?:the |a |my )?(?:countryside|country|village|rural|rural site)(?: skies| sky)?$/u, 'country'],
  [/^(?:the |a |my |really |truly )*dark (?:skies|sky|site|sky site|place)$/u, 'dark'],
];

/** J. E. Bortle's scale (2001), in four. */
const BORTLE = /^bortle(?: class| scale)? ([1-9])$/u;
const BORTLE_SKIES = ['dark', 'dark', 'country', 'country', 'suburb', 'suburb', 'city', 'city', 'city'] as const;

const skyIn = (run: Run, before: string): string | null => {
  const bortle = BORTLE.exec(run.plain)?.[1];
  if (bortle !== undefined) return BORTLE_SKIES[Number(bortle) - 1] ?? null;
  const found = SKY_WORDS.find(([pattern]) => pattern.test(run.plain));
  const isSaid = /sk(?:y|ies)|pollut|site|place/u.test(run.plain) || /^(?:in|from|under|the|my|is|are)$/u.test(before);
  return found !== undefined && isSaid ? found[1] : null;
};

export const takeSky = (sentence: Sentence): string | null =>
  takeFirst(sentence, LONGEST, skyIn, /^(?:in|from|under|with|at)$/u)?.text ?? null;

const KIND =
  /^(?:galaxy|galaxies|planets?|nebula|nebulas|nebulae|nebs|clusters?|open clusters?|globulars?|globular clusters?|globs|doubles?|double stars?|binar(?:y|ies)|planetary neb(?:ulae?|ulas|s)|planetaries|(?:emission|diffuse|gas|hydrogen|ha) neb(?:ulae?|ulas|s)|narrow ?band targets?|hii regions?|variables|variable stars?|carbon stars?)$/u;

/** A second kind beside the first, and any more, as they stand: "globulars or galaxies". */
export const kindsBeside = (sentence: Sentence): readonly string[] => {
  const found: { readonly at: number; readonly end: number; readonly plain: string }[] = [];
  for (const { at, count, plain } of runsOf(sentence, 2))
    if (KIND.test(plain) && found.every((other) => at >= other.end || at + count <= other.at))
      found.push({ at, end: at + count, plain: kindNamed(plain) ?? plain });
  const first = kindIn(sentence);
  return found
    .sort((a, b) => a.at - b.at)
    .map(({ plain }) => plain)
    .filter((plain, i, all) => plain !== first && all.indexOf(plain) === i);
};

/** A kind of target, where no target is named. */
export const kindIn = (sentence: Sentence): string | null =>
  kindNamed(runsOf(sentence, 2).find(({ plain }) => KIND.test(plain))?.plain) ?? null;
const kindNamed = (plain: string | undefined): string | undefined =>
  plain
    ?.replace(/nebs$/u, 'nebulae')
    .replace(/^(?:diffuse|gas|hydrogen|ha) neb.*$|^narrow ?band targets?$|^hii regions?$/u, 'emission nebulae');
