/** "Why not", "too faint", "the next one", "anything near it": what is said of an answer as a whole, after a list or a target. Pure. */
import type { Known } from '../sentence/asked.js';
import { commandLine } from '../question-parts.js';
import { inherited, lineOf, timesOf, toldLine, withTimes, type ToldLine } from './told-line.js';

const LEAD = '(?:(?:ok|okay|and|but|so|oh|hm+|nah|no|nope|meh|ugh|well|sorry|now|then) )*';
const END = '(?: (?:then|please|pls|now|tonight|here|for (?:me|us|my \\w+|a beginner)))*';
const form = (inner: string): RegExp => new RegExp(`^${LEAD}(?:${inner})${END}$`, 'u');

const WHY = form(
  "why(?: not| (?:can ?'?t|cannot) i(?: see it)?| isn ?'?t it(?: up)?)?|how come(?: not)?|what ?'?s wrong(?: with it)?|warum(?: denn)?(?: nicht)?|wieso(?: nicht)?|pourquoi(?: pas)?|perch[eé](?: no)?|por ?qu[eé](?: no| n[aã]o)?|waarom(?: niet)?|dlaczego(?: nie)?",
);
const TOO_FAINT = form(
  "(?:(?:that|it|they|those|these|all)(?: ?'?s| is| are|re)?(?: all)? |thats |theyre |its )?(?:(?:all|much|way|far|a bit) )*too (?:faint|hard|difficult|dim|tricky)",
);
const EASIER = form(
  '(?:(?:got|have you|is there|give me|show me|any|anything|something|some|a bit) )*(?:easier|brighter|simpler)(?: (?:ones?|stuff|things?|targets?|objects?|to (?:see|find)))*',
);
const NEXT = form(
  "(?:(?:what ?'?s|whats|what is|show me|give me|tell me) )?(?:the )?(?:next|second|others?|another|rest|more|one after)(?: (?:one|ones|that|on the list|of (?:them|the list)))*",
);
const AROUND = form(
  "(?:(?:is|are) there )?(?:anything|something|what(?: ?'?s| is)?|whats|other (?:stuff|things)|any(?: \\w+)? (?:stars?|planets?|objects?))(?: (?:else|other|nice|good|bright|is|are|there|interesting))* (?:near(?: ?by)?|around|close(?: to| by)?|next to|beside|by)(?: (?:to|it|there|that|them))*|(?:what ?'?s|what is|whats) (?:it|that|he|she|this) (?:near|close to|next to|beside|by|around)(?: to)?|near what",
);

/** Asked of what is about, though it begins as a whole question does. */
export const asksAround = (plain: string): boolean => AROUND.test(plain);

const OF_TARGET = /^(?:up|altitude)$/u;
const BESIDE_SKY = /^(?:the )?(?:sun|moon)$/iu;
/** What of a list asked before goes on: the rest narrows it to what was too faint. */
const KEPT_OF_LIST: readonly string[] = ['site', 'on', 'at', 'from', 'until', 'with', 'sky', 'towards'];
/** Naked-eye things; common practice, no source. */
const BRIGHT_MAG = '4';

const read = (line: string, before: ToldLine, known: Known): ToldLine | null => {
  const told = toldLine(line, known.allCommands ?? []);
  if (told === null) return null;
  const { night, hour } = timesOf(before, known.nowUtcMs);
  const after = inherited(before, told);
  return withTimes(after, { night, hour: told.command.name === 'tonight' ? null : hour }, known.nowUtcMs) ?? after;
};

const easier = (before: ToldLine, known: Known): ToldLine | null => {
  if (before.command.name !== 'tonight') return read('tonight easy:yes', before, known);
  const values = Object.fromEntries(Object.entries(before.values).filter(([name]) => KEPT_OF_LIST.includes(name)));
  const more: Readonly<Record<string, string>> =
    before.values['easy'] === undefined ? { easy: 'yes' } : { brighter: BRIGHT_MAG };
  return { ...before, values: { ...values, ...more } };
};

const more = (before: ToldLine, known: Known): ToldLine | null =>
  before.command.name === 'tonight'
    ? { ...before, values: { ...before.values, all: 'yes' } }
    : read('tonight', before, known);

/** @param plain in lower case, without the mark at its end; null: it is none of these, or after another answer */
export const afterAnswer = (before: ToldLine, plain: string, known: Known): string | null => {
  const target = OF_TARGET.test(before.command.name) ? before.values['target'] : undefined;
  if (target === undefined && before.command.name !== 'tonight') return null;
  if (target !== undefined && BESIDE_SKY.test(target)) return null;
  const line = lineAfter(before, target, plain, known);
  return line === null ? null : lineOf(line);
};

const lineAfter = (before: ToldLine, target: string | undefined, plain: string, known: Known): ToldLine | null => {
  if (TOO_FAINT.test(plain) || EASIER.test(plain)) return easier(before, known);
  if (NEXT.test(plain)) return more(before, known);
  if (target === undefined) return null;
  if (WHY.test(plain)) return read(commandLine('up', target, { first: 'seen' }), before, known);
  return AROUND.test(plain) ? read(commandLine('bright', '', { near: target }), before, known) : null;
};
