/** Sentences about the flip of a German mount: when it comes, whether before an hour, and whether it comes on the way from one target to another. */
import { commandLine } from '../question-parts.js';
import { instantLine, says, type Asked, type Reading, type Rule } from './asked.js';

/** "20 min past", "5 degrees past the meridian": the sky turns by a degree in four minutes. */
const PAST = /\b(\d{1,3}(?:\.\d+)?) ?(min(?:ute)?s?|°|deg(?:rees?)?) (?:past|after|beyond|over)\b/u;
const MINUTES_A_DEGREE = 4;
const MOST_PAST_DEG = 45;

const pastDegIn = (plain: string): number | null => {
  const [, size = '', unit = ''] = PAST.exec(plain) ?? [];
  const deg = Number(size) / (unit.startsWith('m') ? MINUTES_A_DEGREE : 1);
  return size === '' || deg > MOST_PAST_DEG ? null : deg;
};

const FLIP =
  /\bflip(?:s|ped|ping)?\b|\bside of (?:the |my )?(?:mount|pier)\b|\bpier(?:'?s)? ?sides?\b|\b(?:chang|swap|switch)(?:e|es|s|ing|ping)? (?:over )?sides?\b/u;
const WAY_ROUND = /\bway (?:round|around)\b|\b(?:through|over|across|past|cross\w*) (?:the )?meridian\b/u;
/** Comes to the meridian, where an hour ends the question. */
const COMES_TO_IT = /\b(?:meridian|transits?|culminat\w*)\b/u;

/** Asked of a way from one target to another. */
export const asksOfFlip = (plain: string): boolean => FLIP.test(plain) || WAY_ROUND.test(plain);

/** The one that is left: after "from", else the first that is named. */
const leftFirst = (plain: string, first: string, second: string): readonly [from: string, to: string] => {
  const isLeft = (name: string): boolean =>
    ['from', 'off', 'leaving'].some(
      (lead) => plain.includes(`${lead} ${name}`) || plain.includes(`${lead} the ${name}`),
    );
  return isLeft(second) && !isLeft(first) ? [second, first] : [first, second];
};

/** Which night it begins in: the one named, but for "tonight" and a morning, before which the night that is now counts. */
const before = (target: string, { when, place }: Asked, more: Readonly<Record<string, string>>): Reading => {
  const { night, hour, isOneInstant } = when;
  const isOfNow = night === null || isOneInstant || /^(?:tonight|today|this evening)$/u.test(night);
  return {
    line: commandLine('meridian', target, {
      at: isOfNow ? undefined : night,
      before: isOneInstant ? `${night ?? ''} ${hour ?? ''}` : (hour ?? undefined),
      site: place ?? undefined,
      ...more,
    }),
  };
};

export const flip: Rule = (asked) => {
  const [target, second] = asked.targets;
  if (target === undefined || target === 'sun') return null;
  if (second !== undefined && asksOfFlip(asked.plain)) {
    const [from, to] = leftFirst(asked.plain, target, second);
    return instantLine('meridian', to, asked, { from });
  }
  const { isUntil } = asked.when;
  if (!says(asked, FLIP) && !(isUntil && says(asked, COMES_TO_IT))) return null;
  const past = pastDegIn(asked.plain);
  const more: Readonly<Record<string, string>> = past === null ? {} : { past: String(past) };
  return isUntil ? before(target, asked, more) : instantLine('meridian', target, asked, more);
};
