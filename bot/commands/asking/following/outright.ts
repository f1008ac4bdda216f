/** Follow-ups that are told by their words as they came: a star left out, the same event again, the Moon beside a list. */
import { cleanText } from '../../../ground/fold-text.js';
import type { Known } from '../sentence/asked.js';
import { moonBeside, nameOf } from './about-it.js';
import { afterAnswer } from './after-answer.js';
import { forKitTold } from './kit-told.js';
import { starLeftOut } from './left-out.js';
import { besideSaid, saidShort } from './said-short.js';
import { seenOrNot } from './seen-or-not.js';
import { eclipseMeant, ofTheSame } from './next-one.js';
import { moonsOfIt } from './of-moons.js';
import { timesChanged } from './hour-changed.js';
import { lineOf, timesOf, withoutOtherFirst, withTimes, type ToldLine } from './told-line.js';

const plainOf = (text: string): string =>
  cleanText(text)
    .toLowerCase()
    .replace(/[?!.\s]+$/u, '');

/** "Which is the best of them", after a list: it begins with the best. */
const BEST_OF =
  /^(?:and |so |ok )*(?:which|what|whats|what's) (?:one )?(?:of (?:them|these|those) )?(?:is|are|s|would be)? ?(?:the )?(?:best|easiest|brightest|nicest|most beautiful|first|finest)(?: (?:one|of (?:them|these|those|all|the list)|to (?:begin|start)(?: with)?|for (?:a )?(?:beginner|me|us)))*$|^(?:and |so |ok )*(?:the )?(?:best|easiest|nicest) (?:one|of (?:them|these|those))$|^(?:and |so |ok )*which (?:one|of (?:them|these|those))(?: first| to (?:begin|start) with)?$/u;
/** Asked of a list, whatever else its few words may tell. */
export const asksBest = (text: string): boolean => BEST_OF.test(plainOf(text));

/** Of a planet that comes to opposition: how large and bright it then is. */
const ITS_LOOK = /^how (?:big|bright|large) is it$/u;

/** Of doubles that were listed their gaps stand in the list. */
const APART = /^(?:and |so )*how (?:far|wide) (?:apart )?are (?:they|these|those|the stars)(?: apart)?$/u;
/** Of showers. */
const PER_HOUR =
  /^(?:and |so |but )*how many(?: (?:meteors|of them|shooting stars|(?:will|would|can|could|might|do|should) (?:i|we|you|there be)(?: (?:see|expect|get|spot|count))?|to expect|are there))*(?: (?:per|an|in an|each|every) hour)?$/u;
/** Of the Moon in the night that was asked of: "will there be Moon that night", "is the Moon disturbing then". */
const MOON_THEN =
  /^(?:and |but |so )*(?:(?:how (?:high|bright|full) )?(?:is|will|does|would|are) (?:there (?:be )?(?:a |any )?)?(?:the )?moon\b.*|(?:what|how) about the moon|(?:and )?the moon)(?:\b.*)?$/u;
const OTHER_MOON = /\b(?:rise|rises|set|sets|phase|next|tomorrow|tonight|now|today|eclips\w*|far|distance|from)\b/u;

/** The colour by which another one is called. */
const colourOf = (which: string): { readonly colour?: string } => {
  const said = /orang|red|yellow|gold|white|blu/u.exec(which)?.[0];
  const colours = {
    orang: 'orange',
    red: 'orange',
    yellow: 'yellow',
    gold: 'yellow',
    white: 'white',
    blu: 'white',
  } as const;
  return said === undefined ? {} : { colour: colours[said as keyof typeof colours] };
};

/** What the answer before tells as well: the line again. */
const isToldThere = ({ command, values }: ToldLine, plain: string): boolean => {
  if (command.name === 'tonight') return /double/u.test(values['kind'] ?? '') && APART.test(plain);
  if (command.name === 'ahead' && values['kind'] === 'planets') return ITS_LOOK.test(saidShort(plain) ?? '');
  if (command.name !== 'ahead' || !/^(?:showers|eclipses)$/u.test(values['kind'] ?? '')) return false;
  return (values['kind'] === 'showers' && PER_HOUR.test(plain)) || (MOON_THEN.test(plain) && !OTHER_MOON.test(plain));
};

const OF_ALL = '(?:they|those|these|them|all of (?:them|those)|each(?: of them)?|the planets|it all)';
/** Asked of all of a list: when they go down or come up, which are brightest; where they stand is in it. */
const OF_LIST: readonly (readonly [RegExp, string])[] = [
  [
    new RegExp(
      `^(?:(?:and|n|so|ok|but),? )*(?:(?:at )?(?:when|what times?)(?: do| does| will| are)? ${OF_ALL} (?:all )?(?:set|setting|go down|go)|(?:which|what)(?: one| of ${OF_ALL})? (?:sets?|goes(?: down)?) (?:first|last|soonest)|set(?:ting)? times)$`,
      'u',
    ),
    'sets',
  ],
  [
    new RegExp(
      `^(?:(?:and|n|so|ok|but),? )*(?:(?:at )?(?:when|what times?)(?: do| does| will| are)? ${OF_ALL} (?:all )?(?:rise|rising|come up|get up)|(?:which|what)(?: one| of ${OF_ALL})? (?:rises?|comes up) (?:first|last|soonest)|ris(?:e|ing) times)$`,
      'u',
    ),
    'rises',
  ],
  [
    /^(?:(?:and|n|so|ok|but),? )*(?:(?:which|what)(?:'?s| is| are)?(?: one)?(?: of (?:them|these|those))?(?: is| are)? )?(?:the )?brightest(?: (?:ones?|planets?|of (?:them|these|those|all|the (?:lot|list))))*$/u,
    'brightest',
  ],
];
const STAND =
  /^(?:(?:and|n|so|ok|but),? )*(?:how high|where(?:abouts)?) (?:are|r) (?:they|those|these)(?: all)?(?: now| then)?$/u;
const BY_EYE =
  /^(?:(?:and|so|ok|but),? )*(?:(?:are|is) (?:any|some|all|which)(?: of (?:them|these|those))? (?:naked eye|visible (?:without|to the (?:naked )?eye).*)|(?:which|what)(?: ones?| of (?:them|these|those))?(?: are| is| can i see) (?:naked eye|without (?:a |any )?(?:telescope|scope|binoculars|binos)|(?:with|by) (?:the |my |just )*(?:naked )?eyes?))$/u;

const ofList = (before: ToldLine, plain: string): string | null => {
  if (before.command.name !== 'tonight') return null;
  const first = OF_LIST.find(([pattern]) => pattern.test(plain))?.[1];
  if (first !== undefined) return lineOf({ ...before, values: { ...before.values, first } });
  const { first: _first, ...values } = before.values;
  if (BY_EYE.test(plain)) return lineOf({ ...before, values: { ...values, with: 'eyes' } });
  return STAND.test(plain) || BEST_OF.test(plain) ? lineOf({ ...before, values }) : null;
};

/** "Make it 7 instead", "later, say 10". */
const atOtherTime = (before: ToldLine, plain: string, { nowUtcMs }: Known): string | null => {
  const then = timesOf(before, nowUtcMs);
  const times = timesChanged(plain, then, nowUtcMs);
  if (times === null) return null;
  const changed = withTimes(times.hour === then.hour ? before : withoutOtherFirst(before), times, nowUtcMs);
  return changed === null ? null : lineOf(changed);
};

/** "What about from home", after an answer for another place: a site of that name, else the usual one. */
const FROM_HOME =
  /^(?:(?:and|ok|so|but|now|then) )*(?:what about |how about )?(?:(?:it |that |the same )?(?:from|at|back) )(?:(?:my |our )?(?:home|house|usual (?:site|place))|here)(?: again| then| instead)?$/u;
const fromHome = (before: ToldLine, plain: string, { siteNames }: Known): ToldLine | null => {
  if (!FROM_HOME.test(plain) || before.values['site'] === undefined) return null;
  const { site: _site, ...values } = before.values;
  const home = siteNames.find((name) => name.toLowerCase() === 'home');
  return { ...before, values: home === undefined ? values : { ...values, site: home } };
};

/** The line before, with what the words leave out or put in its place. */
const otherwise = (
  before: ToldLine,
  { text, plain }: { readonly text: string; readonly plain: string },
  known: Known,
): ToldLine | null => fromHome(before, plain, known) ?? eclipseMeant(before, plain) ?? starLeftOut(before, text, known);

export interface Beside {
  /** A walk waits for the asker's words. */
  readonly isStrict: boolean;
  /** The line before the one before, of another target; null: none. */
  readonly earlier: string | null;
}

/** For another hour, of its moons, of where it is, of the answer as a whole. */
const ofWhatStands = (before: ToldLine, text: string, known: Known, earlier: string | null): string | null => {
  const plain = plainOf(text);
  return (
    atOtherTime(before, plain, known) ??
    moonsOfIt(before, plain, known, nameOf(before)) ??
    seenOrNot(before, plain, known, earlier) ??
    afterAnswer(before, plain, known) ??
    forKitTold(before, text, known)
  );
};

/** @returns null where it is none of them; beside a walk the plainest alone are */
export const outrightLine = (
  before: ToldLine,
  text: string,
  known: Known,
  { isStrict, earlier }: Beside,
): string | null => {
  const plain = plainOf(text);
  const listed = ofList(before, plain);
  if (listed !== null) return listed;
  if (isToldThere(before, plain)) return lineOf(before);
  if (before.command.name === 'compare' && APART.test(plain))
    return lineOf({ ...before, values: { ...before.values, first: 'apart' } });
  if (isStrict) return null;
  const ofIt = ofWhatStands(before, text, known, earlier);
  if (ofIt !== null) return ofIt;
  const changed = otherwise(before, { text, plain }, known);
  if (changed !== null) return lineOf(changed);
  if (ofTheSame(before, plain)) return lineOf(before);
  return ofBright(before, plain) ?? moonBeside(before, cleanText(text), known);
};

/** Where the bright one stands, told already; another one beside it. */
const ofBright = (before: ToldLine, plain: string): string | null => {
  if (before.command.name !== 'bright') return null;
  if (/^(?:how high|where) is it(?: now)?$/u.test(saidShort(plain) ?? '')) return lineOf(before);
  const beside = besideSaid(plain);
  return beside === null ? null : lineOf({ ...before, values: { ...before.values, ...colourOf(beside.which) } });
};
