/** What `tonight` says: the headline, a line a target, and under them the dark, the Moon and the showers. */
import { showersHere } from '../../ahead/showers.js';
import { commonName, listName, type VariableStar } from '../../catalogue/index.js';
import { SHOWS_MAG } from '../../evening/ease.js';
import { SKY_WORDS } from '../../evening/equipment.js';
import type { EveningHours } from '../../evening/evening-hours.js';
import type { Pick } from '../../evening/tonight-picks.js';
import { variableNow } from '../../evening/variable-now.js';
import { whyOf } from '../../evening/why.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import type { Fact } from '../../reply/reply.js';
import { compassWord, degrees, listed, magnitudeText } from '../../reply/wording.js';
import { moonAt } from '../../sky/moon.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalTime, zoneName } from '../../times/index.js';
import { commandLine } from '../asking/question-parts.js';
import { darkWords, moonTimesOf, noDarkWords } from '../asking/night-words.js';
import type { Sought } from './sought.js';
import type { TonightOptions } from './tonight-options.js';

const BEST_NAMED = 3;

/** None of them shows but by chance. */
export const isDrowned = ({ marginMag }: Pick): boolean => marginMag < SHOWS_MAG;

const magnitudeWords = (magnitude: number | null): string =>
  magnitude === null ? '' : `, mag ${magnitudeText(magnitude)}`;

/** "eclipsing (Algol), mag 2.1 to 3.4, now about 2.1". */
const changeWords = (variable: VariableStar, utcMs: UtcMs): string => {
  const now = variableNow(variable, utcMs);
  const { type, brightestMagnitude, faintestMagnitude } = variable;
  const range = `${type}, mag ${magnitudeText(brightestMagnitude)} to ${magnitudeText(faintestMagnitude)}`;
  return now.by === 'nothing' ? range : `${range}, about ${magnitudeText(now.magnitude)} then`;
};

const whatWords = ({ target, bestUtcMs, moonLitFraction }: Pick, isOfChange: boolean): string => {
  if (target.kind === 'moon') return `${Math.round(moonLitFraction * 100)} % lit`;
  return isOfChange && target.variable !== null
    ? changeWords(target.variable, bestUtcMs)
    : `${target.kindText}${magnitudeWords(target.magnitude)}`;
};

/** "22:16  M 31 (Andromeda Galaxy), 60° in the east: spiral galaxy, mag 3.4; plain to see". */
export const pickFact = (
  pick: Pick,
  { where, equipment, isOfChange }: Sought,
  { brightWindow }: EveningHours,
): Fact => {
  const { zone } = where.site;
  const { target, bestUtcMs, bestAltitudeDeg, azimuthDeg } = pick;
  const isOtherZone = zoneName(bestUtcMs, zone) !== zoneName(brightWindow.startUtcMs, zone);
  const why = whyOf(pick, equipment);
  return {
    label: isOtherZone ? formatLocalTime(bestUtcMs, zone) : formatClock(bestUtcMs, zone),
    value: `${listName(target)}, ${degrees(bestAltitudeDeg)} in the ${compassWord(azimuthDeg)}: ${whatWords(pick, isOfChange)}${why === '' ? '' : `; ${why}`}`,
  };
};

const nothingWords = (given: TonightOptions, noDark: string | null): string =>
  given.kind === undefined || given.kind === 'any'
    ? `Nothing shows in those hours${noDark === null ? '' : ` (${noDark.toLowerCase()})`}. Try other hours, a smaller above:, or with: and sky: as they are.`
    : `None of that kind shows in those hours. Moonlight or twilight may drown them: try another night, kind:any, or a smaller above:.`;

/** Hours that are past, or by day: and how to ask for the next such. */
const noHoursWords = (given: TonightOptions, { nowUtcMs, lastUtcMs }: Sought): string =>
  lastUtcMs !== null && lastUtcMs <= nowUtcMs
    ? `That hour is past tonight; for tomorrow ask ${commandLine('tonight', '', { ...given, on: 'tomorrow' })}`
    : 'Those hours are not in the dark of this night';

export const summaryOf = (picks: readonly Pick[], given: TonightOptions, sought: Sought): string => {
  const { hours, twilight, night, where } = sought;
  const { zone } = where.site;
  const noDark = noDarkWords(twilight, night, zone);
  if (hours === null) return `Nothing to list. ${noDark ?? noHoursWords(given, sought)}.`;
  if (picks.length === 0) return nothingWords(given, noDark);
  const best = listed(picks.slice(0, BEST_NAMED).map(({ target }) => commonName(target)));
  const drowned = picks.filter(isDrowned).length;
  if (drowned > picks.length / 2)
    return `A poor night for these: moonlight or twilight drowns ${drowned === picks.length ? 'all' : 'most'} of them. The least bad: ${best}.`;
  if (picks.length === 1) return `One target: ${best}.`;
  const { startUtcMs, endUtcMs } = hours.brightWindow;
  const span = `${formatClock(startUtcMs, zone)} to ${formatLocalTime(endUtcMs, zone)}`;
  return `The best: ${best}. ${picks.length} targets by the hour, ${span}:`;
};

/** "Moon 71 % lit, sets 01:03." What the list itself says of it is not said again. */
const moonNote = (
  { where, night, twilight }: Sought,
  { startUtcMs, endUtcMs }: TimeSpan,
  isListed: boolean,
): string => {
  const { observer, zone } = where.site;
  const { riseUtcMs, setUtcMs } = moonTimesOf(observer, night);
  const isWithin = (utcMs: UtcMs | null): utcMs is UtcMs => utcMs !== null && utcMs > startUtcMs && utcMs < endUtcMs;
  const events = [
    { word: 'rises', utcMs: riseUtcMs },
    { word: 'sets', utcMs: setUtcMs },
  ]
    .flatMap(({ word, utcMs }) => (isWithin(utcMs) ? [{ word, utcMs }] : []))
    .sort((a, b) => a.utcMs - b.utcMs)
    .map(({ word, utcMs }) => `${word} ${formatClock(utcMs, zone)}`);
  const { place, illuminatedFraction } = moonAt(observer, startUtcMs);
  const lit = isListed ? [] : [`${Math.round(illuminatedFraction * 100)} % lit`];
  if (events.length > 0) return `Moon ${[...lit, ...events].join(', ')}.`;
  if (place.altitudeDeg <= SUN_HORIZON_ALTITUDE_DEG) {
    const darkEndUtcMs = twilight.astronomical?.dawnUtcMs ?? endUtcMs;
    const comesUp = riseUtcMs !== null && riseUtcMs >= endUtcMs && riseUtcMs < darkEndUtcMs;
    return comesUp ? `No Moon until it rises ${formatClock(riseUtcMs, zone)}.` : 'No Moon.';
  }
  return isListed ? '' : `Moon ${lit.join('')}, up throughout.`;
};

/** Rates under which nobody goes out for a shower alone; common practice, no source. */
const LEAST_RATE = 18;

/** "Geminids, their best night: …" where a great shower has its best in this night. */
const showerNotes = ({ where, night }: Sought): readonly string[] => {
  const { observer, zone } = where.site;
  const { startUtcMs, endUtcMs } = night;
  return showersHere(observer, { startUtcMs: startUtcMs - MS_PER_DAY, endUtcMs: endUtcMs + 2 * MS_PER_DAY })
    .filter(({ shower, bestUtcMs }) => shower.zenithalHourlyRate >= LEAST_RATE && bestUtcMs < endUtcMs + MS_PER_DAY)
    .map(({ shower, bestUtcMs, moonAltitudeDeg, moonLitFraction }) => {
      const isOver = bestUtcMs < startUtcMs;
      const toCome = bestUtcMs > endUtcMs ? 'have their best tomorrow night' : 'are at their best';
      const moon = moonAltitudeDeg > 0 ? `, Moon ${Math.round(moonLitFraction * 100)} % lit` : '';
      return `Shooting stars: the ${shower.name} ${isOver ? 'had their best last night' : toCome}; look about ${formatClock(bestUtcMs, zone)}${moon}.`;
    });
};

const skyNote = (given: TonightOptions, { sky, equipment }: Sought): string =>
  `For ${SKY_WORDS[sky]} and ${equipment.saidAs}${given.with === undefined ? '; say sky:, with: and until: for yours' : ''}.`;

export const notesOf = (picks: readonly Pick[], given: TonightOptions, sought: Sought): readonly string[] => {
  const { hours, twilight, night, where } = sought;
  const { zone } = where.site;
  if (hours === null) return showerNotes(sought);
  const dark = noDarkWords(twilight, night, zone) ?? `Dark ${darkWords(twilight, night, zone)}`;
  const moon = moonNote(
    sought,
    hours.brightWindow,
    picks.some(({ target }) => target.kind === 'moon'),
  );
  return [[`${dark}.`, moon, skyNote(given, sought)].filter((part) => part !== '').join(' '), ...showerNotes(sought)];
};
