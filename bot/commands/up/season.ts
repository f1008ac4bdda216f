/** In which month a target is highest at midnight. */
import type { Target } from '../../catalogue/index.js';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const MARCH = 2;
const DAY_OF_EQUINOX = 20 / 30;

/** The Sun's right ascension is 0 h about 20 March, and two hours more a month; opposite to it a target is highest at midnight. Null for what moves. */
export const bestMonth = ({ body }: Target): string | null => {
  if (body.kind !== 'fixed') return null;
  const monthsAfterEquinox = ((body.raHoursJ2000 + 12) % 24) / 2;
  return MONTHS[Math.floor(monthsAfterEquinox + MARCH + DAY_OF_EQUINOX) % 12] ?? null;
};
