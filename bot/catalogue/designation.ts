/** Catalogue numbers and star designations, however they are spelt, as one canonical key each. */
import { CONSTELLATIONS } from './constellations.js';
import { foldKey } from '../ground/fold-text.js';

/** Greek letters: symbol, name, and the three-letter form used in keys. */
const GREEK: readonly (readonly [symbol: string, code: string, ...spellings: string[]])[] = [
  ['α', 'alp', 'alpha', 'alf'],
  ['β', 'bet', 'beta'],
  ['γ', 'gam', 'gamma'],
  ['δ', 'del', 'delta'],
  ['ε', 'eps', 'epsilon'],
  ['ζ', 'zet', 'zeta'],
  ['η', 'eta'],
  ['θ', 'the', 'theta', 'tet'],
  ['ι', 'iot', 'iota'],
  ['κ', 'kap', 'kappa'],
  ['λ', 'lam', 'lambda'],
  ['μ', 'mu', 'mue'],
  ['ν', 'nu', 'nue'],
  ['ξ', 'xi', 'ksi'],
  ['ο', 'omi', 'omicron'],
  ['π', 'pi'],
  ['ρ', 'rho'],
  ['σ', 'sig', 'sigma'],
  ['τ', 'tau'],
  ['υ', 'ups', 'upsilon'],
  ['φ', 'phi'],
  ['χ', 'chi', 'khi'],
  ['ψ', 'psi'],
  ['ω', 'ome', 'omega'],
];

const GREEK_SYMBOLS = new Map(GREEK.map(([symbol, code]) => [code, symbol]));
const GREEK_SPELLINGS: readonly (readonly [spelling: string, code: string])[] = GREEK.flatMap(
  ([, code, ...spellings]) => [code, ...spellings].map((spelling) => [spelling, code] as const),
);

const GREEK_NAMES = new Map(
  GREEK.flatMap(([, code, ...spellings]) =>
    [code, ...spellings].map(
      (spelling) =>
        [spelling, spellings[0] !== undefined && spellings[0].length > code.length ? spellings[0] : code] as const,
    ),
  ),
);

/** A Greek letter's full name from any of its spellings ("alf" → "alpha"), or undefined. */
export const greekName = (word: string): string | undefined => {
  return GREEK_NAMES.get(word);
};

/** Every spelling of a constellation (abbreviation, name, genitive), folded → abbreviation. */
const CONSTELLATION_SPELLINGS = new Map(
  CONSTELLATIONS.flatMap(({ abbreviation, name, genitive }) =>
    [abbreviation, name, genitive].map((spelling) => [foldKey(spelling), abbreviation] as const),
  ),
);

/** Catalogue prefixes as people write them → as keys have them. */
const PREFIXES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    m: 'm',
    messier: 'm',
    n: 'ngc',
    ngc: 'ngc',
    ic: 'ic',
    c: 'c',
    caldwell: 'c',
    hip: 'hip',
    hipparcos: 'hip',
    mel: 'mel',
    melotte: 'mel',
    cr: 'cr',
    collinder: 'cr',
    b: 'barnard',
    barnard: 'barnard',
    lbn: 'lbn',
    sh2: 'sh2-',
    sharpless: 'sh2-',
    eso: 'eso',
    hcg: 'hcg',
    hickson: 'hcg',
    mwsc: 'mwsc',
    pgc: 'pgc',
    ugc: 'ugc',
    arp: 'arp',
    abell: 'abell',
    vdb: 'vdb',
    vandenbergh: 'vdb',
    ldn: 'ldn',
    lynds: 'ldn',
    sao: 'sao',
    hr: 'hr',
    hd: 'hd',
    harvard: 'harvard',
  }),
);

/** The constellation that a text names and nothing else ("Lyra", "lyr", "Lyrae"), as its abbreviation; else undefined. */
export const constellationOf = (text: string): string | undefined => {
  return CONSTELLATION_SPELLINGS.get(foldKey(text));
};

const LEAST_LETTERS = 4;
const FOLDED_NAMES = CONSTELLATIONS.map(({ abbreviation, name }) => ({ abbreviation, folded: foldKey(name) }));

/** The same where only its beginning was typed, if no other begins so ("cass", "herc"). */
export const constellationMeant = (text: string): string | undefined => {
  const found = constellationOf(text);
  const begun = foldKey(text);
  if (found !== undefined || begun.length < LEAST_LETTERS) return found;
  const begins = FOLDED_NAMES.filter(({ folded }) => folded.startsWith(begun));
  return begins.length === 1 ? begins[0]?.abbreviation : undefined;
};

/** "m31" for "Messier 031", "ngc70a" for "N.G.C. 70 A"; undefined where the text is no catalogue number. */
export const catalogueNumberKey = (text: string): string | undefined => {
  const key = foldKey(text);
  const sharpless = /^(?:sh|sharpless)2?0*(\d{1,3})$/.exec(key);
  if (sharpless && /^sh2|^sharpless/.test(key)) return `sh2-${sharpless[1]}`;
  const match = /^([a-z]+)0*(\d+)((?:ned\d+)?[a-z]?)$/.exec(key);
  if (!match) return undefined;
  const [, letters = '', digits = '', rest = ''] = match;
  const prefix = PREFIXES.get(letters);
  return prefix === undefined ? undefined : `${prefix}${digits}${rest}`;
};

const PART_OF_STARS = /^(?:hr|hd|sao|gj|gliese)\d/u;
const PART_OF_OBJECTS =
  /^(?:sh2-?|sharpless|ldn|lbn|vdb|arp|abell|barnard|cr|mel|ugc|pgc|mwsc|eso|hcg|3c|4c|rcw|gum|ced|cederblad|dwb|mrk|markarian|simeis|tr|trumpler|stock|king|berkeley|pk)\d/u;

/** Whether a text is a number of a list of stars, or of other objects, of which the catalogue holds a part alone; null: of neither. */
export const partOfList = (text: string): 'stars' | 'objects' | null => {
  const key = catalogueNumberKey(text) ?? foldKey(text);
  if (PART_OF_STARS.test(key)) return 'stars';
  return PART_OF_OBJECTS.test(key) ? 'objects' : null;
};

/** A star's designation in parts. */
export interface StarDesignation {
  /** Three-letter Greek code or a single Latin letter, without its number; null for a Flamsteed number alone. */
  readonly letter: string | null;
  /** The superscript of a Bayer letter, or null. */
  readonly letterNumber: number | null;
  /** Flamsteed number, or null. */
  readonly flamsteed: number | null;
  readonly constellation: string;
}

/** Reads "α Lyr", "alf1 Cen", "3 Alpha Lyrae", "61 Cygni", "P Cyg"; every reading that fits, usually one or none. */
export const starDesignations = (text: string): readonly StarDesignation[] => {
  const key = foldKey(text);
  const match = /^(\d{0,3})(\D.*)$/.exec(key);
  if (!match) return [];
  const flamsteed = match[1] ? Number(match[1]) : null;
  const rest = match[2] ?? '';
  const found: StarDesignation[] = [];
  const alone = CONSTELLATION_SPELLINGS.get(rest);
  if (alone !== undefined && flamsteed !== null)
    found.push({ letter: null, letterNumber: null, flamsteed, constellation: alone });
  for (const [spelling, letter] of [...GREEK_SPELLINGS, [rest.slice(0, 1), rest.slice(0, 1)] as const]) {
    if (!rest.startsWith(spelling)) continue;
    const tail = /^0?(\d{0,2})(\D+)$/.exec(rest.slice(spelling.length));
    const constellation = tail ? CONSTELLATION_SPELLINGS.get(tail[2] ?? '') : undefined;
    if (!tail || constellation === undefined) continue;
    const letterNumber = tail[1] ? Number(tail[1]) : null;
    if (!found.some((f) => f.letter === letter && f.constellation === constellation)) {
      found.push({ letter, letterNumber, flamsteed, constellation });
    }
  }
  return found;
};

/** Latin letters typed for the Greek ones that they sound or look like; "o" is omicron. From R on they are variable stars. */
const GREEK_FOR: ReadonlyMap<string, string> = new Map(
  Object.entries({
    a: 'alpha',
    b: 'beta',
    g: 'gamma',
    d: 'delta',
    e: 'epsilon',
    i: 'iota',
    k: 'kappa',
    l: 'lambda',
    m: 'mu',
    n: 'nu',
    o: 'omicron',
    p: 'pi',
  }),
);

/** "o Ceti" as "omicron ceti": what a Bayer letter typed as a Latin one stands for; null where the text is none. */
export const latinAsGreek = (text: string): string | null => {
  const [, letter = '', name = ''] = /^([a-z])[ .]+(\S+)$/u.exec(text.trim().toLowerCase()) ?? [];
  const greek = GREEK_FOR.get(letter);
  return greek === undefined || constellationOf(name) === undefined ? null : `${greek} ${name}`;
};

/** The key a Bayer letter is stored under: "bayer:alp2:Cap". */
export const bayerKey = (letter: string, letterNumber: number | null, constellation: string): string => {
  return `bayer:${letter}${letterNumber ?? ''}:${constellation}`;
};

/** The key a Flamsteed number is stored under: "flamsteed:61:Cyg". */
export const flamsteedKey = (number: number, constellation: string): string => {
  return `flamsteed:${number}:${constellation}`;
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** "alp2", "Cap" → "α² Cap"; a Latin letter stays as it is. */
export const bayerText = (letterWithNumber: string, constellation: string): string => {
  const match = /^([A-Za-z]+?)(\d*)$/.exec(letterWithNumber);
  const letter = match?.[1] ?? letterWithNumber;
  const digits = [...(match?.[2] ?? '')].map((d) => SUPERSCRIPTS[Number(d)]).join('');
  return `${GREEK_SYMBOLS.get(letter) ?? letter}${digits} ${constellation}`;
};
