/** "I can't find it", "which is higher", "is it full": said of the target before, of the last two, of the Moon. Pure. */
import { resolveTarget } from '../../../catalogue/index.js';
import { isProblem } from '../../../ground/problem.js';
import { plainLine } from '../../../ground/fold-text.js';
import type { Known } from '../sentence/asked.js';
import { mended } from '../spelling/known-words.js';
import { nameOf } from './about-it.js';
import { inherited, lineOf, toldLine, type ToldLine } from './told-line.js';

const NOT_FOUND =
  /^(?:(?:and|but|so|ok|no|nope|help|hm+|argh|sorry|still),? )*(?:(?:i|we) (?:still |just |really |simply )*(?:can ?'?no?t|cant|can'?t|could ?n'?o?t|couldnt|cannot|am not able to|am unable to|don'?t|dont) (?:seem to )?(?:find|see|locate|spot|get|pick out|make out)(?: (?:it|them|that|that one|this|anything|any of it|him))?|(?:can ?'?no?t|cant|can'?t|cannot|couldn'?t) (?:find|see|locate|spot) (?:it|them|that|anything)|(?:it|they)(?:'s| is|s| are) (?:not|nowhere|no where) (?:there|to be (?:seen|found)|in (?:the )?(?:view|eyepiece|field|finder))|(?:it|they) (?:is|are)n'?t (?:there|in (?:the )?(?:view|eyepiece|field|finder))|nothing (?:there|in the (?:eyepiece|view|field|finder))|no (?:luck|joy|sign of it)|where the (?:hell|heck) is it|help me (?:to )?find (?:it|them)|(?:i|we) (?:see|saw|get|got) nothing|(?:i'?m|i am) (?:looking|searching)\b.{0,20}\bbut (?:nothing|no luck))(?: (?:yet|at all|anywhere|still|now|here|tonight|in (?:the |my )?(?:eyepiece|finder|view|scope|telescope|binoculars|binos|field)|with (?:the|my) (?:\w+ ){1,3}|please|help))*$/u;

/** Of a thing in the sky, whose line tells where it stands. */
const FINDABLE = /^(?:up|altitude|meridian)$/u;
const ALTITUDE_ALONE = /^(?:the )?moon$/iu;

const withInherited = (before: ToldLine, line: string, known: Known): string | null => {
  const read = toldLine(line, known.allCommands ?? []);
  return read === null ? null : lineOf(inherited(before, read));
};

/** Where it stands now, and by which stars one comes to it; beside the Sun the line again, with its warning. */
const notFound = (before: ToldLine, plain: string, known: Known): string | null => {
  if (!NOT_FOUND.test(plain)) return null;
  if (before.command.name === 'sun') return lineOf(before);
  const name = nameOf(before);
  if (name === null || !FINDABLE.test(before.command.name)) return null;
  if (ALTITUDE_ALONE.test(name)) return withInherited(before, 'altitude moon', known);
  return withInherited(before, `up ${name} first:find at:now`, known);
};

const WHICH =
  /^(?:(?:and|so|ok|but),? )*(?:which|what)(?:'s|s)?(?: one| of (?:them|the two|these|those|both))?(?:'s| is| are| will be| stands?| gets?| would be)? ?(?:the |now |currently )*(?<by>higher|highest|lower|lowest|brighter|brightest|better|best|easier|first|sooner)(?: (?:one|up|now|tonight|then|of (?:them|the two)|at the moment|right now|in the sky|placed|to (?:see|look at|start with|begin with)|first))*$/u;

/** "How far apart are they", after two targets; the stars of a pair are meant where the last one is a pair. */
const APART =
  /^(?:(?:and|so|ok|but),? )*(?:how (?:far|close|near) (?:apart |together )?are (?:they|the two|both|those two|these two)(?: (?:apart|to each other|together))?|how far apart|(?:the )?(?:gap|distance|separation) between (?:them|the two|both))$/u;
const isPair = (name: string, { catalogue }: Known): boolean => {
  const found = resolveTarget(catalogue, name);
  return !isProblem(found) && found.target.double !== null;
};
const twoApart = (before: ToldLine, plain: string, known: Known, earlier: string | null): string | null => {
  const other = earlier === null || !APART.test(plain) ? null : toldLine(earlier, known.allCommands ?? []);
  const [one, two] = [other === null ? null : nameOf(other), nameOf(before)];
  if (one === null || two === null || !FINDABLE.test(before.command.name) || isPair(two, known)) return null;
  return withInherited(before, `compare ${one} other:"${two}" first:apart`, known);
};

const comparedBy = (by: string): string => {
  if (/bright|easi/u.test(by)) return 'brighter';
  return /first|sooner/u.test(by) ? 'sooner' : 'higher';
};

/** Which of the two that were asked about last. @param earlier the line before the one before, of another target; null: none */
const whichOfTwo = (before: ToldLine, plain: string, known: Known, earlier: string | null): string | null => {
  const by = WHICH.exec(plain)?.groups?.['by'];
  if (by === undefined) return null;
  const first = comparedBy(by);
  if (before.command.name === 'compare') return lineOf({ ...before, values: { ...before.values, first } });
  const other = earlier === null ? null : toldLine(earlier, known.allCommands ?? []);
  const [one, two] = [other === null ? null : nameOf(other), nameOf(before)];
  if (one === null || two === null || !FINDABLE.test(before.command.name)) return null;
  return withInherited(before, `compare ${one} other:"${two}" first:${first}`, known);
};

const PHASE =
  /^(?:(?:and|so|but|ok),? )*(?:(?:is (?:it|she|the moon) |it'?s |its )?(?:a |at |nearly |almost |still |now |it )*(?:full|new|half|crescent|gibbous|waxing|waning|growing|shrinking|getting (?:bigger|smaller|fuller|thinner))(?: (?:and|or) (?:is it |getting )?(?:waxing|waning|growing|shrinking|new|full|bigger|smaller|fuller|thinner|not))*(?: moon)?|how (?:much|full)(?: of it)?(?: is (?:it|lit|illuminated))*(?: lit| illuminated)?|how (?:full|old) is it|(?:what|which)(?:'?s| is)? (?:the |its |it's )?phase(?: is it)?(?: in)?|phase)(?: (?:now|tonight|then|today|yet|at the moment|lit))*$/u;

/** "When is it half", of the Moon. */
const WHEN_PHASE =
  /^(?:(?:and|so|but|ok|n),? )*(?:when|what (?:day|date|night))(?:'?s| is| will| does| do)?(?: (?:it|she|he|the moon|that))?(?: be| get| next)*(?: (?:a|at|next))? (?<phase>full|new|half|first quarter|last quarter|third quarter)(?: (?:moon|next|again|then|it|is))*$|^(?:(?:and|so|but|ok|n),? )*(?<alone>full|new|half|first quarter|last quarter|third quarter)(?: moon)? when(?: (?:is it|then))?$/u;

/** In lower case, without its article. */
const plainName = (before: ToldLine): string | null => nameOf(before)?.toLowerCase().replace('the ', '') ?? null;

const whenPhase = (before: ToldLine, plain: string, known: Known): string | null => {
  const { phase, alone } = WHEN_PHASE.exec(plain)?.groups ?? {};
  const said = (phase ?? alone)?.split(' ')[0];
  if (said === undefined || plainName(before) !== 'moon') return null;
  return withInherited(before, `moon next:${said === 'third' ? 'last' : said}`, known);
};

/** "What can i see on it": of the Moon what the Sun rises or sets over, of others what they show. */
const ON_IT =
  /^(?:(?:and|so|but|ok|n),? )*what(?:'?s| is| can| could| will| would| should)?(?: (?:i|we|you|they|the kids))?(?: (?:see|look at|look for|find|spot|good|nice|worth seeing))* on (?:it|that|the moon)(?: (?:now|tonight|then|with|through|in)\b.{0,30})?$/u;

const onIt = (before: ToldLine, plain: string, known: Known): string | null => {
  const name = ON_IT.test(plain) ? plainName(before) : null;
  if (name === null || name === 'sun') return null;
  if (name === 'moon') return withInherited(before, 'moon first:terminator', known);
  return FINDABLE.test(before.command.name) && !/ (?:with|through|in) /u.test(plain)
    ? withInherited(before, `up ${name}`, known)
    : null;
};

const phaseOfMoon = (before: ToldLine, plain: string, known: Known): string | null => {
  if (!PHASE.test(plain) || plainName(before) !== 'moon') return null;
  if (before.command.name === 'moon') return lineOf(before);
  const { at, on } = before.values;
  const when = [on, at].filter((part) => part !== undefined).join(' ');
  return withInherited(before, when === '' ? 'moon' : `moon at:"${when}"`, known);
};

/** The line of any of the three. @param earlier the line before the one before, of another target; null: none */
export const seenOrNot = (before: ToldLine, text: string, known: Known, earlier: string | null): string | null => {
  const plain = mended(text.replace(/[’‘`]/gu, "'"), known);
  return (
    notFound(before, plain, known) ??
    twoApart(before, plain, known, earlier) ??
    whichOfTwo(before, plain, known, earlier) ??
    whenPhase(before, plain, known) ??
    onIt(before, plain, known) ??
    phaseOfMoon(before, plain, known)
  );
};

/** Of the sky, after a target: by themselves the same words may tell of a port, or of a lamp. */
export const isOfSeenOrNot = (text: string): boolean => {
  const plain = plainLine(text);
  return [NOT_FOUND, WHICH, PHASE].some((form) => form.test(plain));
};
