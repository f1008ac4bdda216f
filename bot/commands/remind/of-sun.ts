/** Whether what is to be remembered sends somebody to look at the Sun: it is then judged as the Sun is. */
import type { PointsAt } from '../../reply/reply.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

const LOOKS =
  'look|see|view|watch|observ|imag|photo|shoot|film|point|aim|track|follow|find|project|sketch|draw|show|catch|focus|spot|record|measure';
const AT_SUN = new RegExp(
  `\\b(?:${LOOKS})\\w*\\b.*\\bsun(?:'?s)?\\b|\\b(?:sunspots?|solar|prominences?|h ?-? ?alpha)\\b|^(?:the )?sun\\b`,
  'iu',
);
/** "before the sun is up" is an hour. */
const AS_HOUR =
  /\b(?:before|after|until|till|once|while|by)\s+(?:the\s+)?sun(?:'s|s| is| has)?\s+(?:\w+ing|rises?|rose|sets?|goes down|comes? up|up|down)\b/giu;
/** An eclipse that is not said to be the Moon's may be the Sun's. */
const ECLIPSE = /\beclipses?\b/iu;
const OF_MOON = /\b(?:lunar|moon)\b/iu;

export const sendsToSun = (say: string | undefined): boolean => {
  const words = (say ?? '').replace(AS_HOUR, ' ');
  return AT_SUN.test(words) || (ECLIPSE.test(words) && !OF_MOON.test(words));
};

/** The Sun itself is always judged grave, whether up or down then: what comes again comes by day at another time of year. */
export const sunAt = ({ site: { observer, zone } }: ResolvedSite, utcMs: UtcMs): PointsAt => ({
  what: 'the Sun',
  when: { utcMs },
  observer,
  zone,
  direction: SUN,
});
