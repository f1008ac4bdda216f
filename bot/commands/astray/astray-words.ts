/** The causes of a miss in words, and exactly what to change for each. */
import type { CauseId, Circumstances, PointedTarget } from '../../pointing/miss/astray-types.js';
import { landedOfDate } from '../../pointing/miss/controller-belief.js';
import type { Explanation } from '../../pointing/miss/explain-miss.js';
import type { NextObservation } from '../../pointing/miss/next-observation.js';
import { degreesAndMinutesText } from '../../pointing/entering/sexagesimal.js';
import { degrees, hoursMinutesSeconds } from '../../reply/wording.js';
import { zoneName } from '../../times/index.js';
import { HOME_WORDS } from '../asking/mount-for.js';
import { offsetWords, type SiteClock } from '../../times/site-clock.js';

export const CAUSE_TITLES: Readonly<Record<CauseId, string>> = {
  'daylight-saving': 'daylight saving set wrong',
  'utc-offset-sign': 'UTC offset with the wrong sign',
  'utc-offset': 'wrong UTC offset',
  'utc-as-local': 'UTC typed as local time',
  'twelve-hours': 'AM and PM mixed up',
  'date-off-by-one': 'date off by one day',
  'day-month-swapped': 'day and month swapped',
  'longitude-sign': 'east and west swapped in the longitude',
  'minutes-as-decimals': 'minutes of arc typed as decimals',
  'latitude-sign': 'north and south swapped in the latitude',
  'latitude-longitude-swapped': 'latitude and longitude swapped',
  'hemisphere-mode': 'mount set to the other hemisphere',
  epoch: 'J2000 coordinates taken for those of date',
  'not-at-home': 'not started from home',
  'wrong-star': 'aligned on the wrong star',
  'polar-axis': 'axis not on the pole',
  'not-tracking': 'not tracking',
  'mirrored-axis': 'one axis runs backwards',
};

export interface WordContext {
  readonly circumstances: Circumstances;
  readonly clock: SiteClock;
  readonly zone: string;
  readonly target: PointedTarget;
  /** East positive; null where the magnetic model does not hold. */
  readonly magneticDeclinationDeg: number | null;
}

const siteText = (latitudeDeg: number, longitudeDeg: number): string =>
  `latitude ${degreesAndMinutesText('latitude', latitudeDeg)}, longitude ${degreesAndMinutesText('longitude', longitudeDeg)}`;

const leanWords = ({ size }: Explanation, { circumstances, magneticDeclinationDeg }: WordContext): string => {
  const [alongDeg, acrossDeg] = size as [number, number];
  const {
    mount,
    observer: { latitudeDeg },
  } = circumstances;
  if (mount === 'altaz')
    return `Level the base again: its azimuth axis leans about ${degrees(Math.hypot(alongDeg, acrossDeg), 1)}.`;
  // Across: to the west in the north, to the east in the south; the base must be turned by more than that, near the pole by much more.
  const eastDeg = (latitudeDeg < 0 ? acrossDeg : -acrossDeg) / Math.max(0.2, Math.cos((latitudeDeg * Math.PI) / 180));
  const towardsPole = latitudeDeg < 0 ? 'south' : 'north';
  const byCompassDeg = magneticDeclinationDeg === null ? null : magneticDeclinationDeg * (latitudeDeg < 0 ? -1 : 1);
  const compass =
    byCompassDeg !== null &&
    Math.abs(byCompassDeg) > 2.5 &&
    Math.abs(eastDeg - byCompassDeg) < 1.5 &&
    Math.abs(alongDeg) < 1.5
      ? ` That is what a compass does here: magnetic ${towardsPole} is ${degrees(Math.abs(byCompassDeg), 1)} ${byCompassDeg > 0 ? 'east' : 'west'} of true ${towardsPole}.`
      : '';
  return `Set the polar axis again (command pole): it seems about ${degrees(Math.abs(alongDeg), 1)} too ${alongDeg > 0 ? 'high' : 'low'} and turned about ${degrees(Math.abs(eastDeg), 1)} too far ${eastDeg > 0 ? 'east' : 'west'}.${compass}`;
};

/** What to change, in one or two sentences. */
export const correctionFor = (explanation: Explanation, context: WordContext): string => {
  const { circumstances, clock, zone } = context;
  const { observer, utcMs, mount } = circumstances;
  const { slip, size } = explanation;
  const zoneText = zoneName(utcMs, zone);
  const offsets =
    clock.daylightSavingMinutes === 0
      ? `${offsetWords(clock.utcOffsetMinutes)} with daylight saving: no`
      : `${offsetWords(clock.standardOffsetMinutes)} with daylight saving: yes (or ${offsetWords(clock.utcOffsetMinutes)} with it: no)`;
  const { local } = clock;
  const dateText = local.setLocale('en-GB').toFormat('d LLLL yyyy');
  switch (explanation.id) {
    case 'daylight-saving':
      return `Set the offset to ${offsets}.`;
    case 'utc-offset-sign':
      return `Set the offset to ${offsets}; its sign seems to be the other way round.`;
    case 'utc-offset': {
      const entered =
        slip.kind === 'clock' && slip.enteredOffsetMinutes !== undefined
          ? `; it seems to stand at ${offsetWords(slip.enteredOffsetMinutes)} in all`
          : '';
      return `Set the offset to ${offsets}${entered}.`;
    }
    case 'utc-as-local':
      return `Type the local time, ${local.toFormat('HH:mm')} ${zoneText}, not UTC; or keep UTC and set the offset to UTC+0 without daylight saving.`;
    case 'twelve-hours':
      return `Set the time to ${local.toFormat('HH:mm')}, which is ${local.setLocale('en-US').toFormat('hh:mm a')}.`;
    case 'date-off-by-one':
      return `Set the local date to ${dateText}; it seems to be a day ${slip.kind === 'days' && slip.days < 0 ? 'early' : 'late'}.`;
    case 'day-month-swapped':
      return `Set the date to ${dateText}: ${local.toFormat('MM/dd/yyyy')} where the month comes first, ${local.toFormat('dd/MM/yyyy')} where the day does.`;
    case 'longitude-sign':
      return `Set the longitude to ${degreesAndMinutesText('longitude', observer.longitudeDeg)}; it seems to be entered as ${observer.longitudeDeg < 0 ? 'east' : 'west'}.`;
    case 'latitude-sign':
      return `Set the latitude to ${degreesAndMinutesText('latitude', observer.latitudeDeg)}; it seems to be entered as ${observer.latitudeDeg < 0 ? 'north' : 'south'}.`;
    case 'latitude-longitude-swapped':
      return `Enter ${siteText(observer.latitudeDeg, observer.longitudeDeg)}; the two seem to be swapped.`;
    case 'minutes-as-decimals':
      return `Enter ${siteText(observer.latitudeDeg, observer.longitudeDeg)}: those are minutes, 60 to the degree, not decimals.`;
    case 'hemisphere-mode':
      return `Set the mount to the ${observer.latitudeDeg < 0 ? 'southern' : 'northern'} hemisphere, then start again from ${HOME_WORDS[mount]}.`;
    case 'epoch': {
      const { ofDate } = context.target;
      return slip.kind === 'epoch' && slip.slip === 'twice'
        ? 'Set coordinates to "of date" in the program or the controller, not both: they are being precessed twice.'
        : `Set program and controller to the same epoch, or type the coordinates of date: ${hoursMinutesSeconds(ofDate.raHours)}, ${degrees(ofDate.decDeg, 2)}.`;
    }
    case 'not-at-home': {
      const [primaryDeg, secondaryDeg] = size as [number, number];
      const axes = mount === 'altaz' ? ['azimuth', 'altitude'] : ['right ascension', 'declination'];
      return `Switch off, set the tube by hand to ${HOME_WORDS[mount]}, switch on, enter all again. It seems to have stood ${degrees(Math.abs(primaryDeg))} off in ${axes[0]} and ${degrees(Math.abs(secondaryDeg))} in ${axes[1]}.`;
    }
    case 'wrong-star':
      return slip.kind === 'star'
        ? `Align again, and make sure the star is ${slip.expected}: it seems ${slip.centred} was centred instead.`
        : 'Align again, and make sure of the star.';
    case 'polar-axis':
      return leanWords(explanation, context);
    case 'not-tracking':
      return `Switch sidereal tracking on, then go to the target again; it seems to have been off for about ${Math.max(1, Math.round((size as [number])[0]))} min.`;
    case 'mirrored-axis': {
      const axes =
        mount === 'altaz'
          ? { primary: 'the azimuth axis', secondary: 'the altitude axis', both: 'both axes' }
          : { primary: 'the right-ascension axis', secondary: 'the declination axis', both: 'both axes' };
      const which = slip.kind === 'axis' ? slip.axis : 'primary';
      return `Reverse ${axes[which]} in the mount's settings (or put the motor cables right); ${which === 'both' ? 'they run' : 'it runs'} backwards.`;
    }
  }
};

/** What each of two causes would give, so that the member can tell at once. */
export const nextWords = (
  next: NextObservation,
  first: Explanation,
  second: Explanation,
  circumstances: Circumstances,
): string => {
  const raText = ({ belief }: Explanation, target: PointedTarget): string => {
    const landed = landedOfDate(circumstances, belief, target);
    return `${hoursMinutesSeconds(landed.raHours).slice(0, 7)}, ${degrees(landed.decDeg)}`;
  };
  switch (next.kind) {
    case 'lst':
      return `Read the sidereal time off the controller: ${hoursMinutesSeconds(first.belief.lstHours)} speaks for "${CAUSE_TITLES[first.id]}", ${hoursMinutesSeconds(second.belief.lstHours)} for "${CAUSE_TITLES[second.id]}".`;
    case 'shown':
      return `Read the altitude and azimuth the controller shows for ${next.target.name}, and ask again with shown:ALT,AZ.`;
    case 'landed':
      return `Send it to ${next.target.name} and see where it lands: near ${raText(first, next.target)} speaks for "${CAUSE_TITLES[first.id]}", near ${raText(second, next.target)} for "${CAUSE_TITLES[second.id]}" (right ascension and declination of date).`;
    case 'wait':
      return `Touch nothing for ${next.minutes} min: if the stars drift through the eyepiece, it is "${CAUSE_TITLES['not-tracking']}".`;
  }
};
