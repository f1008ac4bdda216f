/** The causes of a miss in words, and which reading tells two of them apart. */
import type { CauseId, Circumstances, PointedTarget } from '../../pointing/miss/astray-types.js';
import type { Explanation } from '../../pointing/miss/explain-miss.js';
import { landedOfDate } from '../../pointing/miss/landing.js';
import type { NextObservation } from '../../pointing/miss/next-observation.js';
import { degrees, hoursMinutesSeconds } from '../../reply/wording.js';

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
  'sidereal-amount': 'clock, date or stored place off',
  facing: 'base turned',
};

const PRECESSED_TWICE = 'coordinates of date precessed a second time';

/** An alt-azimuth mount has no pole to miss; the epochs may be mixed up either way. */
export const causeTitle = ({ parts }: Pick<Explanation, 'parts'>, { mount }: Circumstances): string =>
  parts
    .map(({ id, slip }) => {
      if (id === 'polar-axis' && mount === 'altaz') return 'base not level';
      return slip.kind === 'epoch' && slip.slip === 'twice' ? PRECESSED_TWICE : CAUSE_TITLES[id];
    })
    .join(', and ');

/** What each of two causes would give, so that the member can tell at once. */
export const nextWords = (
  next: NextObservation,
  first: Explanation,
  second: Explanation,
  circumstances: Circumstances,
): string => {
  const [a, b] = [first, second].map((cause) => causeTitle(cause, circumstances));
  const raText = ({ belief }: Explanation, target: PointedTarget): string => {
    const landed = landedOfDate(circumstances, belief, target);
    return `${hoursMinutesSeconds(landed.raHours).slice(0, 7)}, ${degrees(landed.decDeg)}`;
  };
  switch (next.kind) {
    case 'lst':
      return `Read the sidereal time off the controller: ${hoursMinutesSeconds(first.belief.lstHours)} speaks for "${a}", ${hoursMinutesSeconds(second.belief.lstHours)} for "${b}". Ask again with lst: and what it shows.`;
    case 'shown':
      return `Read the altitude and azimuth the controller shows for ${next.target.name}, and ask again with shown:ALT,AZ.`;
    case 'landed':
      return `Send it to ${next.target.name} and see where it lands: near ${raText(first, next.target)} speaks for "${a}", near ${raText(second, next.target)} for "${b}" (right ascension and declination of date).`;
    case 'wait':
      return `Touch nothing for ${next.minutes} min: if the stars drift through the eyepiece, it is "${CAUSE_TITLES['not-tracking']}".`;
  }
};
