/**
 * "Will the Moon be out", "which planets then", "and Saturn from there": a whole question that is of the night, the hour and the place spoken
 * of before. Pure: from the line asked last and the new line comes the new line with them, or nothing.
 */
import { plainLine, quotable } from '../../../ground/fold-text.js';
import type { Known } from '../sentence/asked.js';
import {
  inherited,
  isOfSun,
  lineOf,
  takes,
  timesOf,
  toldLine,
  withTimes,
  type Times,
  type ToldLine,
} from './told-line.js';

/** It speaks of the hour before. */
const THEN_HOUR =
  /\b(?:(?:at|by|around|about) (?:that|the same|this) (?:time|hour)|(?:by|at|around) then|same time|right then)\b/u;
/** It speaks of the night before: "which planets then", not "then what is" nor "what now then". */
const THEN =
  /\b(?:(?:on |for |during )?(?:that|the same|same) (?:night|evening|day|date|morning|weekend)|then|(?:for|on|at) it)[\s?!.,]*$|\b(?:then|(?:that|the same) (?:night|evening|day|date)) (?:with|using|through|in|from|at)\b/u;
/** Told of what is to come, or led in as more of the same. */
const GOES_ON =
  /^(?:(?:ok|okay|so|well|right|oh),? )*(?:and|also|plus|but|will|would|shall|(?:what|which|how|when|where) \p{L}*(?: \p{L}+){0,2}? ?(?:can|could|will|would|shall|should)|(?:what|where|when|how|who)(?:'ll| will| would))\b/u;
/** "What can I see" begins anew, with tonight; "what craters can they see" is of the Moon that was spoken of. */
const CAN = /^[^,]*?\b(?:can|could)\b/u;
/** Another time, or none: these say their own. */
const OWN_TIME =
  /\b(?:now|right now|tonight|tonite|today|currently|at the moment|this (?:evening|night|week|month|year)|tomorrow|yesterday|next|ever|usually|always|\p{L}{3,6}days?|weekend|when)\b/u;
/** What is asked of a night or an hour. */
const OF_A_NIGHT = /^(?:up|altitude|tonight|dark|moon|moons|bright|compare)$/u;
const TIME_OPTIONS = ['on', 'at', 'from', 'until'];
/** Found by themselves, whatever the night. */
const OF_ANY_NIGHT =
  /^(?:split|aperture|magnitude|size|kind|constellation|names|season|distance|age|next|phase|gap|eyepiece|filter)$/u;

/** "From there", "how dark is it there": the place before; "is there" is none. */
const THERE = /\b(?:(?:from|at|over|in|up|down|out) there|(?:it|dark|sky|skies|see|up|high|set|rise|visible) there)\b/u;
/** It is as it was said at home, though another place stands before. */
const FROM_HOME = /\b(?:from|at|back) (?:home|here|my (?:usual|own) (?:site|place))\b/u;

export interface Carried {
  readonly line: string;
  readonly note: string;
}

/** A list's beginning is its hour. */
const timesBefore = (before: ToldLine, nowUtcMs: number): Times => {
  const { night, hour } = timesOf(before, nowUtcMs);
  return { night, hour: hour ?? before.values['from'] ?? null };
};

const isTimed = ({ values }: ToldLine): boolean => TIME_OPTIONS.some((name) => values[name] !== undefined);

/** Which of the times before the words mean; null: they speak of none. */
const timesMeant = (plain: string, { night, hour }: Times, isList: boolean): Times | null => {
  if (THEN_HOUR.test(plain)) return { night, hour };
  if (OWN_TIME.test(plain.replace(/^when\b(?=.* then$)/u, ''))) return null;
  if (THEN.test(plain)) return { night, hour };
  return GOES_ON.test(plain) && !(isList && CAN.test(plain)) && night !== null ? { night, hour } : null;
};

const withTheTimes = (asked: ToldLine, before: ToldLine, plain: string, nowUtcMs: number): ToldLine | null => {
  const { command, values } = asked;
  if (!OF_A_NIGHT.test(command.name) || isTimed(asked) || isOfSun(asked)) return null;
  if (OF_ANY_NIGHT.test(values['first'] ?? '') || values['next'] !== undefined) return null;
  const times = timesMeant(plain, timesBefore(before, nowUtcMs), command.name === 'tonight');
  if (times === null || (times.night === null && times.hour === null)) return null;
  if (command.name !== 'tonight') return withTimes(asked, times, nowUtcMs) ?? ofTheNight(asked, times, nowUtcMs);
  const { from, until } = before.values;
  const hours = { ...(from === undefined ? {} : { from }), ...(until === undefined ? {} : { until }) };
  const listed = ofTheNight(asked, times, nowUtcMs);
  return listed === null ? null : { ...listed, values: { ...listed.values, ...hours } };
};

const ofTheNight = (asked: ToldLine, { night }: Times, nowUtcMs: number): ToldLine | null =>
  night === null ? null : withTimes(asked, { night, hour: null }, nowUtcMs);

/** @param place where the talk before was of, as it was named; null: at home */
const withThePlace = (asked: ToldLine, place: string | null, plain: string): ToldLine | null => {
  const isOfPlace = THERE.test(plain) && !FROM_HOME.test(plain);
  return place === null || !isOfPlace || asked.values['site'] !== undefined || !takes(asked, 'site')
    ? null
    : { ...asked, values: { ...asked.values, site: place } };
};

interface Talk {
  /** The line asked last, as `keepLastAsked` has it. */
  readonly last: string | null;
  readonly place: string | null;
}

/** @returns null where the words speak of nothing that was said before, or say it themselves */
export const carried = (line: string, text: string, { last, place }: Talk, known: Known): Carried | null => {
  const commands = known.allCommands ?? [];
  const asked = toldLine(line, commands);
  const before = last === null ? null : toldLine(last, commands);
  if (asked === null) return null;
  const plain = plainLine(text);
  const placed = withThePlace(asked, place, plain);
  const timed = before === null ? null : withTheTimes(placed ?? asked, before, plain, known.nowUtcMs);
  if (timed === null)
    return placed === null
      ? null
      : { line: lineOf(placed), note: `Taken to be from ${place === null ? 'there' : quotable(place)}.` };
  const isElsewhere = FROM_HOME.test(plain) || before === null;
  return {
    line: lineOf(isElsewhere ? timed : inherited(before, timed)),
    note: 'Taken to be of the night you asked of; say “tonight” for tonight.',
  };
};
