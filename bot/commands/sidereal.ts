/** `sidereal`: the sidereal time a hand controller should show, to catch a wrong site, date or clock before slewing. */
import { reply, type Outcome } from '../reply/reply.js';
import { hoursMinutesSeconds, isoUtc, rounded } from '../reply/wording.js';
import { siderealTimes } from '../sky/index.js';
import { formatLocalDateTime } from '../times/index.js';
import { defineCommand, optional, text } from './command.js';
import { audienceOf, siteNotes, timeFor } from './question-parts.js';
import { siteFor } from './resolve-site.js';

export const sidereal = defineCommand({
  name: 'sidereal',
  summary: 'What sidereal time should the controller show?',
  options: {
    at: optional(text('When: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('Where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  },
  bare: 'at',
  examples: ['sidereal site:52.71,0.12', 'sidereal at:"tonight 21:00" site:"Dunedin, New Zealand"'],
  run: async (deps, { options, asker, nowUtcMs }): Promise<Outcome> => {
    const where = await siteFor(deps, asker, options.site);
    if ('problem' in where) return where;
    const { observer, zone } = where.site;
    const time = timeFor(options.at, zone, nowUtcMs);
    if ('problem' in time) return time;
    const times = siderealTimes(time.utcMs, observer.longitudeDeg);
    return reply({
      title: 'Sidereal time',
      summary: `The controller should show ${hoursMinutesSeconds(times.lastHours)} at ${formatLocalDateTime(time.utcMs, zone)}.`,
      facts: [
        { label: 'Local mean', value: hoursMinutesSeconds(times.lmstHours) },
        { label: 'Greenwich mean', value: hoursMinutesSeconds(times.gmstHours) },
      ],
      notes: [
        'Off by whole hours: time zone, daylight saving or 12 hours. Off by minutes: longitude. UT1−UTC (under 0.9 s) is left out.',
        ...time.notes, ...siteNotes(where),
      ],
      audience: audienceOf(where),
      data: {
        utc: isoUtc(time.utcMs), gmstHours: rounded(times.gmstHours, 8), gastHours: rounded(times.gastHours, 8),
        lmstHours: rounded(times.lmstHours, 8), lastHours: rounded(times.lastHours, 8),
      },
    });
  },
});
