/** A position on Earth as members write it: decimal degrees, hemisphere letters, D M S, ISO 6709 and geo: URIs (RFC 5870). */
import { cleanText, LONGEST_TEXT, plainSigns, quotable } from '../ground/fold-text.js';
import type { Position, PositionFault, PositionProblem, PositionResolution } from './site-resolution.js';

interface Angle {
  readonly value: number;
  /** 'latitude' or 'longitude' where a letter says so. */
  readonly axis: 'latitude' | 'longitude' | null;
}

type Failure = { readonly fault: PositionFault; readonly value: number | null };

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

/** A run of digits of ISO 6709: degrees, degrees and minutes, or degrees, minutes and seconds, by the number of whole digits. */
const isoAngle = (sign: string, digits: string, degreeDigits: 2 | 3): number | Failure => {
  const [whole = '', fraction = ''] = digits.split('.');
  const steps = (whole.length - degreeDigits) / 2;
  if (![0, 1, 2].includes(steps)) return { fault: 'unreadable', value: null };
  const parts = [
    whole.slice(0, degreeDigits),
    ...Array.from({ length: steps }, (_, i) => whole.slice(degreeDigits + 2 * i, degreeDigits + 2 * i + 2)),
  ];
  const numbers = parts.map((part, i) => Number(i === parts.length - 1 && fraction ? `${part}.${fraction}` : part));
  const large = numbers.slice(1).find((n) => n >= 60);
  if (large !== undefined) return { fault: 'sixtieths-range', value: large };
  const value = (numbers[0] ?? 0) + (numbers[1] ?? 0) / 60 + (numbers[2] ?? 0) / 3600;
  return sign === '-' ? -value : value;
};

/** ISO 6709:2022 Annex H strings: "+51.05-114.07/", "+5103.0-11404.2+1045CRSWGS_84/". Null when the text is not of that form. */
const iso6709 = (text: string): { latitude: number; longitude: number; elevation: number | null } | Failure | null => {
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

/** One angle from its numbers and letters, or why not. */
const angle = (text: string): Angle | Failure | null => {
  const numbers: number[] = [];
  let letter = '';
  let negative = false;
  let signed = false;
  let rest = text.trim();
  while (rest !== '') {
    const match = PART.exec(rest);
    if (!match) return null;
    const [whole, before = '', sign = '', digits = '', after = ''] = match;
    for (const found of [before, after]) {
      if (found === '') continue;
      if (letter !== '' && letter !== found) return { fault: 'unreadable', value: null };
      letter = found;
    }
    if (sign !== '') {
      if (numbers.length > 0) return { fault: 'unreadable', value: null };
      signed = true;
      negative = sign === '-';
    }
    if (numbers.length > 0 && !Number.isInteger(numbers.at(-1))) return { fault: 'unreadable', value: null };
    numbers.push(Number(digits));
    rest = rest.slice(whole.length);
  }
  if (numbers.length === 0 || numbers.length > 3 || (signed && negative && letter !== ''))
    return { fault: 'unreadable', value: null };
  const large = numbers.slice(1).find((n) => n >= 60);
  if (large !== undefined) return { fault: 'sixtieths-range', value: large };
  const size = (numbers[0] ?? 0) + (numbers[1] ?? 0) / 60 + (numbers[2] ?? 0) / 3600;
  const lettered = letter === 'n' || letter === 's' ? 'latitude' : 'longitude';
  const axis = letter === '' ? null : lettered;
  return { value: negative || letter === 's' || letter === 'w' ? -size : size, axis };
};

/** The two halves of a text: at its comma, between letters, at the second sign, or in the middle of its numbers. */
const halves = (text: string): readonly [string, string] | null => {
  const commas = text.split(/\s*[,;]\s*/).filter((part) => part !== '');
  if (commas.length === 2) return [commas[0] ?? '', commas[1] ?? ''];
  if (commas.length > 2) return null;
  const before =
    /^([nsew][^nsew]*\d[^nsew]*)([nsew].*)$/.exec(text) ??
    /^(.*\d[^\d]*?[ns])\s*(?=[^ns]*[ew]$)(.+)$/.exec(text) ??
    /^(.*\d[^\d]*?[ew])\s*(?=[^ew]*[ns]$)(.+)$/.exec(text) ??
    /^(.*\d[^\d]*?[ns])\s*(.*[ns])$/.exec(text) ??
    /^(.*\d[^\d]*?[ew])\s*(.*[ew])$/.exec(text);
  if (before) return [before[1] ?? '', before[2] ?? ''];
  const signed = /^(.*\d\S*?)\s*([+-].*)$/.exec(text);
  if (signed) return [signed[1] ?? '', signed[2] ?? ''];
  const words = text.split(/\s+/);
  return words.length % 2 === 0
    ? [words.slice(0, words.length / 2).join(' '), words.slice(words.length / 2).join(' ')]
    : null;
};

const looksLikePosition = (text: string): boolean => {
  return /\d/.test(text) && /^[nsew°'"\d\s.,;:+-]+$/.test(text) && !/[nsew]{2}/.test(text);
};

const checked = (latitude: number, longitude: number, elevationM: number | null): Position | Failure => {
  if (Math.abs(latitude) > 90) {
    return Math.abs(latitude) <= 180 && Math.abs(longitude) <= 90
      ? { fault: 'maybe-swapped', value: latitude }
      : { fault: 'latitude-range', value: latitude };
  }
  if (Math.abs(longitude) > 180) return { fault: 'longitude-range', value: longitude };
  return { latitudeDeg: latitude + 0, longitudeDeg: longitude + 0, elevationM };
};

/**
 * `LAT,LON` in degrees (north and east positive), with N/S/E/W, D M S, ISO 6709 or geo: form. Null when the text does not
 * look like a position at all, and so may be a place's name. Never throws.
 */
export const parsePosition = (text: string): PositionResolution => {
  if (text.length > 10 * LONGEST_TEXT) return null;
  const clean = cleanText(text);
  if (clean.length > LONGEST_TEXT) return null;
  const simple = plain(clean);
  const problem = ({ fault, value }: Failure): PositionProblem => ({
    ok: false,
    problem: 'bad-position',
    text: quotable(text),
    fault,
    value: value === null ? null : Math.round(value * 1e4) / 1e4,
  });
  const done = (result: Position | Failure): PositionResolution =>
    'fault' in result ? problem(result) : { ok: true, position: result };

  const geo = /^geo:([+-]?\d+(?:\.\d+)?),([+-]?\d+(?:\.\d+)?)(?:,([+-]?\d+(?:\.\d+)?))?(?:;.*)?$/.exec(simple);
  if (geo) return done(checked(Number(geo[1]), Number(geo[2]), geo[3] === undefined ? null : Number(geo[3])));
  const iso = iso6709(simple);
  if (iso) return done('fault' in iso ? iso : checked(iso.latitude, iso.longitude, iso.elevation));
  if (!looksLikePosition(simple)) return null;

  const pair = halves(simple);
  const first = pair ? angle(pair[0]) : null;
  const second = pair ? angle(pair[1]) : null;
  if (!first || !second) return problem({ fault: 'unreadable', value: null });
  if ('fault' in first) return problem(first);
  if ('fault' in second) return problem(second);
  if (first.axis !== null && first.axis === second.axis) return problem({ fault: 'same-axis', value: null });
  const swapped = first.axis === 'longitude' || second.axis === 'latitude';
  return done(swapped ? checked(second.value, first.value, null) : checked(first.value, second.value, null));
};
