/** Finds the one target a member means by what they typed; asks where it could be several, offers the nearest where it is none. */
import { positionsAt, withoutKind } from './catalogue-index.js';
import type { Catalogue } from './catalogue.js';
import { formatCoordinates, readCoordinates } from './coordinates.js';
import { bayerKey, catalogueNumberKey, constellationOf, flamsteedKey, starDesignations } from './designation.js';
import { cleanText, foldWords, LONGEST_TEXT, quotable } from '../ground/fold-text.js';
import { nearestNames } from './nearest-names.js';
import { isSatellite, movesUnlisted, planetOfMoon, solarSystemSlip, solarSystemTarget } from './solar-system.js';
import type { TargetProblem, TargetResolution } from './target-resolution.js';
import { NO_CATALOGUE_DATA, type Target } from './target.js';

const MOST_CANDIDATES = 25;
/** Parts of a lettered star closer than this (5′: ε Lyr and closer) are one target at the eyepiece. */
const ONE_TARGET_COS = Math.cos((5 / 60) * (Math.PI / 180));

const coordinateTarget = (raHours: number, decDeg: number): Target => {
  return {
    id: `j2000:${raHours.toFixed(6)}${decDeg < 0 ? '' : '+'}${decDeg.toFixed(5)}`,
    name: formatCoordinates(raHours, decDeg),
    aliases: [],
    kind: 'coordinates',
    kindText: 'J2000 coordinates',
    ...NO_CATALOGUE_DATA,
    body: { kind: 'fixed', raHoursJ2000: raHours, decDegJ2000: decDeg },
  };
};

const bestKnownFirst = (catalogue: Catalogue, positions: readonly number[]): readonly number[] => {
  const { rank } = catalogue.index;
  return [...new Set(positions)].sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0) || a - b);
};

/**
 * A Latin letter in the case it was typed in where the text shows that case was minded (p Pup and P Pup are two stars),
 * in both where it was not ("P PUP", "p pup"); a Greek code as it is.
 */
const letterSpellings = (letter: string, text: string): readonly string[] => {
  if (letter.length > 1) return [letter];
  const minded = text !== text.toLowerCase() && text !== text.toUpperCase();
  const typed = /\p{L}/u.exec(text)?.[0] ?? letter;
  const other = typed === typed.toLowerCase() ? typed.toUpperCase() : typed.toLowerCase();
  return minded && (typed === letter || typed.toLowerCase() === letter) ? [typed] : [typed, other];
};

const starPositions = (catalogue: Catalogue, text: string): { positions: readonly number[]; loose: boolean } => {
  const { exact, unnumbered } = catalogue.index;
  const positions: number[] = [];
  let loose = false;
  for (const { letter, letterNumber, flamsteed, constellation } of starDesignations(text)) {
    if (letter === null) {
      if (flamsteed !== null) positions.push(...positionsAt(exact, flamsteedKey(flamsteed, constellation)));
      continue;
    }
    const spellings = letterSpellings(letter, text);
    const whole = spellings.flatMap((l) => positionsAt(exact, bayerKey(l, letterNumber, constellation)));
    const parts =
      letterNumber === null && whole.length === 0
        ? spellings.flatMap((l) => positionsAt(unnumbered, bayerKey(l, null, constellation)))
        : [];
    // "3 Alpha Lyrae" gives both: the number must agree, or it is another star.
    const agreed = [...whole, ...parts].filter(
      (p) => flamsteed === null || positionsAt(exact, flamsteedKey(flamsteed, constellation)).includes(p),
    );
    positions.push(...agreed);
    loose ||= parts.length > 1;
  }
  return { positions, loose };
};

const closeTogether = (catalogue: Catalogue, positions: readonly number[]): boolean => {
  const { unitX, unitY, unitZ } = catalogue.sweep;
  const first = positions[0];
  if (first === undefined) return false;
  return positions.every(
    (p) =>
      (unitX[p] ?? 0) * (unitX[first] ?? 0) +
        (unitY[p] ?? 0) * (unitY[first] ?? 0) +
        (unitZ[p] ?? 0) * (unitZ[first] ?? 0) >=
      ONE_TARGET_COS,
  );
};

/** The best known of a constellation, for a text that names only the constellation. */
const bestOfConstellation = (catalogue: Catalogue, constellation: string): readonly number[] => {
  const { sweep } = catalogue;
  const known: number[] = [];
  for (let i = 0; i < sweep.length; i += 1) if (sweep.wellKnown[i] === 1) known.push(i);
  return bestKnownFirst(catalogue, known)
    .filter((i) => catalogue.targetAt(i).constellation === constellation)
    .slice(0, 8);
};

/** The name out of what we say ourselves ("M 97 (Owl Nebula)", "Altair · star in Aquila") or a member adds ("the star Altair"); null when there is none in it. */
const asToldOurselves = (text: string): string | null => {
  const head =
    /^([^(·]+?)\s*(?:\([^)]*\)|·)/.exec(text)?.[1] ??
    /^(?:the )?(?:star|galaxy|nebula|cluster|planet|object|target) (.+)$/i.exec(text)?.[1] ??
    null;
  return head === null || head === text ? null : head;
};

/** A comet or minor planet of the operator's list, or which of several. */
const movingTarget = (catalogue: Catalogue, text: string, shown: string): TargetResolution | null => {
  const found = catalogue.moving?.find(text) ?? [];
  const [only] = found;
  if (only === undefined) return null;
  if (found.length > 1) return { ok: false, problem: 'ambiguous-target', text: shown, candidates: found };
  return { ok: true, target: only, note: catalogue.moving?.noteOn(only) ?? '' };
};

/**
 * Finds the one target a member means: a name, a designation or J2000 coordinates. Never throws.
 * A constellation's name alone is asked about, except where a galaxy bears it (Andromeda).
 */
export const resolveTarget = (catalogue: Catalogue, text: string): TargetResolution => {
  const shown = quotable(text);
  const unknown = (
    reason: Extract<TargetProblem, { problem: 'unknown-target' }>['reason'],
    positions: readonly number[] = [],
  ): TargetProblem => ({
    ok: false,
    problem: 'unknown-target',
    text: shown,
    nearest: positions.map((p) => catalogue.targetAt(p)),
    reason,
  });
  if (text.length > 10 * LONGEST_TEXT) return unknown('too-long');
  const clean = cleanText(text)
    .replace(/^["“”']+|["“”']+$/gu, '')
    .trim();
  if (clean.length > LONGEST_TEXT) return unknown('too-long');

  const body = solarSystemTarget(clean);
  if (body) return { ok: true, target: body };
  const words = foldWords(clean).replace(/^the (?=.)/, '');
  if (words === '') return unknown('empty');

  const { exact, short } = catalogue.index;
  const settle = (positions: readonly number[], note?: string): TargetResolution | null => {
    const best = bestKnownFirst(catalogue, positions);
    const only = best[0];
    if (only === undefined) return null;
    if (best.length === 1)
      return { ok: true, target: catalogue.targetAt(only), ...(note === undefined ? {} : { note }) };
    return {
      ok: false,
      problem: 'ambiguous-target',
      text: shown,
      candidates: best.slice(0, MOST_CANDIDATES).map((p) => catalogue.targetAt(p)),
    };
  };

  const key = words.replaceAll(' ', '');
  const number = catalogueNumberKey(clean);
  const stars = starPositions(catalogue, clean);
  const direct = [...positionsAt(exact, key), ...(number === undefined ? [] : positionsAt(exact, number))];
  if (direct.length === 0 && stars.loose && closeTogether(catalogue, stars.positions)) {
    const brightest = [...stars.positions].sort(
      (a, b) => (catalogue.sweep.magnitude[a] ?? 99) - (catalogue.sweep.magnitude[b] ?? 99),
    )[0];
    if (brightest !== undefined) {
      const target = catalogue.targetAt(brightest);
      return { ok: true, target, note: `${shown} is a close group; took its brightest star, ${target.name}.` };
    }
  }
  // A name that is one object's whole name and another's without its last word ("Southern Pinwheel") is asked about too;
  // a star's name is not (Merope, and the nebula about it).
  const alike =
    number === undefined && direct.length > 0 && direct.every((p) => !catalogue.targetAt(p).kind.endsWith('star'))
      ? positionsAt(short, key)
      : [];
  const found = settle([...direct, ...alike, ...stars.positions]);
  if (found) return found;

  const reading = readCoordinates(clean);
  if (reading) {
    if (!reading.ok)
      return { ok: false, problem: 'bad-coordinates', text: shown, fault: reading.fault, value: reading.value };
    const target = coordinateTarget(reading.raHours, reading.decDeg);
    return { ok: true, target, ...(reading.note === undefined ? {} : { note: reading.note }) };
  }

  const constellation = constellationOf(clean);
  const shortKeys = [key, withoutKind(words)].filter((k) => k !== null);
  const shortHits = shortKeys.flatMap((k) => [...positionsAt(short, k), ...(k === key ? [] : positionsAt(exact, k))]);
  if (constellation !== undefined) {
    const galaxies = shortHits.filter((p) => catalogue.targetAt(p).kind === 'galaxy');
    const asked = settle(galaxies.length > 0 ? galaxies : bestOfConstellation(catalogue, constellation));
    if (asked) return asked;
  }
  const shortened = settle(shortHits);
  if (shortened) return shortened;
  const moving = movingTarget(catalogue, clean, shown);
  if (moving) return moving;

  if (number !== undefined) {
    const whole = positionsAt(exact, number.replace(/[a-z]+\d*$|ned\d+$/, ''));
    return unknown(catalogue.index.nonexistent.has(number) ? 'listed-as-nonexistent' : 'not-found', whole);
  }
  const told = asToldOurselves(clean);
  if (told !== null) return resolveTarget(catalogue, told);
  const planet = planetOfMoon(clean);
  if (planet) return { ok: false, problem: 'unknown-target', text: shown, nearest: [planet], reason: 'moon-of-planet' };
  if (isSatellite(clean)) return unknown('satellite');
  if (movesUnlisted(clean)) return unknown(catalogue.moving?.state() === 'read' ? 'not-in-list' : 'moves-unlisted');
  const slipped = solarSystemSlip(clean);
  if (slipped) return { ok: true, target: slipped, note: `Took “${shown}” to be ${slipped.name}.` };
  const near = nearestNames(catalogue, words);
  if (near.certain.length > 0) {
    const first = near.certain[0];
    const target = first === undefined ? undefined : catalogue.targetAt(first);
    const settled = settle(
      near.certain,
      `Took “${shown}” to be ${near.spelling}${target && target.name !== near.spelling ? ` (${target.name})` : ''}.`,
    );
    if (settled) return settled;
  }
  return unknown('not-found', near.nearest.slice(0, 5));
};
