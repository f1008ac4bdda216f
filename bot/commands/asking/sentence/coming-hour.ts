/** An hour without am or pm, asked late in the evening: the one of the coming morning where that is still dark, else said to be past. Pure. */
import type { DayAt } from './day-at.js';
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import { duration } from '../../../reply/wording.js';
import type { When } from './when.js';

const EVENING = /^(1[7-9]|2[0-3]):(\d\d)$/u;
/** So late the evening's reading of an hour may still be meant. */
const LEAST_PAST_MINUTES = 10;
/** The words say which: by the 24-hour clock, by am or pm, by the part of the day, or that it is past. */
const SAYS_WHICH =
  /\b(?:1[3-9]|2[0-3])[:.h]?(?:[0-5]\d)?\b|\d ?[ap]\.?m\b|\b(?:evening|afternoon|yesterday|earlier|ago|was|were|did|had|utc?|gmt|bst)\b/u;
/** What is waited for has a reading of its own. */
const OF_OTHERS =
  /\b(?:remind\w*|wake|ping|alert|tell me|let me know|warn|between|from|until|till|since|bright\w*|shiny|shining)\b/u;

/** What is to be told of, in the small hours: the hour that comes next, be it of the morning. */
const REMINDER = /\b(?:remind\w*|alarm|wake|ping|alert|nudge|poke|buzz)\b/u;
const withNextHour = (when: When, hour: string, morning: string, day: DayAt): When => {
  const toMorning = -day.minutesPast(morning);
  const isMorningNext = toMorning > 0 && toMorning < -day.minutesPast(hour);
  return isMorningNext
    ? { ...when, hour: morning, hourNote: `Took ${morning}, the next to come; for ${hour} say pm.` }
    : when;
};

/** @param plain the sentence in lower case */
export const withComingHour = (when: When, plain: string, day: DayAt | null | undefined): When => {
  const [hour = '', hours, minutes = ''] = EVENING.exec(when.hour ?? '') ?? [];
  const isTonight = when.night === null || /^(?:tonight|today)$/u.test(when.night);
  if (hours === undefined || day == null || !isTonight || SAYS_WHICH.test(plain)) return when;
  const morning = `${String(Number(hours) - 12).padStart(2, '0')}:${minutes}`;
  if (REMINDER.test(plain) && !/\btonight\b/u.test(plain)) return withNextHour(when, hour, morning, day);
  if (OF_OTHERS.test(plain)) return when;
  const past = day.minutesPast(hour);
  if (past < LEAST_PAST_MINUTES) return when;
  return !day.isDark(morning)
    ? {
        ...when,
        hourNote: `${hour} is past, ${duration(past * MS_PER_MINUTE)} ago; for the morning say ${Number(hours) - 12}am.`,
      }
    : {
        ...when,
        hour: morning,
        hourNote: `Took ${morning} of the coming morning, as ${hour} is past; for another say am or pm.`,
      };
};
