/** What a cure is put down to: to what the member says was done, where that is another remedy than the one in hand or the likeliest. */
import { isProblem } from '../../ground/problem.js';
import { saysSomethingElse } from '../../reading/index.js';
import { answerStep, remediesTold, type RemedyTold, type WalkState } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { changed, type Began, type Turn } from './turn.js';

const PAST =
  '(?:\\w+ed|put|set|cut|let|took|taken|got|had|has been|made|gave|found|chose|bought|swopped|undid|redid|reset|forgot|wrote|went|threw|bent|built|stuck|shut|ran|told|used)';
/** Something was done, or turned out to be so: not merely that it works now. */
const TELLS_A_DEED = new RegExp(
  [
    `\\b(?:i|we|he|she|(?:my|the|a) (?:wife|husband|son|daughter|mate|friend|neighbour|brother|sister|dad))(?:['’]ve| have| just| then| also| finally)* ${PAST}\\b`,
    `^\\W*(?:(?:ok|so|well|right|ha|yes|and|then|just|hm+|oh|ah),? )*(?:un\\w+ed|re\\w+ed|${PAST})\\b`,
    `[,.;!] ?(?:then |and |so |just )?${PAST}\\b`,
    '\\b(?:turn(?:s|ed) out|it was|was (?:the|my|a|an|in|on|off|out|wrong|loose|set)|had been|the (?:culprit|trouble|problem|fault|cause) (?:was|is)|because)\\b',
    '\\b(?:new|another|other|different|second|fresh|spare|old) \\w+',
    '\\b(?:with|without|after) (?:the|a|an|my|another|no) \\w+|\\b\\w+ing (?:the|my|it|a|that)\\b.{0,40}\\b(?:did|fixed|cured|solved|helped)\\b|\\b(?:did it|did the trick)\\b',
  ].join('|'),
  'iu',
);

/** So near the best told it is one of those told; so far ahead of the rest it is the one. */
const [AS_GOOD, AHEAD] = [0.7, 0.5];
/** Told plainly enough to be taken; to be offered. */
const [PLAIN, NEAR] = [1, -0.3];
/** With the remedy in hand, told so far it is that one. */
const OF_THE_ONE_IN_HAND = 0.35;
const MOST_OFFERED = 3;
/** Asked which, so far ahead of the others names one. */
const NAMES_BY = 0.3;

/** One cause, or those among which the member is asked; null where the words tell of no deed, or of the one expected. */
type Credited = { readonly fault: string } | { readonly among: readonly string[] } | null;

/** What was shown and done a moment ago needs no more words: there another is heard where it is named as the cause, or told this well. */
const TOLD_WELL = 1.2;
const NAMES_THE_CAUSE =
  /\b(?:it|that|this|problem|culprit|trouble|cause|fault) (?:was|were|is) (?:all |actually |really |in fact |just )*(?:an?|the|my|his|her|our|another|some)\b|\bturn(?:s|ed) out\b|\binstead\b|\bactually\b|\bin the end\b/iu;

/** So much of what is said stands in a remedy that is named, though another was shown. */
const NAMED_SHARE = 0.4;
const isNamed = ({ score, share }: RemedyTold): boolean => score >= PLAIN || (score >= NEAR && share >= NAMED_SHARE);

/** "Something else: a fake gps app was still on": among those named, never the one in hand. */
const creditedElse = (told: readonly RemedyTold[], expected: string | undefined): Credited => {
  const others = told.filter((one) => one.fault.id !== expected && isNamed(one));
  const [best] = others;
  if (best === undefined) return null;
  if (apart(others)) return { fault: best.fault.id };
  const near = others.filter(({ score }) => score >= best.score - 1).slice(0, MOST_OFFERED);
  return near.length === 1 ? { fault: best.fault.id } : { among: near.map(({ fault }) => fault.id) };
};

const apart = ([first, second]: readonly RemedyTold[]): boolean =>
  first !== undefined && first.score >= PLAIN && first.score - (second?.score ?? Number.NEGATIVE_INFINITY) >= AHEAD;

/** Whether the one expected stands: told about as well as any, or shown and done a moment ago while no other is told well or named. */
const stands = ({ step }: Began['before'], text: string, best: RemedyTold, own: RemedyTold | undefined): boolean => {
  if (own !== undefined && own.score >= Math.max(OF_THE_ONE_IN_HAND, best.score - AS_GOOD)) return true;
  return step.kind === 'try' && best.score < TOLD_WELL && !NAMES_THE_CAUSE.test(text);
};

/** @param expected the remedy that the cure would be put down to otherwise */
export const creditedIn = (
  { context: { model }, before }: Began,
  text: string,
  expected: string | undefined,
): Credited => {
  if (saysSomethingElse(text)) return creditedElse(remediesTold(model, before, text), expected);
  const told = TELLS_A_DEED.test(text) ? remediesTold(model, before, text) : [];
  const [best] = told;
  if (best === undefined) return null;
  const own = told.find(({ fault }) => fault.id === expected);
  if (stands(before, text, best, own)) return null;
  if (apart(told)) return { fault: best.fault.id };
  const near = told.filter(({ score }) => score >= Math.max(NEAR, best.score - 1)).slice(0, MOST_OFFERED);
  // Named too faintly to be offered by itself, and yet nothing of the one expected.
  if (near.length === 0 && (expected === undefined || own !== undefined)) return null;
  const offered = near.length === 0 ? [best] : near;
  const among = new Set([...offered.map(({ fault }) => fault.id), ...(expected === undefined ? [] : [expected])]);
  return among.size === 1 ? { fault: best.fault.id } : { among: [...among] };
};

const OF_SOMETHING_ELSE =
  'Good to hear. I keep what it was with the walk, and count it for no cause here. Clear skies.';

/** What it was stands in no list: it is kept in the member's words, and the walk ends well. */
const endedByElse = (began: Began, text: string, state: WalkState): Turn => {
  const kept = state === began.walk.state ? keptWords(began.context.by, state, text) : state;
  const turn = changed(began, kept, { notes: [OF_SOMETHING_ELSE], show: 'summary' });
  return { ...turn, walk: { ...turn.walk, endedUtcMs: began.context.nowUtcMs } };
};

/**
 * The turn that takes a cure for what the words say was done.
 * @param state the record with those words
 * @returns null where they tell of no deed but the one expected
 */
export const takeCredited = (
  began: Began,
  text: string,
  state: WalkState,
  expected: string | undefined,
): Turn | null => {
  const credited = creditedIn(began, text, expected);
  if (credited === null)
    return saysSomethingElse(text) && began.context.by === 'member' ? endedByElse(began, text, state) : null;
  if ('among' in credited)
    return changed(began, state, {
      whichCured: credited.among,
      asks: { kind: 'which-cured', faults: [...credited.among] },
    });
  const cured = answerStep(began.context.model, state, credited.fault, 'works', began.context.by);
  return isProblem(cured) ? null : changed(began, cured);
};

/** Words to "What was it?": the one they name, or none of them; null where nothing was asked. */
export const takeWhich = (began: Began, text: string): Turn | null => {
  const { context, walk } = began;
  const { asked } = walk.state;
  if (asked?.kind !== 'which-cured') return null;
  const [first, next] = remediesTold(context.model, began.before, text).filter(({ fault }) =>
    asked.faults.includes(fault.id),
  );
  if (first === undefined || first.score - (next?.score ?? Number.NEGATIVE_INFINITY) < NAMES_BY) return null;
  const cured = answerStep(context.model, walk.state, first.fault.id, 'works', context.by);
  return isProblem(cured) ? null : changed(began, cured);
};
