/** Exactly what to change for each cause of a miss. */
import type { CauseId, Circumstances, PointedTarget } from '../../pointing/miss/astray-types.js';
import { lstErrorS, type Belief } from '../../pointing/miss/controller-belief.js';
import type { Explanation } from '../../pointing/miss/explain-miss.js';
import type { Part } from '../../pointing/miss/mistake-types.js';
import { amountReadings, type AmountReading } from '../../pointing/miss/amount-readings.js';
import { degreesAndMinutesText } from '../../pointing/entering/sexagesimal.js';
import { degrees, duration, hoursMinutesSeconds } from '../../reply/wording.js';
import { wrapDeg180 } from '../../sky/angles.js';
import { zoneName, offsetWords, type SiteClock } from '../../times/index.js';
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { HOME_WORDS } from '../asking/mount-for.js';

export interface WordContext {
  readonly circumstances: Circumstances;
  readonly clock: SiteClock;
  readonly zone: string;
  readonly target: PointedTarget;
  /** East positive; null where the magnetic model does not hold. */
  readonly magneticDeclinationDeg: number | null;
}

type Say = (part: Part, context: WordContext, belief: Belief) => string;

const siteText = ({ latitudeDeg, longitudeDeg }: Circumstances['observer']): string =>
  `latitude ${degreesAndMinutesText('latitude', latitudeDeg)}, longitude ${degreesAndMinutesText('longitude', longitudeDeg)}`;

const offsetsText = ({ clock }: WordContext): string =>
  clock.daylightSavingMinutes === 0
    ? `${offsetWords(clock.utcOffsetMinutes)} with daylight saving: no`
    : `${offsetWords(clock.standardOffsetMinutes)} with daylight saving: yes (or ${offsetWords(clock.utcOffsetMinutes)} with it: no)`;

const dateText = ({ clock }: WordContext): string => clock.local.setLocale('en-GB').toFormat('d LLLL yyyy');

/** Where the turn is the compass's own: magnetic south lies as far to the west as magnetic north to the east. */
const compassWords = (turnDeg: number, declinationDeg: number | null, towards: 'north' | 'south'): string => {
  if (declinationDeg === null || Math.abs(declinationDeg) < 2.5 || Math.abs(turnDeg - declinationDeg) > 1.5) return '';
  const isEast = declinationDeg > 0 === (towards === 'north');
  return ` That is what a compass does here: magnetic ${towards} is ${degrees(Math.abs(declinationDeg), 1)} ${isEast ? 'east' : 'west'} of true ${towards}.`;
};

const sideways = (deg: number): string => `${degrees(Math.abs(deg), 1)} ${deg > 0 ? 'east' : 'west'}`;

const polarAxisWords: Say = ({ size }, { circumstances, magneticDeclinationDeg }) => {
  const [raisedDeg, turnDeg, tiltDeg] = size as [number, number, number];
  const { mount, observer } = circumstances;
  if (mount === 'altaz')
    return `Level the base again: its azimuth axis leans about ${degrees(Math.hypot(raisedDeg, tiltDeg), 1)}.`;
  const isSouthern = observer.latitudeDeg < 0;
  // Turned clockwise from above, the end at the south pole goes west.
  const poleTurnDeg = isSouthern ? -turnDeg : turnDeg;
  const found = `it seems about ${degrees(Math.abs(raisedDeg), 1)} too ${raisedDeg > 0 ? 'high' : 'low'} and turned about ${sideways(poleTurnDeg).replace(' ', ' too far ')}`;
  return `Set the polar axis again (command pole): ${found}.${compassWords(turnDeg, Math.abs(raisedDeg) < 1.5 ? magneticDeclinationDeg : null, isSouthern ? 'south' : 'north')}`;
};

const facingWords: Say = ({ size }, { magneticDeclinationDeg }) => {
  const [turnDeg] = size as [number];
  const back = turnDeg > 0 ? 'west (anticlockwise from above)' : 'east (clockwise from above)';
  return Math.abs(turnDeg) > 165
    ? 'Turn the base half round: it faces south where the controller takes it to face north. Or align it on a star.'
    : `Turn the base ${degrees(Math.abs(turnDeg), 1)} to the ${back}, or align on a star: it stands ${degrees(Math.abs(turnDeg), 1)} too far ${turnDeg > 0 ? 'east' : 'west'}.${compassWords(turnDeg, magneticDeclinationDeg, 'north')}`;
};

const readingWords = (reading: AmountReading): string => {
  switch (reading.kind) {
    case 'clock':
      return `the clock ${duration(Math.abs(reading.minutes) * MS_PER_MINUTE)} ${reading.minutes > 0 ? 'fast' : 'slow'}`;
    case 'date':
      return `the date ${Math.abs(reading.days)} days ${reading.days > 0 ? 'late' : 'early'}`;
    case 'default-date':
      return 'the date still at 1 January, as after a dead battery';
    case 'longitude':
      return `the longitude at ${degreesAndMinutesText('longitude', reading.longitudeDeg)}`;
    case 'stored-place':
      return `still at ${reading.name}`;
  }
};

/** Minutes of sidereal time by which the controller is ahead, as one part makes it. */
const minutesOf = ({ size }: Part, belief: Belief): number =>
  size === null ? lstErrorS(belief) / 60 : wrapDeg180(size[0]! / 4) * 4;

const amountWords: Say = (part, context, belief) => {
  const { observer, places } = context.circumstances;
  const minutes = minutesOf(part, belief);
  const then = `set ${dateText(context)}, ${context.clock.local.toFormat('HH:mm')}, ${offsetsText(context)}, ${siteText(observer)}.`;
  if (part.slip.kind === 'place')
    return `Your controller seems still to stand at ${part.slip.name}. Enter ${siteText(observer)}.`;
  if (part.slip.kind === 'default-date')
    return `The date on your controller seems still to be 1 January, as after a dead battery. So ${then}`;
  const readings = amountReadings(minutes, context.clock.local.ordinal, observer.longitudeDeg, places);
  const ahead = minutes > 0 ? 'ahead' : 'behind';
  return `Your controller is ${duration(Math.abs(minutes) * MS_PER_MINUTE)} ${ahead} in sidereal time. Any one of these gives that; check in this order: ${readings.map(readingWords).join('; ')}. Then ${then}`;
};

const SAY: Readonly<Record<CauseId, Say>> = {
  'daylight-saving': (_, context) => `Set the offset to ${offsetsText(context)}.`,
  'utc-offset-sign': (_, context) =>
    `Set the offset to ${offsetsText(context)}; its sign seems to be the other way round.`,
  'utc-offset': ({ slip }, context) => {
    const entered =
      slip.kind === 'clock' && slip.enteredOffsetMinutes !== undefined
        ? `; it seems to stand at ${offsetWords(slip.enteredOffsetMinutes)} in all`
        : '';
    return `Set the offset to ${offsetsText(context)}${entered}.`;
  },
  'utc-as-local': (_, { clock, circumstances, zone }) =>
    `Type the local time, ${clock.local.toFormat('HH:mm')} ${zoneName(circumstances.utcMs, zone)}, not UTC; or keep UTC and set the offset to UTC+0 without daylight saving.`,
  'twelve-hours': (_, { clock: { local } }) =>
    `Set the time to ${local.toFormat('HH:mm')}, which is ${local.setLocale('en-US').toFormat('hh:mm a')}.`,
  'date-off-by-one': ({ slip }, context) =>
    `Set the local date to ${dateText(context)}; it seems to be a day ${slip.kind === 'days' && slip.days < 0 ? 'early' : 'late'}.`,
  'day-month-swapped': (_, context) =>
    `Set the date to ${dateText(context)}: ${context.clock.local.toFormat('MM/dd/yyyy')} where the month comes first, ${context.clock.local.toFormat('dd/MM/yyyy')} where the day does.`,
  'longitude-sign': (_, { circumstances: { observer } }) =>
    `Set the longitude to ${degreesAndMinutesText('longitude', observer.longitudeDeg)}; it seems to be entered as ${observer.longitudeDeg < 0 ? 'east' : 'west'}.`,
  'latitude-sign': (_, { circumstances: { observer } }) =>
    `Set the latitude to ${degreesAndMinutesText('latitude', observer.latitudeDeg)}; it seems to be entered as ${observer.latitudeDeg < 0 ? 'north' : 'south'}.`,
  'latitude-longitude-swapped': (_, { circumstances: { observer } }) =>
    `Enter ${siteText(observer)}; the two seem to be swapped.`,
  'minutes-as-decimals': (_, { circumstances: { observer } }) =>
    `Enter ${siteText(observer)}: those are minutes, 60 to the degree, not decimals.`,
  'hemisphere-mode': (_, { circumstances: { observer, mount } }) =>
    `Set the mount to the ${observer.latitudeDeg < 0 ? 'southern' : 'northern'} hemisphere, then start again from ${HOME_WORDS[mount]}.`,
  epoch: ({ slip }, { target: { ofDate } }) =>
    slip.kind === 'epoch' && slip.slip === 'twice'
      ? 'Set coordinates to "of date" in the program or the controller, not both: they are being precessed twice.'
      : `Set program and controller to the same epoch, or type the coordinates of date: ${hoursMinutesSeconds(ofDate.raHours)}, ${degrees(ofDate.decDeg, 2)}.`,
  'not-at-home': ({ size }, { circumstances: { mount } }) => {
    const [primaryDeg, secondaryDeg] = size as [number, number];
    const axes = mount === 'altaz' ? ['azimuth', 'altitude'] : ['right ascension', 'declination'];
    return `Switch off, set the tube by hand to ${HOME_WORDS[mount]}, switch on, enter all again. It seems to have stood ${degrees(Math.abs(primaryDeg))} off in ${axes[0]} and ${degrees(Math.abs(secondaryDeg))} in ${axes[1]}.`;
  },
  'wrong-star': ({ slip }) =>
    slip.kind === 'star'
      ? `Align again, and make sure the star is ${slip.expected}: it seems ${slip.centred} was centred instead.`
      : 'Align again, and make sure of the star.',
  'polar-axis': polarAxisWords,
  'not-tracking': ({ size }) =>
    `Switch sidereal tracking on, then go to the target again; it seems to have been off for about ${Math.max(1, Math.round((size as [number])[0]))} min.`,
  'mirrored-axis': ({ slip }, { circumstances: { mount } }) => {
    const axes =
      mount === 'altaz'
        ? { primary: 'the azimuth axis', secondary: 'the altitude axis', both: 'both axes' }
        : { primary: 'the right-ascension axis', secondary: 'the declination axis', both: 'both axes' };
    const which = slip.kind === 'axis' ? slip.axis : 'primary';
    const other =
      mount === 'german' && which === 'secondary'
        ? ' Or the tube is on the other side of the pier than the controller takes it to be: start again from home.'
        : '';
    return `Reverse ${axes[which]} in the mount's settings (or put the motor cables right); ${which === 'both' ? 'they run' : 'it runs'} backwards.${other}`;
  },
  'sidereal-amount': amountWords,
  facing: facingWords,
};

/** What to change, in a sentence or two for each mistake. */
export const correctionFor = ({ parts, belief }: Explanation, context: WordContext): string =>
  parts.map((part) => SAY[part.id](part, context, belief)).join(' And: ');
