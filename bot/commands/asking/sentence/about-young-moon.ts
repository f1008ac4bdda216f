/** "The Moon is 3 days old, where do I find it after sunset": the evening on which it is, and where it then stands. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../../../ground/durations.js';
import { timeZoneAt, type Spot } from '../../../places/index.js';
import { MOON } from '../../../sky/moon.js';
import { nextMoonPhase } from '../../../sky/moon-phase.js';
import { horizontalOf } from '../../../sky/place.js';
import { nextSun } from '../../../sky/sun-days.js';
import type { UtcMs } from '../../../sky/types.js';
import { formatClock, formatLocalDate, formatLocalDateTime } from '../../../times/index.js';
import { commandLine } from '../question-parts.js';
import { says, type Asked, type Known, type Rule } from './asked.js';
import { numberOf } from './words.js';

const AGE =
  /\b(\d{1,2}(?:\.\d)?|one|two|three|four|five|six)[ -]?(days?|hours?|hrs?|h|d)(?: |-)?old\b|\b(\d{1,2}(?:\.\d)?|one|two|three|four|five|six)[ -](?:day|hour) (?:old )?(?:moon|crescent)\b/u;
const OF_HOURS = /\b(?:hours?|hrs?|h)\b.*\bold\b|[ -]hour (?:old )?(?:moon|crescent)\b/u;
const YOUNG = /\b(?:young|youngest|thin|thinnest|new|first|baby) (?:waxing )?(?:crescent )?(?:moon|crescent)\b/u;
const SEEKS = /\b(?:when|where|find|see|look|spot|catch|visible|photograph|next|how)\b/u;
/** "When is new Moon" is of the hour of it. */
const OF_NEW = /\bnew moon\b/u;
const OTHERS =
  /\b(?:sun\b(?! ?set)|remind\w*|eclips\w*|full|quarter|phase|(?<!days? |hours? |hrs? )old moon|nebula|waning|before (?:dawn|sunrise))\b/u;

/** Old enough that anybody sees it, in days: common practice, no source. */
const USUAL_DAYS = 1.5;
const MOST_DAYS = 7;
/** Dark enough for it, and it still stands: common practice, no source. */
const AFTER_SUNSET_MS = 40 * MS_PER_MINUTE;
/** Lower than this no young Moon is looked for; common practice, no source. */
const LEAST_DEG = 5;
const ANY_DEG = -90;
const MOST_LATER_DAYS = 4;
const HOURS_A_DAY = 24;
const MONTH_DAYS = 29.5;

const ageDays = (asked: Asked): number | null => {
  const [, age, , ofMoon] = AGE.exec(asked.plain) ?? [];
  const said = age ?? ofMoon;
  if (said === undefined) return says(asked, YOUNG) && !says(asked, OF_NEW) ? USUAL_DAYS : null;
  const count = numberOf(said) ?? Number(said);
  return says(asked, OF_HOURS) ? count / HOURS_A_DAY : count;
};

/**
 * The first evening at which it is so old (and so high, where no age was said), of this lunation if that is still to come; null where the
 * Sun does not set.
 */
const eveningOf = ({ latitudeDeg, longitudeDeg }: Spot, days: number, leastDeg: number, nowUtcMs: UtcMs) => {
  const observer = { latitudeDeg, longitudeDeg, elevationM: 0 };
  const next = nextMoonPhase(0, nowUtcMs);
  for (const newUtcMs of [nextMoonPhase(0, next - (MONTH_DAYS + 2) * MS_PER_DAY), next])
    for (let later = 0; later < MOST_LATER_DAYS; later++) {
      const sunset = nextSun(observer, 'set', newUtcMs + (days + later) * MS_PER_DAY - AFTER_SUNSET_MS);
      if (sunset === null) return null;
      const utcMs = Math.round((sunset + AFTER_SUNSET_MS) / MS_PER_MINUTE) * MS_PER_MINUTE;
      if (utcMs > nowUtcMs && horizontalOf(MOON, observer, utcMs).altitudeDeg >= leastDeg) return { utcMs, newUtcMs };
    }
  return null;
};

export const youngMoon =
  ({ usual, nowUtcMs }: Known): Rule =>
  (asked) => {
    if (!says(asked, /\b(?:moon|crescent)\b/u) || !(says(asked, AGE) || says(asked, SEEKS)) || says(asked, OTHERS))
      return null;
    const days = ageDays(asked);
    const isOther =
      asked.when.night !== null ||
      asked.place !== null ||
      asked.targets.some((name) => name !== 'moon' && name !== 'crescent');
    if (days === null || days > MOST_DAYS || isOther || usual == null) return null;
    const evening = eveningOf(usual, days, AGE.test(asked.plain) ? ANY_DEG : LEAST_DEG, nowUtcMs);
    if (evening === null) return null;
    const zone = timeZoneAt(usual.latitudeDeg, usual.longitudeDeg);
    const age = ((evening.utcMs - evening.newUtcMs) / MS_PER_DAY).toFixed(1);
    const date = new Date(evening.utcMs);
    return {
      line: commandLine('altitude', 'moon', { at: date.toISOString().slice(0, 16).concat('Z') }),
      note: `New Moon ${formatLocalDateTime(evening.newUtcMs, zone)}: ${age} days old on ${formatLocalDate(evening.utcMs, zone)} at ${formatClock(evening.utcMs, zone)}, 40 min after sunset. Until the Sun has set, no binoculars.`,
      usesAll: true,
    };
  };
