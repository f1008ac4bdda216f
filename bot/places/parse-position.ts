/** A position on Earth as members write it: decimal degrees, hemisphere letters, D M S, ISO 6709 and geo: URIs (RFC 5870). */
import { isProblem } from '../ground/problem.js';
import { cleanText, LONGEST_TEXT, plainSigns, quotable } from '../ground/fold-text.js';
import type { Position, PositionFault, PositionResolution } from './site-resolution.js';

interface Angle {
  readonly value: number;
  /** 'latitude' or 'longitude' where a letter says so. */
  readonly axis: 'latitude' | 'longitude' | null;
}

interface Misfit {
  readonly problem: PositionFault;
  readonly value: number | null;
}

const UNREADABLE: Misfit = { problem: 'unreadable', value: null };

const NUMBER = String.raw`\d{1,9}(?:\.\d{0,12})?|\.\d{1,12}`;
const PART = new RegExp(String.raw`^\s*([nsew])?\s*([+-])?\s*(${NUMBER})\s*(?:°|''|'|")?\s*:?\s*([nsew](?![a-z]))?\s*`);

/** Plain signs, with units as signs too: an "s" is seconds only after minutes, and south otherwise. */
const plain = (text: string): string => {
  return plainSigns(text)
    .replace(/\b(north|south|east|west)\b/g, (word) => word.charAt(0))
    .replace(/\b(?:lat(?:itude)?|lon(?:g(?:itude)?)?|lng)\b\s*[:=]?/g, ' ')
    .replace(/(\d)\s*d(?:eg(?:rees)?)?(?![a-z])/g, '$1°')
    .replace(/(\d)\s*m(?:in)?(?![a-z])/g, "$1'")
    .replace(/('\s*\d+(?:\.\d+)?)\s*s(?:ec)?(?![a-z])/g, '$1"')
    .trim();
};

/** Degrees from degrees, minutes and seconds. */
const fromSixtieths = ([degrees = 0, minutes = 0, seconds = 0]: readonly number[]): number =>
  degrees + minutes / 60 + seconds / 3600;

/** The first of the minutes and seconds that is 60 or more. */
const tooManySixtieths = (numbers: readonly number[]): number | undefined => numbers.slice(1).find((n) => n >= 60);

/** A run of digits of ISO 6709: degrees, degrees and minutes, or degrees, minutes and seconds, by the number of whole digits. */
const isoAngle = (sign: string, digits: string, degreeDigits: 2 | 3): number | Misfit => {
  const [whole = '', fraction = ''] = digits.split('.');
  const steps = (whole.length - degreeDigits) / 2;
  if (![0, 1, 2].includes(steps)) return UNREADABLE;
  const parts = [
    whole.slice(0, degreeDigits),
    ...Array.from({ length: steps }, (_, i) => whole.slice(degreeDigits + 2 * i, degreeDigits + 2 * i + 2)),
  ];
  const numbers = parts.map((part, i) => Number(i === parts.length - 1 && fraction ? `${part}.${fraction}` : part));
  const large = tooManySixtieths(numbers);
  if (large !== undefined) return { problem: 'sixtieths-range', value: large };
  const value = fromSixtieths(numbers);
  return sign === '-' ? -value : value;
};

/** ISO 6709:2022 Annex H strings: "+51.05-114.07/", "+5103.0-11404.2+1045CRSWGS_84/". Null when the text is not of that form. */
const iso6709 = (text: string): { latitude: number; longitude: number; elevation: number | null } | Misfit | null => {
  const match =
    /^([+-])(\d{2,6}(?:\.\d{1,12})?)([+-])(\d{3,7}(?:\.\d{1,12})?)(?:([+-]\d{1,6}(?:\.\d{1,6})?))?(?:crs[a-z0-9_:.-]{1,40})?\/?$/i.exec(
      text,
    );
  if (!match) return null;
  const latitude = isoAngle(match[1] ?? '', match[2] ?? '', 2);
  const longitude = isoAngle(match[3] ?? '', match[4] ?? '', 3);
  if (typeof latitude !== 'number') return latitude;
  if (typeof longitude !== 'number') return longitude;
  return { latitude, longitude, elevation: match[5] === undefined ? null : Number(match[5]) };
};

/** What an angle is written with; `sign` and `letter` '' where there is none. */
interface Written {
  readonly numbers: readonly number[];
  readonly sign: string;
  readonly letter: string;
}

/** The parts of an angle in their order, or why they do not make one; null where something else stands in the text. */
const written = (text: string): Written | Misfit | null => {
  const numbers: number[] = [];
  let letter = '';
  let sign = '';
  let rest = text.trim();
  while (rest !== '') {
    const match = PART.exec(rest);
    if (!match) return null;
    const [whole, before = '', signHere = '', digits = '', after = ''] = match;
    const letters = new Set([letter, before, after].filter((found) => found !== ''));
    const isMisplaced = numbers.length > 0 && (signHere !== '' || !Number.isInteger(numbers.at(-1)));
    if (letters.size > 1 || isMisplaced) return UNREADABLE;
    letter = [...letters][0] ?? '';
    sign += signHere;
    numbers.push(Number(digits));
    rest = rest.slice(whole.length);
  }
  return { numbers, sign, letter };
};

const axisOf = (letter: string): Angle['axis'] => {
  if (letter === '') return null;
  return letter === 'n' || letter === 's' ? 'latitude' : 'longitude';
};

/** One angle from its numbers and letters, or why not. */
const angle = (text: string): Angle | Misfit | null => {
  const found = written(text);
  if (found === null || isProblem(found)) return found;
  const { numbers, sign, letter } = found;
  const isNegative = sign === '-';
  if (numbers.length === 0 || numbers.length > 3 || (isNegative && letter !== '')) return UNREADABLE;
  const large = tooManySixtieths(numbers);
  if (large !== undefined) return { problem: 'sixtieths-range', value: large };
  const size = fromSixtieths(numbers);
  return { value: isNegative || letter === 's' || letter === 'w' ? -size : size, axis: axisOf(letter) };
};

/** Where a text without a comma parts: between its letters, the ones of two axes first, else at its second sign. */
const PARTINGS = [
  /^([nsew][^nsew]*\d[^nsew]*)([nsew].*)$/,
  /^(.*\d[^\d]*?[ns])\s*(?=[^ns]*[ew]$)(.+)$/,
  /^(.*\d[^\d]*?[ew])\s*(?=[^ew]*[ns]$)(.+)$/,
  /^(.*\d[^\d]*?[ns])\s*(.*[ns])$/,
  /^(.*\d[^\d]*?[ew])\s*(.*[ew])$/,
  /^(.*\d\S*?)\s*([+-].*)$/,
];

/** The two halves of a text: at its comma, between letters, at the second sign, or in the middle of its numbers. */
const halves = (text: string): readonly [string, string] | null => {
  const commas = text.split(/\s*[,;]\s*/).filter((part) => part !== '');
  if (commas.length > 2) return null;
  if (commas.length === 2) return [commas[0] ?? '', commas[1] ?? ''];
  for (const parting of PARTINGS) {
    const parted = parting.exec(text);
    if (parted !== null) return [parted[1] ?? '', parted[2] ?? ''];
  }
  const words = text.split(/\s+/);
  const middle = words.length / 2;
  return words.length % 2 === 0 ? [words.slice(0, middle).join(' '), words.slice(middle).join(' ')] : null;
};

const looksLikePosition = (text: string): boolean => {
  return /\d/.test(text) && /^[nsew°'"\d\s.,;:+-]+$/.test(text) && !/[nsew]{2}/.test(text);
};

const checked = (latitude: number, longitude: number, elevationM: number | null): Position | Misfit => {
  if (Math.abs(latitude) > 90) {
    return Math.abs(latitude) <= 180 && Math.abs(longitude) <= 90
      ? { problem: 'maybe-swapped', value: latitude }
      : { problem: 'latitude-range', value: latitude };
  }
  if (Math.abs(longitude) > 180) return { problem: 'longitude-range', value: longitude };
  return { latitudeDeg: latitude + 0, longitudeDeg: longitude + 0, elevationM };
};

/** Two angles as a position: latitude first, unless their letters say otherwise. */
const fromPair = (first: Angle, second: Angle): Position | Misfit => {
  if (first.axis !== null && first.axis === second.axis) return { problem: 'same-axis', value: null };
  const isSwapped = first.axis === 'longitude' || second.axis === 'latitude';
  return isSwapped ? checked(second.value, first.value, null) : checked(first.value, second.value, null);
};

/** Null when the text does not look like a position at all. */
const read = (text: string): Position | Misfit | null => {
  const geo = /^geo:([+-]?\d+(?:\.\d+)?),([+-]?\d+(?:\.\d+)?)(?:,([+-]?\d+(?:\.\d+)?))?(?:;.*)?$/.exec(text);
  if (geo) return checked(Number(geo[1]), Number(geo[2]), geo[3] === undefined ? null : Number(geo[3]));
  const iso = iso6709(text);
  if (iso !== null) return isProblem(iso) ? iso : checked(iso.latitude, iso.longitude, iso.elevation);
  if (!looksLikePosition(text)) return null;
  const [first, second] = (halves(text) ?? []).map(angle);
  if (first == null || second == null) return UNREADABLE;
  if (isProblem(first)) return first;
  return isProblem(second) ? second : fromPair(first, second);
};

/**
 * `LAT,LON` in degrees (north and east positive), with N/S/E/W, D M S, ISO 6709 or geo: form. Null when the text does not
 * look like a position at all, and so may be a place's name. Never throws.
 */
export const parsePosition = (text: string): PositionResolution => {
  if (text.length > 10 * LONGEST_TEXT) return null;
  const clean = cleanText(text);
  const found = clean.length > LONGEST_TEXT ? null : read(plain(clean));
  if (found === null) return null;
  if (!isProblem(found)) return { position: found };
  const { problem: fault, value } = found;
  return {
    problem: 'bad-position',
    text: quotable(text),
    fault,
    value: value === null ? null : Math.round(value * 1e4) / 1e4,
  };
};

/** Whether the text is a position that can be used. */
export const isPosition = (text: string): boolean => {
  const found = parsePosition(text);
  return found !== null && !isProblem(found);
};
