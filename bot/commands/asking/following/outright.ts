/** Follow-ups that are told by their words as they came: a star left out, the same event again, the Moon beside a list. */
import { cleanText } from '../../../ground/fold-text.js';
import type { Known } from '../sentence/asked.js';
import { moonBeside } from './about-it.js';
import { afterAnswer } from './after-answer.js';
import { starLeftOut } from './left-out.js';
import { besideSaid, saidShort } from './said-short.js';
import { seenOrNot } from './seen-or-not.js';
import { eclipseMeant, ofTheSame } from './next-one.js';
import { lineOf, type ToldLine } from './told-line.js';

/** "Which is the best of them", after a list: it begins with the best. */
const BEST_OF =
  /^(?:and |so |ok )*(?:which|what|whats|what's) (?:one )?(?:of (?:them|these|those) )?(?:is|are|s|would be)? ?(?:the )?(?:best|easiest|brightest|nicest|most beautiful|first|finest)(?: (?:one|of (?:them|these|those|all|the list)|to (?:begin|start)(?: with)?|for (?:a )?(?:beginner|me|us)))*$|^(?:and |so |ok )*(?:the )?(?:best|easiest|nicest) (?:one|of (?:them|these|those))$|^(?:and |so |ok )*which (?:one|of (?:them|these|those))(?: first| to (?:begin|start) with)?$/u;
/** Asked of a list, whatever else its few words may tell. */
export const asksBest = (text: string): boolean =>
  BEST_OF.test(
    cleanText(text)
      .toLowerCase()
      .replace(/[?!.\s]+$/u, ''),
  );

/** Of doubles that were listed their gaps stand in the list. */
const APART = /^(?:and |so )*how (?:far|wide) (?:apart )?are (?:they|these|those|the stars)(?: apart)?$/u;
/** Of showers. */
const PER_HOUR =
  /^(?:and |so )*how many(?: (?:meteors|of them|shooting stars|will (?:i|we|there be)(?: see)?|can (?:i|we) see))*(?: (?:per|an|in an|each|every) hour)?$/u;
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
  if (command.name === 'tonight')
    return BEST_OF.test(plain) || (/double/u.test(values['kind'] ?? '') && APART.test(plain));
  if (command.name !== 'ahead' || !/^(?:showers|eclipses)$/u.test(values['kind'] ?? '')) return false;
  return (values['kind'] === 'showers' && PER_HOUR.test(plain)) || (MOON_THEN.test(plain) && !OTHER_MOON.test(plain));
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

/** @returns null where it is none of them; beside a walk the plainest alone are */
export const outrightLine = (
  before: ToldLine,
  text: string,
  known: Known,
  { isStrict, earlier }: Beside,
): string | null => {
  const plain = cleanText(text)
    .toLowerCase()
    .replace(/[?!.\s]+$/u, '');
  if (isToldThere(before, plain)) return lineOf(before);
  if (before.command.name === 'compare' && APART.test(plain))
    return lineOf({ ...before, values: { ...before.values, first: 'apart' } });
  if (isStrict) return null;
  const ofThese = seenOrNot(before, plain, known, earlier);
  if (ofThese !== null) return ofThese;
  const after = afterAnswer(before, plain, known);
  if (after !== null) return after;
  const changed = otherwise(before, { text, plain }, known);
  if (changed !== null) return lineOf(changed);
  if (ofTheSame(before, plain)) return lineOf(before);
  const beside = before.command.name === 'bright' ? besideSaid(plain) : null;
  const short = before.command.name === 'bright' ? saidShort(plain) : null;
  if (short === 'how high is it' || short === 'where is it') return lineOf(before);
  if (beside !== null) return lineOf({ ...before, values: { ...before.values, ...colourOf(beside.which) } });
  return moonBeside(before, cleanText(text), known);
};
