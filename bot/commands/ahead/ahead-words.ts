/** What is coming, a line each: phases, dark weekends, eclipses, showers, planets, meetings. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import type { DarkNight } from '../../ahead/moonless.js';
import type { Meeting } from '../../ahead/meetings.js';
import type { ShowerHere } from '../../ahead/showers.js';
import type { Fact } from '../../reply/reply.js';
import { compassWord, degrees, duration, listed, magnitudeText } from '../../reply/wording.js';
import type { Eclipse } from '../../sky/eclipses.js';
import { planetLook } from '../../sky/planet-look.js';
import type { PlanetEvent } from '../../sky/planet-events.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatDate, formatLocalDate, formatLocalTime, localDateAt } from '../../times/index.js';

/** "Sat 12 Dec", with the year where it is not the one that the answer begins in. */
export const dayWords = (utcMs: UtcMs, zone: string, nowUtcMs: UtcMs): string => {
  const said = formatLocalDate(utcMs, zone);
  return localDateAt(utcMs, zone).year === localDateAt(nowUtcMs, zone).year ? said.replace(/ \d{4}$/, '') : said;
};

/** "night of Mon 14 Dec" before noon belongs to the evening before. */
const nightWords = (utcMs: UtcMs, zone: string, nowUtcMs: UtcMs): string =>
  `night of ${dayWords(utcMs - 12 * MS_PER_HOUR, zone, nowUtcMs)}`;

export const phaseFact = (
  phases: readonly { readonly name: string; readonly utcMs: UtcMs }[],
  zone: string,
  nowUtcMs: UtcMs,
): Fact => ({
  label: 'Moon',
  value: listed(phases.map(({ name, utcMs }) => `${name} ${dayWords(utcMs, zone, nowUtcMs)}`)),
});

/** A night of so many hours without the Moon is a whole one; common practice, no source. */
const WHOLE_NIGHT_MS = 4 * MS_PER_HOUR;

/** Long enough to be counted as a dark night without a word. */
export const isWholeNight = ({ span }: DarkNight): boolean => span.endUtcMs - span.startUtcMs >= WHOLE_NIGHT_MS;

const darkNightWords = (night: DarkNight, zone: string): string => {
  const { date, span } = night;
  return `${formatDate(date).replace(/^\w+ | \d{4}$/g, '')} (${isWholeNight(night) ? '' : 'only '}${formatClock(span.startUtcMs, zone)} to ${formatClock(span.endUtcMs, zone)})`;
};

/** "Next: 5 Dec (17:52 to 05:33); before it only 28 Nov (17:55 to 20:04)."; null where there is none. */
export const darkSummary = (nights: readonly DarkNight[], zone: string): string | null => {
  const [first] = nights;
  const whole = nights.find(isWholeNight);
  if (first === undefined) return null;
  return whole === undefined || whole === first
    ? `Next: ${darkNightWords(first, zone)}.`
    : `Next: ${darkNightWords(whole, zone)}; before it ${darkNightWords(first, zone)}.`;
};

export const darkFact = (nights: readonly DarkNight[], zone: string): Fact => ({
  label: 'Moonless Saturdays',
  value:
    nights.length === 0
      ? 'none: the Moon or bright twilight has them all'
      : listed(nights.map((night) => darkNightWords(night, zone))),
});

const ECLIPSE_TITLES: Readonly<Record<Eclipse['of'], Readonly<Record<Eclipse['kind'], string>>>> = {
  Sun: {
    partial: 'Partial eclipse of the Sun',
    annular: 'Annular eclipse of the Sun',
    total: 'Total eclipse of the Sun',
    penumbral: 'Eclipse of the Sun',
  },
  Moon: {
    partial: 'Partial eclipse of the Moon',
    annular: 'Eclipse of the Moon',
    total: 'Total eclipse of the Moon',
    penumbral: 'Penumbral eclipse of the Moon',
  },
};

export const eclipseName = ({ of, kind }: Pick<Eclipse, 'of' | 'kind'>): string => ECLIPSE_TITLES[of][kind];

const coveredWords = ({ kind, of, coveredFraction }: Eclipse): string => {
  if (kind === 'penumbral') return 'a faint shading at most';
  if (kind === 'total') return of === 'Sun' ? 'all of the Sun covered' : 'all of it in the shadow';
  return `${Math.min(99, Math.max(1, Math.round(coveredFraction * 100)))} % covered`;
};

/** Where it stands at its greatest, or what of it is left to see. */
const whereWords = ({ of, altitudeDeg, azimuthDeg }: Eclipse): string =>
  altitudeDeg > 0
    ? `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)}`
    : `the ${of} below the horizon then: only a part of it is seen here`;

/** "Sun 21 Feb, " where that is not the day on which it begins: an eclipse of the Moon often runs over midnight. */
const onDay = (utcMs: UtcMs, startUtcMs: UtcMs, zone: string): string => {
  const [day, first] = [utcMs, startUtcMs].map((one) => formatLocalDate(one, zone));
  return day === first ? '' : `${day?.replace(/ \d{4}$/, '') ?? ''}, `;
};

export const eclipseFact = (eclipse: Eclipse, zone: string, nowUtcMs: UtcMs): Fact => {
  const { span, wholeSpan, greatestUtcMs } = eclipse;
  const { startUtcMs, endUtcMs } = span;
  return {
    label: eclipseName(eclipse),
    value: [
      `${dayWords(startUtcMs, zone, nowUtcMs)}, ${formatClock(startUtcMs, zone)} to ${onDay(endUtcMs, startUtcMs, zone)}${formatLocalTime(endUtcMs, zone)}`,
      `greatest ${onDay(greatestUtcMs, startUtcMs, zone)}${formatClock(greatestUtcMs, zone)}, ${coveredWords(eclipse)}, ${whereWords(eclipse)}`,
      ...(wholeSpan === null
        ? []
        : [
            `${eclipse.kind === 'annular' ? 'ring' : 'total'} ${formatClock(wholeSpan.startUtcMs, zone)} to ${formatClock(wholeSpan.endUtcMs, zone)} (${duration(wholeSpan.endUtcMs - wholeSpan.startUtcMs)})`,
          ]),
    ].join('; '),
  };
};

const moonlightWords = ({ moonAltitudeDeg, moonLitFraction }: ShowerHere): string => {
  if (moonAltitudeDeg <= 0) return 'no Moon then';
  return `Moon ${Math.round(moonLitFraction * 100)} % lit`;
};

/** What a good observer under a dark sky may count in that hour. */
const rateWords = ({ hourlyRate: rate }: ShowerHere): string =>
  `up to ${rate < 10 ? Math.max(1, Math.round(rate)) : Math.round(rate / 5) * 5} an hour`;

/** "Mon 14 Dec, best about 01:50, up to 140 an hour, no Moon then": the night by its evening. */
export const showerFact = (here: ShowerHere, zone: string, nowUtcMs: UtcMs): Fact => ({
  label: here.shower.name,
  value: `${nightWords(here.bestUtcMs, zone, nowUtcMs)}, best about ${formatClock(here.bestUtcMs, zone)}; ${rateWords(here)}, ${moonlightWords(here)}`,
});

/** Where its meteors come from, for whoever asks about one. */
export const radiantWords = ({ shower, radiantAltitudeDeg, radiantAzimuthDeg }: ShowerHere): string =>
  `${shower.name} (${shower.code}): their radiant then stands ${degrees(radiantAltitudeDeg)} high in the ${compassWord(radiantAzimuthDeg)}; look half the sky away from it.`;

/** So far from its maximum a rate that falls so fast is another; common practice, no source. */
const FAR_MS = 3 * MS_PER_HOUR;
const NARROW_SLOPE = 0.3;

/** "Their short peak is at 20:43 on Mon 3 Jan 2027, 10 h before: the rate is reckoned for that hour here." */
export const peakWords = (
  { shower, maximumUtcMs, bestUtcMs }: ShowerHere,
  zone: string,
  nowUtcMs: UtcMs,
): readonly string[] => {
  const awayMs = bestUtcMs - maximumUtcMs;
  if (Math.abs(awayMs) < FAR_MS || Math.max(...shower.profile.slopes) < NARROW_SLOPE) return [];
  const hours = Math.round(Math.abs(awayMs) / MS_PER_HOUR);
  return [
    `${shower.name}: the peak itself is ${dayWords(maximumUtcMs, zone, nowUtcMs)} about ${formatClock(maximumUtcMs, zone)}, ${hours} h ${awayMs > 0 ? 'before' : 'after'} that hour, and short; at the peak up to ${shower.zenithalHourlyRate} with the radiant overhead.`,
  ];
};

/** Lower than this in twilight an elongation is nothing to go out for; common practice, no source. */
const LEAST_TWILIGHT_DEG = 5;

const twilightWords = (altitudeDeg: number | null, isMorning: boolean): string => {
  if (altitudeDeg === null) return '';
  return altitudeDeg < LEAST_TWILIGHT_DEG
    ? '; too low in twilight from here'
    : `; ${degrees(altitudeDeg)} high from here at civil ${isMorning ? 'dawn' : 'dusk'}`;
};

/** "; 13.8″ across": how large the disc is then. */
const acrossWords = ({ planet, utcMs }: PlanetEvent): string => {
  const look = planetLook(planet, utcMs);
  return look === null ? '' : `, ${look.diameterArcsec.toFixed(1)}″ across`;
};

export const planetFact = (
  event: PlanetEvent,
  twilightAltitudeDeg: number | null,
  zone: string,
  nowUtcMs: UtcMs,
): Fact => ({
  label: event.planet,
  value:
    event.what === 'opposition'
      ? `opposition ${dayWords(event.utcMs, zone, nowUtcMs)}, up all night, magnitude ${magnitudeText(event.magnitude)}${acrossWords(event)}`
      : `${degrees(event.elongationDeg ?? 0)} from the Sun in the ${event.visibility ?? ''} sky, its greatest elongation, ${dayWords(event.utcMs, zone, nowUtcMs)}${twilightWords(twilightAltitudeDeg, event.visibility === 'morning')}`,
});

export const meetingFact = (meeting: Meeting, zone: string, nowUtcMs: UtcMs): Fact => ({
  label: `${meeting.names[0]} and ${meeting.names[1]}`,
  value: `${degrees(meeting.separationDeg, 1)} apart ${dayWords(meeting.utcMs, zone, nowUtcMs)} at ${formatClock(meeting.utcMs, zone)}, ${degrees(meeting.altitudeDeg)} high in the ${compassWord(meeting.azimuthDeg)}`,
});
