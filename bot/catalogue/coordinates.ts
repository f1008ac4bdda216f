/** J2000 coordinates in the usual notations: sexagesimal with units, colons or spaces, and decimals whose unit is plain. */
import { plainSigns } from '../ground/fold-text.js';
import type { CoordinateFault } from './target-resolution.js';

export type CoordinateReading =
  | { readonly ok: true; readonly raHours: number; readonly decDeg: number; readonly note?: string }
  | { readonly ok: false; readonly fault: CoordinateFault; readonly value: number | null };

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

/**
 * Reads right ascension and declination (ICRS/J2000). Null when the text does not look like coordinates at all.
 * Right ascension in sexagesimal parts is hours unless marked in degrees; a single plain decimal is degrees when it is
 * 24 or more, and is asked about otherwise.
 */
export const readCoordinates = (text: string): CoordinateReading | null => {
  const simple = plain(text);
  const bad = (fault: CoordinateFault, value: number | null = null): CoordinateReading => ({ ok: false, fault, value });
  let halves = compact(simple);
  if (halves === null) {
    const pieces = simple.split(/\s*[,;]\s*/).filter((piece) => piece !== '');
    const lists = pieces.map(tokens);
    if (pieces.length === 0 || lists.some((l) => l === null)) return null;
    const all = lists.flatMap((l) => l ?? []);
    if (all.length < 2) return null;
    if (pieces.length === 2) halves = lists.map((l) => l ?? []);
    else {
      const at = splitAt(all, simple);
      if (at === null || pieces.length > 2) return bad('unreadable');
      halves = [all.slice(0, at), all.slice(at)];
    }
  }
  const [raParts = [], decParts = []] = halves;
  const raFirst = raParts[0];
  const decFirst = decParts[0];
  const ra = sexagesimal(raParts);
  const dec = sexagesimal(decParts);
  if (ra === null || dec === null || !raFirst || !decFirst || decFirst.unit === 'h') return bad('unreadable');
  if (ra === 'sixtieths' || dec === 'sixtieths') {
    return bad(
      'sixtieths-range',
      [...raParts.slice(1), ...decParts.slice(1)].find((p) => p.value >= 60)?.value ?? null,
    );
  }
  if (Math.abs(dec) > 90) return bad('declination-range', decFirst.negative ? -dec : dec);
  if (raFirst.negative) return bad('right-ascension-range', -ra);
  const decDeg = decFirst.negative ? -dec : dec;
  if (raFirst.unit === 'd') return ra < 360 ? { ok: true, raHours: ra / 15, decDeg } : bad('right-ascension-range', ra);
  if (raParts.length === 1 && raFirst.unit === null) {
    if (ra < 24) return bad('hours-or-degrees', ra);
    if (ra >= 360) return bad('right-ascension-range', ra);
    return {
      ok: true,
      raHours: ra / 15,
      decDeg,
      note: `Read ${ra} as degrees of right ascension, since hours stop at 24.`,
    };
  }
  return ra < 24 ? { ok: true, raHours: ra, decDeg } : bad('right-ascension-range', ra);
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
