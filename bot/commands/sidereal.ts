/** `sidereal`: the sidereal time a hand controller should show, to catch a wrong site, date or clock before slewing. */
import { isProblem } from '../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { hoursMinutesSeconds, isoUtc, rounded } from '../reply/wording.js';
import { siderealTimes } from '../sky/sidereal-time.js';
import { formatLocalSecond } from '../times/index.js';
import { choice, defineCommand, optional } from './core/command.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';

export const sidereal = defineCommand({
  name: 'sidereal',
  summary: 'What sidereal time should the controller show?',
  options: {
    at: atOption,
    site: siteOption,
    first: optional(choice('Say the local time first', ['time'])),
  },
  bare: 'at',
  examples: ['sidereal site:52.71,0.12', 'sidereal at:"tonight 21:00" site:"Dunedin, New Zealand"'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, utcMs } = asked;
    const times = siderealTimes(utcMs, where.site.observer.longitudeDeg);
    const shown = hoursMinutesSeconds(times.lastHours);
    const isOfClock = request.options.first === 'time';
    return reply({
      title: isOfClock ? 'Local and sidereal time' : 'Sidereal time',
      summary: isOfClock
        ? `${formatLocalSecond(utcMs, where.site.zone)}; sidereal time ${shown}.`
        : `The controller should show ${shown} at ${formatLocalSecond(utcMs, where.site.zone)}.`,
      facts: [
        { label: 'Local mean', value: hoursMinutesSeconds(times.lmstHours) },
        { label: 'Greenwich mean', value: hoursMinutesSeconds(times.gmstHours) },
      ],
      notes: [
        'Off by whole hours: time zone, daylight saving or 12 hours. Off by minutes: longitude. UT1−UTC (under 0.9 s) is left out.',
        ...asked.notes,
      ],
      pointsAt: NOWHERE,
      data: {
        utc: isoUtc(utcMs),
        gmstHours: rounded(times.gmstHours, 8),
        gastHours: rounded(times.gastHours, 8),
        lmstHours: rounded(times.lmstHours, 8),
        lastHours: rounded(times.lastHours, 8),
      },
    });
  },
});
