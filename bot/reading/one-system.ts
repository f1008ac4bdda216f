/** Which system a text is about, where it may name several: "it works on Windows, not on Linux" is about Linux. */
import type { Finding } from './finding.js';
import { stretchAfter, stretchBefore } from './stretch.js';

interface Named {
  readonly answer: string;
  readonly from: Finding;
}

/** A system named outright is surer than one that a port's name tells. */
const NEARLY_AS_SURE = 0.03;

const PART_ENDS = /[.,;:!?()\n]|\s-\s|\b(?:but|while|whereas|though|although|yet|and)\b/iu;
const NO_TROUBLE =
  /\b(?:no|without|never any?) (?:problems?|trouble|troubles|issues?|errors?|drops?|drop-?outs?|disconnects?|time-?outs?)\b/giu;
const DOES_WELL =
  /\b(?:works?|worked|working|fine|perfect(?:ly)?|ok|okay|happy|happily|flawless(?:ly)?|good|great|connects|connected|(?:finds?|sees?|found|saw) (?:it|the mount)|well)\b|\b(?:can|does|did|is|was|do)\s*$|^\s*so (?:is|does|do|was)\b/iu;
const FAILS =
  /\b(?:not|never|no longer|nothing|no|cannot|[a-z]+n[’']t|(?:ca|wo|do|does|did|is|was|has|could|would)nt|fail\w*|refus\w*|denied|dead|stopped|errors?|troubles?|problems?|until|till)\b/iu;

/** So far a part reaches at most, either way. */
const REACH = 240;

/** The part of the sentence in which it stands: on a system that does well nothing is to be mended. */
export const isOfWorking = (text: string, { span }: Finding): boolean => {
  const before = stretchBefore(text, span.start, REACH, PART_ENDS);
  const after = stretchAfter(text, span.start, REACH, PART_ENDS);
  const part = `${before}${after}`.replace(NO_TROUBLE, ' fine ');
  return DOES_WELL.test(part) && !FAILS.test(part);
};

/** The first of those it is not well on; undefined: there is none, or they differ. Ends as soon as they differ. */
const theFailing = <Claim extends Named>(claims: readonly Claim[], text: string): Claim | undefined => {
  let found: Claim | undefined;
  for (const claim of claims) {
    if (claim.answer === found?.answer || isOfWorking(text, claim.from)) continue;
    if (found !== undefined) return undefined;
    found = claim;
  }
  return found;
};

const OLD_OR_OTHERS =
  /\b(?:old|former|previous|earlier|husband|wife|friend|son|daughter|neighbour|father|dad|brother|colleague)(?:['’]s)?\b[^.!?;]{0,24}$/iu;

/** "Under my old Windows computer": named, and not the one at hand. */
const isOfAnother = (text: string, { span }: Finding): boolean =>
  OLD_OR_OTHERS.test(text.slice(Math.max(0, span.start - REACH), span.start));

const THING =
  '(?:\\w+ )?(?:cables?|leads?|laptop|computer|machine|pc|mac|mount|handset|hand controller|adapter|box|usb|thing|set-?up)';
/** "On Windows the same cable works", "the laptop booted into Windows connects at once": it is not the one at hand. */
const OF_CONTRAST = new RegExp(
  `\\b(?:the |this |very )?same ${THING}\\b|\\b(?:boot\\w*|restarted|started|dual[ -]?boot\\w*) (?:in|into|to|up in|from)\\b`,
  'iu',
);
const UNDER = /\b(?:on|under|in|into|to|from) $/iu;
const SENTENCE_ENDS = /[.;!?()\n]|\s-\s|\b(?:but|while|whereas|though|although|yet)\b/iu;
const isContrast = (text: string, { from }: Named): boolean => {
  const { start } = from.span;
  const before = stretchBefore(text, start, REACH, SENTENCE_ENDS);
  const after = stretchAfter(text, start, REACH, SENTENCE_ENDS);
  const said = `${before}${after}`.replace(NO_TROUBLE, ' fine ');
  const isOther = (UNDER.test(before) && OF_CONTRAST.test(said)) || OLD_OR_OTHERS.test(before);
  return from.by === 'words' && isOther && DOES_WELL.test(said) && !FAILS.test(said);
};

const theOne = <Claim extends Named>(claims: readonly Claim[]): Claim | undefined =>
  claims.every(({ answer }) => answer === claims[0]?.answer) ? claims[0] : undefined;

/**
 * Two systems in one text are none, unless the member's own words name just one of them, or one more surely, or one on which it fails.
 * @param text folded, as the claims' spans are
 */
export const oneSystem = <Claim extends Named>(claims: readonly Claim[], text: string): Claim | undefined => {
  const worded = claims.filter(({ from }) => from.by === 'words');
  const surest = Math.max(...worded.map(({ from }) => from.sureness));
  const one = theOne(claims);
  if (one !== undefined && claims.every((claim) => isContrast(text, claim))) return undefined;
  return (
    one ??
    theOne(worded) ??
    theOne(worded.filter(({ from }) => from.sureness > surest - NEARLY_AS_SURE)) ??
    theOne(worded.filter(({ from }) => !isOfAnother(text, from))) ??
    theFailing(worded, text)
  );
};
