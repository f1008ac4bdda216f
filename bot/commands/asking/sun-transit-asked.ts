/** "Mercury transit next": when a planet passes before the Sun, with the filter said first. */
import { cautionText } from '../../cautions/cautions.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { capital } from '../../reply/wording.js';
import { nextSunTransit } from '../../sky/sun-transits.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime } from '../../times/index.js';

const ASKED =
  /^(?=.*\b(?:next|coming|future|soon|date|year|upcoming|sun|2[01]\d\d)\b)(?:.*\btransits? of (mercury|venus)\b|.*\b(mercury|venus)(?:'s)? transits?\b(?! (?:time|the meridian|tonight|tomorrow|at\b))|.*\b(mercury|venus)\b.*\b(?:transits?|cross(?:es|ing)?|pass(?:es|ing)? (?:over|across|before|in front of)|in front of)\b.*\b(?:the )?sun\b)/u;
const OF_MERIDIAN = /\b(?:meridian|culminat\w*|tonight|tomorrow|today|highest|safe\w*|slew\w*|look\w*)\b/u;

/** "Going from Arcturus to Mercury, does it cross the Sun": the tube's way, which is judged. */
const IS_A_WAY =
  /\b(?:from|off|leaving)\b.*\b(?:to|towards?|onto)\b|\b(?:going|go|moving|move|swing\w*|goto|point\w*|way|path) (?:\w+ )?to\b/u;

const YEAR = /\b(2[01]\d\d)\b/u;

/** From the year that is named on, where that is still to come; what the answer begins with where it is not of that year. */
const fromYear = (plain: string, nowUtcMs: UtcMs): { readonly fromUtcMs: UtcMs; readonly year: number | null } => {
  const year = YEAR.exec(plain)?.[1];
  return year === undefined
    ? { fromUtcMs: nowUtcMs, year: null }
    : { fromUtcMs: Math.max(nowUtcMs, Date.UTC(Number(year), 0, 1)), year: Number(year) };
};

/** @param plain in lower case; null: it is not asked for */
export const sunTransitAsked = (plain: string, nowUtcMs: UtcMs): Outcome | null => {
  const [, one, two, three] = OF_MERIDIAN.test(plain) || IS_A_WAY.test(plain) ? [] : (ASKED.exec(plain) ?? []);
  const name = one ?? two ?? three;
  if (name === undefined) return null;
  const planet = name === 'venus' ? 'Venus' : 'Mercury';
  const { fromUtcMs, year } = fromYear(plain, nowUtcMs);
  const { startUtcMs, endUtcMs } = nextSunTransit(planet, fromUtcMs);
  const isOfYear = year === null || new Date(startUtcMs).getUTCFullYear() === year;
  const [from, until] = [startUtcMs, endUtcMs].map((utcMs) => formatLocalDateTime(utcMs, 'UTC'));
  return reply({
    title: `${capital(planet)} before the Sun`,
    level: 'caution',
    cautions: [cautionText('sun-filter')],
    summary: `${isOfYear ? '' : `None in ${year}. `}The ${year !== null && isOfYear ? '' : 'next '}transit of ${planet} begins ${from ?? ''} and ends ${until?.split(', ').at(-1) ?? ''}, where the Sun is up then.`,
    choices: [{ label: `${planet} tonight`, run: `up ${planet}` }],
    pointsAt: NOWHERE,
  });
};
