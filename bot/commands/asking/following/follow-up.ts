/**
 * "And tomorrow?", "what about M 81", "when does it set": words that say of a question of the sky only what is to be different. Pure: from the
 * line asked last and the new words comes the new line, or nothing. Talk among people and words about a mount are nothing.
 */
import { cleanText } from '../../../ground/fold-text.js';
import { isProblem } from '../../../ground/problem.js';
import { tableOf } from '../../../ground/table-of.js';
import { resolveTarget } from '../../../catalogue/index.js';
import type { LineRead } from '../../core/command.js';
import { askedOf, type Asked, type Known } from '../sentence/asked.js';
import { towardsIn } from '../sentence/directions.js';
import { mended, spellerFor } from '../spelling/known-words.js';
import { talkIn } from '../talk-among-people.js';
import { aboutIt, readWhole } from './about-it.js';
import { shiftedTimes, tellsShift } from './shift-time.js';
import { lineOf, takes, timesOf, toldLine, withTimes, type ToldLine } from './told-line.js';

const LONGEST = 100;
const MOST_WORDS = 12;

const LEAD =
  /^(?:(?:and|ok|okay|so|but|no|nope|sorry|oh|ah|hm+|well|actually|then|or|i meant?|i did mean|make (?:it|that)|try|only|just|what about|how about|what if|and if)(?:,| )+|same(?: again| thing| question| one)?(?: but)? (?=for|with|at|on|in|from|again|but|tomorrow|tonight|\p{L}+day)|(?:i|we) (?:use|used|take|took|have|had|go to|went to|am in|are in|was in) )+/iu;
/** Leads that say by themselves that something before is followed. */
const SAYS_SO = /\b(?:and|what about|how about|what if|meant?|same|make|but|or|only|just)\b/iu;

/** Nothing by themselves; any other word that no part was made of says something else. */
const GLUE =
  /^(?:then|there|instead|please|pls|thanks|only|just|too|also|again|same|time|the|a|my|of|for|on|in|at|from|with|through|under|or|and|ones?|those|say|around|about|by|that|this|night|evening|sky|skies|to|look|if|use|using|it)$/u;

interface Said {
  readonly rest: string;
  readonly isLed: boolean;
  readonly isQuestion: boolean;
}

const saidIn = (text: string, known: Known): Said | null => {
  const clean = cleanText(text);
  if (clean.length > LONGEST || clean.split(/\s+/u).length > MOST_WORDS || /\n/u.test(text.trim())) return null;
  const spelt = mended(clean.replace(/[’‘`]/gu, "'"), known).replace(/[\s?!.,]+$/u, '');
  const [lead = ''] = LEAD.exec(`${spelt} `) ?? [];
  const rest = spelt.slice(lead.length).replace(/,/gu, ' ').replace(/\s+/gu, ' ').trim();
  return rest === '' ? null : { rest, isLed: SAYS_SO.test(lead), isQuestion: /\?\s*$/u.test(text) };
};

const nameOf = (text: string, { catalogue }: Known): string | null => {
  const found = resolveTarget(catalogue, text);
  return isProblem(found) ? null : found.target.name;
};

const isSameTarget = (a: string, b: string, known: Known): boolean => {
  const name = nameOf(a, known);
  return name !== null && name === nameOf(b, known);
};

const isWord = (word: string, known: Known): boolean => spellerFor(known).isKnown(word);

/** The one target that is named; null where none is, undefined where there is no telling which. */
const targetIn = (asked: Asked, before: ToldLine, known: Known): string | null | undefined => {
  const { targets, plain } = asked;
  const isDenied = /\bnot\b|\binstead of\b|\brather than\b/u.test(plain);
  const meant = isDenied
    ? targets.filter((name) => !isSameTarget(name, before.values['target'] ?? '', known))
    : targets;
  const [target, ...others] = meant;
  if (target === undefined) return targets.length === 0 ? null : undefined;
  if (others.length > 0 || target === 'sun') return undefined;
  const found = resolveTarget(known.catalogue, target);
  // An ordinary word is no slip of a name, and beside the Sun nothing is.
  const isSlip = !isProblem(found) && found.isSlip === true;
  return isSlip && (before.command.name === 'sun' || target.split(' ').some((word) => isWord(word, known)))
    ? undefined
    : target;
};

const commandNamed = (name: string, known: Known): ToldLine['command'] | undefined =>
  known.allCommands?.find((command) => command.name === name);

/** What another command's line keeps of the one before. */
const KEPT = ['site', 'with', 'sky'] as const;

const asUp = (before: ToldLine, known: Known, target: string): ToldLine | null => {
  const command = commandNamed('up', known);
  if (command === undefined) return null;
  const kept = KEPT.flatMap((name) => {
    const value = before.values[name];
    return value === undefined ? [] : [[name, value] as const];
  });
  const { night, hour } = timesOf(before, known.nowUtcMs);
  const isList = before.command.name === 'tonight';
  return withTimes(
    { command, values: { target, ...Object.fromEntries(kept) } },
    { night, hour: isList ? null : hour },
    known.nowUtcMs,
  );
};

const withTarget = (before: ToldLine, target: string, known: Known): ToldLine | null => {
  if (!takes(before, 'target')) return asUp(before, known, target);
  if (takes(before, 'other')) return { ...before, values: { ...before.values, other: target } };
  const { facing: _facing, ...values } = before.values;
  return { ...before, values: { ...values, target } };
};

/** The line before, with what the words name in the place of what it had. */
const withParts = (before: ToldLine, asked: Asked, known: Known): ToldLine | null => {
  const target = targetIn(asked, before, known);
  if (target === undefined) return null;
  const named = target === null ? before : withTarget(before, target, known);
  if (named === null) return null;
  const { place, kit, sky, above, when } = asked;
  const isOfKit = kit !== null || sky !== null;
  const now = timesOf(before, known.nowUtcMs);
  // What kit shows is told by `up`.
  const fit =
    isOfKit && !takes(named, 'with') && named.values['target'] !== undefined
      ? asUp(named, known, named.values['target'])
      : named;
  if (fit === null) return null;
  const more = { site: place, with: kit, sky, above };
  const given = Object.entries(more).filter((entry): entry is [string, string] => entry[1] !== null);
  if (given.some(([name]) => !takes(fit, name))) return null;
  const values = { ...fit.values, ...Object.fromEntries(given) };
  if (when.night === null && when.hour === null) return { ...fit, values };
  const isNow = when.hour === 'now';
  return withTimes(
    { ...fit, values },
    { night: isNow ? null : (when.night ?? now.night), hour: when.hour ?? now.hour },
    known.nowUtcMs,
  );
};

/** How questions begin whose answers narrow by many things; the rest is read as if it stood behind. */
const BEGUN = tableOf({ tonight: 'what can i see', bright: 'what is the bright star' });

const TIMES_OF_LIST = ['at', 'from', 'until'];

/** What a line read from the rest says, laid over the line before. */
const laidOver = (before: ToldLine, line: string, known: Known): ToldLine | null => {
  const read = toldLine(line, known.allCommands ?? []);
  if (read === null || read.command.name !== before.command.name) return null;
  const given = Object.keys(read.values);
  if (given.length === 0) return null;
  const drops = [
    ...(given.some((name) => TIMES_OF_LIST.includes(name)) ? TIMES_OF_LIST : []),
    ...(given.includes('kind') ? ['also'] : []),
  ];
  const kept = Object.entries(before.values).filter(([name]) => !drops.includes(name));
  return { ...before, values: { ...Object.fromEntries(kept), ...read.values } };
};

/** Whether the words are nothing but parts of a question of the sky. */
const isOfParts = (unread: Asked['unread']): boolean => unread.every(({ plain }) => GLUE.test(plain));

/** "And the port?" is no town: one has to be led to, or written as a name. */
const isPlaceSure = ({ place, isPlaceUnknown, isPlaceSaved }: Asked, rest: string): boolean => {
  if (isPlaceUnknown) return false;
  if (place === null || isPlaceSaved) return true;
  const at = rest.toLowerCase().indexOf(place);
  return at < 0 || LEADS_TO_PLACE.test(rest.slice(0, at)) || /^[\p{Lu}\d+-]/u.test(rest.slice(at));
};
const LEADS_TO_PLACE = /\b(?:from|in|at|near|for|outside) $/iu;

const isOfList = ({ kind, constellation, plain }: Asked): boolean =>
  kind !== null || constellation !== null || towardsIn(plain) !== null;

const namesPart = (asked: Asked): boolean => {
  const { when, place, kit, sky, kind, targets, above, below, brighter, constellation, larger, wider } = asked;
  const parts = [when.night, when.hour, place, kit, sky, kind, above, below, brighter, constellation, larger, wider];
  return (
    parts.some((part) => part !== null) || targets.length > 0 || asked.isMessierOnly || towardsIn(asked.plain) !== null
  );
};

/** Words of the compass, and those by which a target is taken back. */
const BESIDE_PARTS = /^(?:(?:north|south)?-?(?:east|west)?(?:ern)?|not|than|rather)$/u;

/** Unread words that name nothing else than the parts do. */
const unreadBeside = ({ unread, kind, kindsToo }: Asked): Asked['unread'] => {
  const kinds = [kind, ...kindsToo].join(' ').split(' ');
  return unread.filter(({ plain: word }) => !kinds.includes(word) && !BESIDE_PARTS.test(word));
};

/** What a line of the same command, read from all the words, says. */
const byLine = (before: ToldLine, words: string, known: Known): ToldLine | null => {
  const line = readWhole(words, known);
  return line === null ? null : laidOver(before, line, known);
};

const byShift = (before: ToldLine, plain: string, known: Known): ToldLine | null => {
  const times = shiftedTimes(plain, timesOf(before, known.nowUtcMs));
  return times === null ? null : withTimes(before, times, known.nowUtcMs);
};

const byParts = (before: ToldLine, { rest, isLed }: Said, known: Known): ToldLine | null => {
  const plain = rest.toLowerCase();
  if (tellsShift(plain)) return byShift(before, plain, known);
  const asked = askedOf(rest, plain, known, rest);
  // What names its own matter is a question by itself, unless it is led in as a follow-up.
  if (!isLed && (asked.targets.length > 0 || asked.kind !== null)) return null;
  const isWhole = isOfParts(unreadBeside(asked)) && namesPart(asked) && isPlaceSure(asked, rest);
  const begun = BEGUN.get(before.command.name);
  if (isWhole && begun !== undefined && asked.targets.length === 0) return byLine(before, `${begun} ${rest}`, known);
  if (isWhole && !isOfList(asked)) return withParts(before, asked, known);
  return isLed ? byLine(before, rest, known) : null;
};

/**
 * @param line the line asked last, as `keepLastAsked` has it
 * @param isStrict a walk waits for the asker's words: only what is led in as a follow-up, or asked of what was named, is one
 */
export const followUp = (line: string, text: string, known: Known, { isStrict = false } = {}): LineRead | null => {
  const before = toldLine(line, known.allCommands ?? []);
  const said = before === null ? null : saidIn(text, known);
  if (before === null || said === null || talkIn(text) !== null) return null;
  const ofIt = aboutIt(before, said.rest, known, { isStrict });
  if (ofIt !== null) return { line: ofIt };
  if (isStrict && !(said.isLed && said.isQuestion)) return null;
  const changed = byParts(before, said, known);
  if (changed === null) return null;
  const next = lineOf(changed);
  return next === lineOf(before) ? null : { line: next };
};
