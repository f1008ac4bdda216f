/** Finds the one target a member means by what they typed; asks where it could be several, offers the nearest where it is none. */
import { createKept, type Kept } from '../ground/kept.js';
import { onceOf } from '../ground/once.js';
import { isProblem } from '../ground/problem.js';
import { positionsAt, withoutKind } from './catalogue-index.js';
import type { Catalogue } from './catalogue.js';
import { isVariableName } from './constellations.js';
import { formatCoordinates, readCoordinates } from './coordinates.js';
import { catalogueNumberKey, constellationOf, latinAsGreek } from './designation.js';
import { cleanText, foldWords, LONGEST_TEXT, quotable } from '../ground/fold-text.js';
import { certainName, nearestNames } from './nearest-names.js';
import { asOneObject, closeTogether } from './one-object.js';
import {
  isSatellite,
  movesUnlisted,
  planetOfMoon,
  solarSystemNear,
  solarSystemSlip,
  solarSystemTarget,
} from './solar-system.js';
import { starPositions } from './star-positions.js';
import type { TargetProblem, TargetResolution } from './target-resolution.js';
import { NO_CATALOGUE_DATA, type Target } from './target.js';

const MOST_CANDIDATES = 25;
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
  if (found.length > 1) return { problem: 'ambiguous-target', text: shown, candidates: found };
  return { target: only, note: catalogue.moving?.noteOn(only) ?? '' };
};

type Reason = Extract<TargetProblem, { problem: 'unknown-target' }>['reason'];

/** A text under its several readings. */
interface Typed {
  readonly catalogue: Catalogue;
  /** Without marks and quotes around it. */
  readonly clean: string;
  /** Folded, without its article, and the same without spaces. */
  readonly words: string;
  readonly key: string;
  /** For showing. */
  readonly shown: string;
  /** As the number of a catalogue. */
  readonly number: string | undefined;
}

const unknown = (shown: string, reason: Reason, nearest: readonly Target[] = []): TargetProblem => ({
  problem: 'unknown-target',
  text: shown,
  nearest,
  reason,
});

/** The only one there, or which of several. */
const settle = ({ catalogue, shown }: Typed, positions: readonly number[]): TargetResolution | null => {
  const all = bestKnownFirst(catalogue, positions);
  const [only, ...others] = all;
  if (only === undefined) return null;
  if (others.length === 0) return { target: catalogue.targetAt(only) };
  const one = asOneObject(catalogue, all);
  if (one !== null) return one;
  const candidates = all.slice(0, MOST_CANDIDATES).map((p) => catalogue.targetAt(p));
  return { problem: 'ambiguous-target', text: shown, candidates };
};

/** A close group under one letter is its brightest star. */
const closeGroup = ({ catalogue, shown }: Typed, positions: readonly number[]): TargetResolution | null => {
  const magnitudeAt = (p: number): number => catalogue.sweep.magnitude[p] ?? 99;
  const [brightest] = [...positions].sort((a, b) => magnitudeAt(a) - magnitudeAt(b));
  if (brightest === undefined || !closeTogether(catalogue, positions)) return null;
  const target = catalogue.targetAt(brightest);
  return { target, note: `${shown} is a close group; took its brightest star, ${target.name}.` };
};

/**
 * A name that is one object's whole name and another's without its last word ("Southern Pinwheel") is asked about too;
 * a star's name is not (Merope, and the nebula about it).
 */
const alsoShort = ({ catalogue, key, number }: Typed, direct: readonly number[]): readonly number[] => {
  const isOfStar = direct.some((p) => catalogue.targetAt(p).kind.endsWith('star'));
  return number !== undefined || direct.length === 0 || isOfStar ? [] : positionsAt(catalogue.index.short, key);
};

/** Under a whole name, a catalogue's number, a star's letter. */
const asNamed = (typed: Typed): TargetResolution | null => {
  const { catalogue, clean, key, number } = typed;
  const { exact } = catalogue.index;
  const stars = starPositions(catalogue, clean);
  const direct = [...positionsAt(exact, key), ...(number === undefined ? [] : positionsAt(exact, number))];
  const group = direct.length === 0 && stars.loose ? closeGroup(typed, stars.positions) : null;
  return group ?? settle(typed, [...direct, ...alsoShort(typed, direct), ...stars.positions]);
};

/** "o Cet": a Greek letter typed as a Latin one, where no star bears that itself. */
const asLatinLetter = ({ catalogue, clean, shown }: Typed): TargetResolution | null => {
  const greek = latinAsGreek(clean);
  const found = greek === null ? null : resolveTarget(catalogue, greek);
  if (greek === null || found === null || isProblem(found) || found.isSlip === true) return null;
  return { ...found, note: `Took “${shown}” to be ${greek}.` };
};

const asCoordinates = ({ clean, shown }: Typed): TargetResolution | null => {
  const reading = readCoordinates(clean);
  if (!reading) return null;
  if (isProblem(reading))
    return { problem: 'bad-coordinates', text: shown, fault: reading.problem, value: reading.value };
  const target = coordinateTarget(reading.raHours, reading.decDeg);
  return { target, ...(reading.note === undefined ? {} : { note: reading.note }) };
};

/** Fainter ones nobody calls by their constellation alone; common practice, no source. */
const KNOWN_GALAXY_MAG = 8;

/** "Andromeda Galaxy" for "Andromeda"; a far cluster of galaxies behind a constellation is not what its name alone means. */
const isGalaxyOf = ({ kind, name, aliases, magnitude }: Target, words: string): boolean =>
  kind === 'galaxy' &&
  magnitude !== null &&
  magnitude <= KNOWN_GALAXY_MAG &&
  [name, ...aliases].some((called) => foldWords(called) === `${words} galaxy`);

/** Under a name without its last word; a constellation's alone is its galaxy, else the best known in it. */
const asShortName = (typed: Typed): TargetResolution | null => {
  const { catalogue, clean, key, words } = typed;
  const { exact, short } = catalogue.index;
  const without = withoutKind(words);
  const hits = [
    ...positionsAt(short, key),
    ...(without === null ? [] : [...positionsAt(short, without), ...positionsAt(exact, without)]),
  ];
  const constellation = constellationOf(clean);
  if (constellation === undefined) return settle(typed, hits);
  const galaxies = hits.filter((p) => isGalaxyOf(catalogue.targetAt(p), words));
  const meant = galaxies.length > 0 ? galaxies : bestOfConstellation(catalogue, constellation);
  return settle(typed, meant) ?? settle(typed, hits);
};

const asMoving = ({ catalogue, clean, shown }: Typed): TargetResolution | null => movingTarget(catalogue, clean, shown);

/** A number that no object bears. */
const asNumber = ({ catalogue, number, shown }: Typed): TargetResolution | null => {
  if (number === undefined) return null;
  const whole = positionsAt(catalogue.index.exact, number.replace(/[a-z]+\d*$|ned\d+$/, ''));
  const reason = catalogue.index.nonexistent.has(number) ? 'listed-as-nonexistent' : 'not-found';
  return unknown(
    shown,
    reason,
    whole.map((p) => catalogue.targetAt(p)),
  );
};

const asTold = ({ catalogue, clean }: Typed): TargetResolution | null => {
  const told = asToldOurselves(clean);
  return told === null ? null : resolveTarget(catalogue, told);
};

/** What moves, and is in no list of ours. */
const asUnlisted = ({ catalogue, clean, shown }: Typed): TargetResolution | null => {
  const planet = planetOfMoon(clean);
  if (planet) return unknown(shown, 'moon-of-planet', [planet]);
  if (isSatellite(clean)) return unknown(shown, 'satellite');
  if (!movesUnlisted(clean)) return null;
  return unknown(shown, catalogue.moving?.state() === 'read' ? 'not-in-list' : 'moves-unlisted');
};

/** A variable star that the list lacks; a slip of some other name it is not. */
const asVariable = ({ clean, shown }: Typed): TargetResolution | null =>
  isVariableName(clean) ? unknown(shown, 'variable-unlisted') : null;

/** Most words that are tried are no name, and nobody is offered what is near them: that is looked for when it is asked for. */
const notFound = ({ catalogue, clean, words, shown }: Typed): TargetProblem => ({
  problem: 'unknown-target',
  text: shown,
  get nearest() {
    const named = nearestNames(catalogue, words).map((p) => catalogue.targetAt(p));
    return [...solarSystemNear(clean), ...named].slice(0, 5);
  },
  reason: 'not-found',
});

/** With a slip of the finger in it. */
const asSlip = (typed: Typed): TargetResolution | null => {
  const { catalogue, clean, words, shown } = typed;
  const planet = solarSystemSlip(clean);
  if (planet) return { target: planet, isSlip: true, note: `Took “${shown}” to be ${planet.name}.` };
  const { positions, spelling } = certainName(catalogue, words);
  const settled = settle(typed, positions);
  if (settled === null) return notFound(typed);
  if (isProblem(settled)) return settled.problem === 'ambiguous-target' ? { ...settled, isSlip: true } : settled;
  const { name } = settled.target;
  return {
    ...settled,
    isSlip: true,
    note: `Took “${shown}” to be ${spelling}${name === spelling ? '' : ` (${name})`}.`,
  };
};

/** The first that has something to say. */
const READINGS: readonly ((typed: Typed) => TargetResolution | null)[] = [
  asNamed,
  asLatinLetter,
  asCoordinates,
  asShortName,
  asMoving,
  asNumber,
  asTold,
  asUnlisted,
  asVariable,
  asSlip,
];

/** Without what no name has, and without quotes around it. */
const cleaned = (text: string): string =>
  cleanText(text)
    .replace(/^["“”']+|["“”']+$/gu, '')
    .trim();

const resolvedAnew = (catalogue: Catalogue, text: string): TargetResolution => {
  const shown = quotable(text);
  if (text.length > 10 * LONGEST_TEXT) return unknown(shown, 'too-long');
  const clean = cleaned(text);
  if (clean.length > LONGEST_TEXT) return unknown(shown, 'too-long');

  const body = solarSystemTarget(clean);
  if (body) return { target: body };
  const words = foldWords(clean).replace(/^the (?=.)/, '');
  if (words === '') return unknown(shown, 'empty');
  const key = words.replaceAll(' ', '');
  const typed: Typed = { catalogue, clean, words, key, shown, number: catalogueNumberKey(clean) };
  for (const read of READINGS) {
    const found = read(typed);
    if (found !== null) return found;
  }
  return unknown(shown, 'not-found');
};

/** The operator's list of what moves is read anew now and then, and its notes tell its age. */
const hangsOnList = ({ moving }: Catalogue, text: string): boolean => {
  if (moving === undefined) return false;
  const clean = cleaned(text);
  return movesUnlisted(clean) || asToldOurselves(clean) !== null || moving.find(clean).length > 0;
};

/** The readers of one sentence try the same words of it again and again. */
const TEXTS_KEPT = 500;
const LONGEST_KEPT = 60;
const keptOf = onceOf((_: Catalogue): Kept<string, TargetResolution> => createKept(TEXTS_KEPT));

/**
 * Finds the one target a member means: a name, a designation or J2000 coordinates. Never throws.
 * A constellation's name alone is asked about, except where a galaxy bears it (Andromeda).
 */
export const resolveTarget = (catalogue: Catalogue, text: string): TargetResolution =>
  text.length > LONGEST_KEPT || hangsOnList(catalogue, text)
    ? resolvedAnew(catalogue, text)
    : keptOf(catalogue)(text, () => resolvedAnew(catalogue, text));
