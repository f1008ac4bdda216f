/** "Make it half 6", "7 instead", "later, say 10", "push it back an hour": another hour or night for what was said before. Pure. */
import type { UtcMs } from '../../../sky/types.js';
import { takeWhen } from '../sentence/when.js';
import { sentenceOf } from '../sentence/words.js';
import { minutesOf, clock, shiftedTimes, tellsShift } from './shift-time.js';
import type { Times } from './told-line.js';

const BEGINS =
  '(?:(?:no|nope|ok|okay|oh|um|and|but|sorry|hm+|please|pls|actually|wait|hang on|(?:so|too|thats too|very) (?:late|early|soon|low|long)),? )*(?:(?:can|could|would) (?:you|we|u) )?(?:please |just )*';
const WHAT = '(?:it|that|this|the reminder|the alarm|the time|that one|mine)';
const MADE = `(?:make|change|set|move|push|put|shift|switch|bring|do) ${WHAT}(?: (?:to|for|at|till?|until|around|about))*`;
const SAID =
  "(?:(?:(?:much |a bit |bit |little )?(?:later|earlier|sooner)(?: then)?,? (?:say|like|maybe|more like|perhaps)|(?:let'?s |lets )?(?:say|rather|better|i meant?|i said)|(?:i'?d|i would) (?:rather|prefer)(?: have)?|try)(?: (?:it )?(?:at|for|around|about))?|actually(?: at)?)";
const ENDS =
  '(?: (?:instead|then|please|pls|rather|thanks|thx|ta|would be better|is better|suits (?:me|us) better|will do))*';
const CHANGES = new RegExp(`^${BEGINS}(?:${MADE}|${SAID}),? (?<rest>.+?)${ENDS}$`, 'u');
const INSTEAD =
  /^(?:(?:no|nope|ok|okay|oh|and|but|sorry|actually|wait),? )*(?:at |for |on )?(?<rest>.+?),? (?:instead|rather|would be better|is better|suits (?:me|us) better)(?: (?:please|pls|thanks))*$/u;
const NOT_THAT =
  /^(?:no|nope|sorry|oh|wait),? (?:(?:at|on|for|i said|i meant?) |(?=half |quarter |\d{1,2}(?:[:.]\d\d| ?[ap]m)))(?<rest>.+)$/u;

const PUSHED_BACK = /^(?:(?:can|could) you )?(?:push|move|put|shift) (?:it|that) (?:back|on|out)(?: by)? (?<by>.+)$/u;
const BROUGHT_FORWARD =
  /^(?:(?:can|could) you )?(?:bring|move|pull|push) (?:it|that) (?:forward|up|in)(?: by)? (?<by>.+)$/u;

/** What is to stand in its place; null: no change is asked for. */
const restOf = (plain: string): string | null => {
  const back = PUSHED_BACK.exec(plain)?.groups?.['by'];
  if (back !== undefined) return `${back} later`;
  const forward = BROUGHT_FORWARD.exec(plain)?.groups?.['by'];
  if (forward !== undefined) return `${forward} earlier`;
  const found = [CHANGES, INSTEAD, NOT_THAT].map((form) => form.exec(plain)?.groups?.['rest']);
  return found.find((rest) => rest !== undefined) ?? null;
};

const wholly = (text: string, nowUtcMs: UtcMs): Times | null => {
  const sentence = sentenceOf(text);
  const { night, hour } = takeWhen(sentence, nowUtcMs);
  const isAll = sentence.taken.every((used) => used) && (night !== null || hour !== null);
  return isAll ? { night, hour } : null;
};

const SAYS_HALF =
  /\d ?[ap]\.?m?\b|\b(?:morning|evening|afternoon|night|noon|midnight)\b|(?<![:.])\b(?:1[3-9]|2[0-4])\b|\b0\d/u;
const HALF_DAY = 720;
const DAY = 1440;

/** The half of the day that is nearer to the hour before: "make it 7" after 6 in the morning is no evening. */
const nearTo = (hour: string, before: string | null, rest: string): string => {
  const from = before === null ? null : minutesOf(before);
  const told = minutesOf(hour);
  if (from === null || told === null || SAYS_HALF.test(rest)) return hour;
  const apart = (minutes: number): number => {
    const between = Math.abs(minutes - from);
    return Math.min(between, DAY - between);
  };
  const other = (told + HALF_DAY) % DAY;
  return clock(apart(other) < apart(told) ? other : told % DAY);
};

/** "Make it 30", "make it an hour", after so many minutes from now. */
const aheadInstead = (rest: string, { hour }: Times): string | null => {
  const [, figures, unit] = /^(half an hour|an hour|\d{1,3})(?: ?(min(?:ute)?s?|hours?|hrs?))?$/u.exec(rest) ?? [];
  if (figures === undefined || !/^in \d+ (?:min|hour)/u.test(hour ?? '')) return null;
  if (figures === 'half an hour') return 'in 30 minutes';
  if (figures === 'an hour') return 'in 1 hour';
  return `in ${figures} ${unit?.startsWith('h') === true ? 'hours' : 'minutes'}`;
};

/**
 * @param plain in lower case, without its marks at the end
 * @returns the night and the hour that are meant from now on; null: no other is said
 */
export const timesChanged = (plain: string, before: Times, nowUtcMs: UtcMs): Times | null => {
  const rest = restOf(plain);
  if (rest === null) return null;
  if (tellsShift(rest)) return shiftedTimes(rest, before);
  const ahead = aheadInstead(rest, before);
  if (ahead !== null) return { ...before, hour: ahead };
  const said = wholly(
    /^\d|^(?:half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b/u.test(rest)
      ? `at ${rest}`
      : rest,
    nowUtcMs,
  );
  if (said === null) return null;
  const { night, hour } = said;
  return { night: night ?? before.night, hour: hour === null ? before.hour : nearTo(hour, before.hour, rest) };
};
