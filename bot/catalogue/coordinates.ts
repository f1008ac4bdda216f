/** J2000 coordinates in the usual notations: sexagesimal with units, colons or spaces, and decimals whose unit is plain. */
import { plainSigns } from '../ground/fold-text.js';
import { isProblem } from '../ground/problem.js';
import type { CoordinateFault } from './target-resolution.js';

export type CoordinateReading =
  | { readonly raHours: number; readonly decDeg: number; readonly note?: string }
  | { readonly problem: CoordinateFault; readonly value: number | null };

interface NumberToken {
  readonly negative: boolean;
  readonly signed: boolean;
  readonly value: number;
  readonly whole: boolean;
  readonly unit: 'h' | 'd' | 'm' | 's' | null;
}

const UNITS: ReadonlyMap<string, NumberToken['unit']> = new Map([
  ['h', 'h'],
  ['hr', 'h'],
  ['hrs', 'h'],
  ['hours', 'h'],
  ['d', 'd'],
  ['deg', 'd'],
  ['degrees', 'd'],
  ['°', 'd'],
  ['m', 'm'],
  ['min', 'm'],
  ["'", 'm'],
  ['s', 's'],
  ['sec', 's'],
  ['"', 's'],
  ["''", 's'],
]);

const TOKEN =
  /^\s*([+-]?)\s*(\d{1,9}(?:\.\d{0,12})?|\.\d{1,12})\s*(hours|hrs|hr|h|degrees|deg|d|°|min|m|sec|s|''|'|")?([:\s]*)/;

/** Plain signs, and labels such as "RA" and "Dec" left out. */
const plain = (text: string): string => {
  return plainSigns(text)
    .replace(/\b(?:icrs|j2000(?:\.0)?|equinox|epoch)\b/g, ' ')
    .replace(/(?:\br\.?\s?a\.?|\bdec(?:l(?:ination)?)?\b\.?|\bright ascension\b|[αδ])\s*[:=]?/g, ' ')
    .trim();
};

const tokens = (text: string): NumberToken[] | null => {
  const found: NumberToken[] = [];
  let rest = text;
  while (rest !== '') {
    const match = TOKEN.exec(rest);
    if (!match) return null;
    const [whole, sign = '', digits = '', unit = ''] = match;
    found.push({
      negative: sign === '-',
      signed: sign !== '',
      value: Number(digits),
      whole: !digits.includes('.'),
      unit: UNITS.get(unit) ?? null,
    });
    rest = rest.slice(whole.length);
  }
  return found;
};

/** Where the declination's numbers begin, or null when that cannot be told. */
const splitAt = (all: readonly NumberToken[], text: string): number | null => {
  for (let i = all.length - 1; i > 0; i -= 1) if (all[i]?.signed) return i;
  const secondDegrees = all.findIndex((t, i) => i > 0 && t.unit === 'd');
  if (secondDegrees > 0) return secondDegrees;
  const groups = text.split(/\s+/);
  if (groups.length === 2 && groups[0] !== undefined) return tokens(groups[0])?.length ?? null;
  return all.length % 2 === 0 ? all.length / 2 : null;
};

/** One to three sixtieth steps as one number; null when the parts do not fit together. */
const sexagesimal = (parts: readonly NumberToken[]): number | null | 'sixtieths' => {
  const [first, ...smaller] = parts;
  if (!first || smaller.length > 2 || first.unit === 'm' || first.unit === 's') return null;
  if (parts.some((p, i) => (i > 0 && p.signed) || (i < parts.length - 1 && !p.whole))) return null;
  const units = smaller.map((p) => p.unit);
  if (units.some((u, i) => u !== null && u !== (i === 0 ? 'm' : 's'))) return null;
  if (smaller.some((p) => p.value >= 60)) return 'sixtieths';
  return first.value + (smaller[0]?.value ?? 0) / 60 + (smaller[1]?.value ?? 0) / 3600;
};

/** "183656.3+384701", with or without a leading J. */
const compact = (text: string): NumberToken[][] | null => {
  const match = /^j?(\d\d)(\d\d)(\d\d(?:\.\d+)?)([+-])(\d\d)(\d\d)(\d\d(?:\.\d+)?)$/.exec(text.replaceAll(' ', ''));
  if (!match) return null;
  const number = (digits: string | undefined, negative = false): NumberToken => ({
    negative,
    signed: false,
    value: Number(digits),
    whole: !digits?.includes('.'),
    unit: null,
  });
  return [
    [number(match[1]), number(match[2]), number(match[3])],
    [number(match[5], match[4] === '-'), number(match[6]), number(match[7])],
  ];
};

/** The numbers of the two coordinates; null where they are none, 'unreadable' where nothing tells one from the other. */
const halvesOf = (text: string): readonly (readonly NumberToken[])[] | 'unreadable' | null => {
  const together = compact(text);
  if (together !== null) return together;
  const pieces = text.split(/\s*[,;]\s*/).filter((piece) => piece !== '');
  const lists = pieces.map(tokens).filter((list) => list !== null);
  const all = lists.flat();
  if (lists.length < pieces.length || all.length < 2) return null;
  if (pieces.length === 2) return lists;
  const at = pieces.length > 2 ? null : splitAt(all, text);
  return at === null ? 'unreadable' : [all.slice(0, at), all.slice(at)];
};

type Misfit = Extract<CoordinateReading, { readonly problem: string }>;

const bad = (problem: CoordinateFault, value: number | null = null): Misfit => ({ problem, value });

/** Each coordinate's parts as one number, signs left out. */
const sizesOf = (
  raParts: readonly NumberToken[],
  decParts: readonly NumberToken[],
): { readonly ra: number; readonly dec: number } | Misfit => {
  const ra = sexagesimal(raParts);
  const dec = sexagesimal(decParts);
  if (ra === null || dec === null) return bad('unreadable');
  if (ra !== 'sixtieths' && dec !== 'sixtieths') return { ra, dec };
  return bad(
    'sixtieths-range',
    [...raParts.slice(1), ...decParts.slice(1)].find(({ value }) => value >= 60)?.value ?? null,
  );
};

/** Right ascension in hours, with what was taken for granted; `size` is its parts as one number, `isSingle` where it is but one. */
const rightAscension = (
  first: NumberToken,
  size: number,
  isSingle: boolean,
): { readonly raHours: number; readonly note?: string } | Misfit => {
  const isPlain = isSingle && first.unit === null;
  const isDegrees = first.unit === 'd' || (isPlain && size >= 24);
  if (first.negative) return bad('right-ascension-range', -size);
  if (isPlain && size < 24) return bad('hours-or-degrees', size);
  if (size >= (isDegrees ? 360 : 24)) return bad('right-ascension-range', size);
  return {
    raHours: isDegrees ? size / 15 : size,
    ...(isPlain ? { note: `Read ${size} as degrees of right ascension, since hours stop at 24.` } : {}),
  };
};

/**
 * Reads right ascension and declination (ICRS/J2000). Null when the text does not look like coordinates at all.
 * Right ascension in sexagesimal parts is hours unless marked in degrees; a single plain decimal is degrees when it is
 * 24 or more, and is asked about otherwise.
 */
export const readCoordinates = (text: string): CoordinateReading | null => {
  const halves = halvesOf(plain(text));
  if (halves === null) return null;
  if (halves === 'unreadable') return bad('unreadable');
  const [[raFirst, ...raSmaller] = [], [decFirst, ...decSmaller] = []] = halves;
  if (raFirst === undefined || decFirst === undefined || decFirst.unit === 'h') return bad('unreadable');
  const sizes = sizesOf([raFirst, ...raSmaller], [decFirst, ...decSmaller]);
  if (isProblem(sizes)) return sizes;
  const { ra, dec } = sizes;
  const decDeg = decFirst.negative ? -dec : dec;
  if (dec > 90) return bad('declination-range', decDeg);
  const found = rightAscension(raFirst, ra, raSmaller.length === 0);
  return isProblem(found) ? found : { ...found, decDeg };
};

/** "18h36m56.3s +38°47′01″": right ascension to 0.1 s, declination to 1″. */
export const formatCoordinates = (raHours: number, decDeg: number): string => {
  const two = (n: number): string => String(n).padStart(2, '0');
  const tenths = Math.round(raHours * 36_000) % 864_000;
  const seconds = Math.round(Math.abs(decDeg) * 3600);
  const ra = `${two(Math.floor(tenths / 36_000))}h${two(Math.floor(tenths / 600) % 60)}m${two(Math.floor((tenths % 600) / 10))}.${tenths % 10}s`;
  const dec = `${two(Math.floor(seconds / 3600))}°${two(Math.floor(seconds / 60) % 60)}′${two(seconds % 60)}″`;
  return `${ra} ${decDeg < 0 && seconds > 0 ? '−' : '+'}${dec}`;
};
