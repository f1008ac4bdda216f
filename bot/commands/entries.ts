/** `entries`: what to type into a hand controller for a site now, and how to see that it took it. */
import { isProblem } from '../ground/problem.js';
import { degreesAndMinutesText, degreesMinutesSecondsText } from '../pointing/entering/sexagesimal.js';
import { NOWHERE, reply, type Json, type Outcome } from '../reply/reply.js';
import { degrees, direction, hoursMinutesSeconds, isoUtc, rounded } from '../reply/wording.js';
import { horizontalOf } from '../sky/place.js';
import { siderealTimes } from '../sky/sidereal-time.js';
import type { Horizontal, Observer, UtcMs } from '../sky/types.js';
import { zoneName, offsetWords, siteClock, type SiteClock } from '../times/index.js';
import { brightNamedStars, type BrightNamedStar } from '../catalogue/index.js';
import { defineCommand, type Deps } from './core/command.js';
import { SUMMER_TIME_RULE } from './asking/summer-time-rule.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';

/** The brightest star at a comfortable height, to compare with the display. */
const checkStar = (
  deps: Deps,
  observer: Observer,
  utcMs: UtcMs,
): { readonly star: BrightNamedStar; readonly at: Horizontal } | null => {
  for (const star of brightNamedStars(deps.catalogue)) {
    const at = horizontalOf(star.body, observer, utcMs);
    if (at.altitudeDeg > 25 && at.altitudeDeg < 70) return { star, at };
  }
  return null;
};

/** Both usual ways to enter the offset; in winter they are one. */
const offsetFacts = ({ daylightSavingMinutes, standardOffsetMinutes, utcOffsetMinutes }: SiteClock): string =>
  daylightSavingMinutes === 0
    ? `${offsetWords(utcOffsetMinutes)}, daylight saving: no`
    : `${offsetWords(standardOffsetMinutes)} with daylight saving: yes; if it asks for no daylight saving, ${offsetWords(utcOffsetMinutes)}. Never both.`;

const angleData = (axis: 'latitude' | 'longitude', deg: number): Json => ({
  deg: rounded(deg, 6),
  degreesMinutes: degreesAndMinutesText(axis, deg),
  degreesMinutesSeconds: degreesMinutesSecondsText(axis, deg),
});

export const entries = defineCommand({
  name: 'entries',
  summary: 'What do I type into the controller for this site now?',
  options: {
    site: siteOption,
    at: atOption,
  },
  bare: 'site',
  examples: ['entries 52.71,0.12', 'entries "Alice Springs" at:"tonight 21:00"'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked))
      return asked.problem === 'no-site' ? { ...asked, message: `${asked.message} ${SUMMER_TIME_RULE}` } : asked;
    const { where, utcMs } = asked;
    const { observer, zone } = where.site;
    const { latitudeDeg, longitudeDeg, elevationM } = observer;
    const clock = siteClock(zone, utcMs);
    const { local } = clock;
    const { lastHours } = siderealTimes(utcMs, longitudeDeg);
    const check = checkStar(deps, observer, utcMs);
    const isReadableBothWays = local.day <= 12 && local.day !== local.month;
    return reply({
      title: 'What to type into the controller',
      pointsAt:
        check === null
          ? NOWHERE
          : [{ what: check.star.name, when: { utcMs }, observer, zone, direction: check.star.body }],
      summary: `Type these for ${local.toFormat(local.second === 0 ? 'HH:mm' : 'HH:mm:ss')} ${zoneName(utcMs, zone)}; the controller should then show sidereal time ${hoursMinutesSeconds(lastHours)}.`,
      facts: [
        {
          label: 'Latitude',
          value: `${degreesAndMinutesText('latitude', latitudeDeg)} (${degreesMinutesSecondsText('latitude', latitudeDeg)})`,
        },
        {
          label: 'Longitude',
          value: `${degreesAndMinutesText('longitude', longitudeDeg)} (${degreesMinutesSecondsText('longitude', longitudeDeg)})`,
        },
        { label: 'Elevation', value: `${Math.round(elevationM)} m` },
        {
          label: 'Date',
          value: `month first ${local.toFormat('MM/dd/yyyy')}, day first ${local.toFormat('dd/MM/yyyy')}`,
        },
        {
          label: 'Local time',
          value: `${local.toFormat('HH:mm:ss')} (${local.setLocale('en-US').toFormat('hh:mm:ss a')})`,
        },
        { label: 'Offset', value: offsetFacts(clock) },
        ...(check === null
          ? []
          : [
              {
                label: `Check ${check.star.name}`,
                value: `the display should give altitude ${degrees(check.at.altitudeDeg)}, azimuth ${Math.round(check.at.azimuthDeg) % 360}° (${direction(check.at.azimuthDeg).split(',')[0]})`,
              },
            ]),
      ],
      notes: [
        ...(isReadableBothWays
          ? [
              `Day and month can be swapped today without anyone noticing: make sure it says ${local.setLocale('en-GB').toFormat('d LLLL')}.`,
            ]
          : []),
        ...(longitudeDeg < 0
          ? [
              `Where longitude is asked without a letter, west is usually negative (${rounded(longitudeDeg, 2)}); where only east exists, it is ${rounded(longitudeDeg + 360, 2)}.`,
            ]
          : ['East longitude is usually positive; a few controllers count west as positive, so look for the letter.']),
        ...asked.notes,
      ],
      data: {
        utc: isoUtc(utcMs),
        latitude: angleData('latitude', latitudeDeg),
        longitude: angleData('longitude', longitudeDeg),
        elevationM: rounded(elevationM, 1),
        localDate: local.toFormat('yyyy-MM-dd'),
        localDateMonthFirst: local.toFormat('MM/dd/yyyy'),
        localDateDayFirst: local.toFormat('dd/MM/yyyy'),
        localTime: local.toFormat('HH:mm:ss'),
        zone,
        utcOffsetHours: rounded(clock.utcOffsetMinutes / 60, 4),
        standardUtcOffsetHours: rounded(clock.standardOffsetMinutes / 60, 4),
        daylightSaving: clock.daylightSavingMinutes !== 0,
        lastHours: rounded(lastHours, 8),
        checkStar:
          check === null
            ? null
            : {
                name: check.star.name,
                altitudeDeg: rounded(check.at.altitudeDeg, 3),
                azimuthDeg: rounded(check.at.azimuthDeg, 3),
              },
      },
    });
  },
});
