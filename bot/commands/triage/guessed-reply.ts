/** A yes or a no to what was guessed beside a step: "Perhaps: …", or "Did you mean …?" of another question. */
import { isProblem } from '../../ground/problem.js';
import { answerInstead, answerStep, tellText, type Asked, type WalkState } from '../../triage/index.js';
import { outcomeSaid, yesOrNo } from '../../reading/index.js';
import { keptWords } from './kept-words.js';
import { guessesShown, labelledGuess } from './read-notes.js';
import { isAffirmed, isShortCure } from './short-cure.js';
import { saidBefore } from './said-before.js';
import { answersOf } from './step-data.js';
import { nearestBefore } from './answer-in-words.js';
import { doesWhatFailed, tellsOutcome } from './told-at-card.js';
import { changed, type Began, type Turn } from './turn.js';

type Guesses = Extract<Asked, { kind: 'guessed' }>['guesses'];

/** What this turn's words were only like, and its reply showed. */
export const guessedIn = ({ context: { model } }: Pick<Began, 'context'>, turn: Turn): Asked | undefined => {
  const { state } = turn.walk;
  const last = state.events.slice(state.turns.at(-1) ?? 0).findLast(({ kind }) => kind === 'text');
  if (last?.kind !== 'text' || turn.show !== 'step' || turn.ifFixed !== undefined) return undefined;
  const shown = guessesShown(model, { perhaps: last.guesses, told: last.facts }, turn.at?.id);
  const guesses = shown.map(({ what, answer }) => ({ what, answer }));
  return guesses.length === 0 || !turn.notes.some((note) => note.startsWith('Perhaps: '))
    ? undefined
    : { kind: 'guessed', guesses };
};

const BEGINS = { yes: /^yes\b/iu, no: /^no\b/iu } as const;
/** "Yes that", "yes, that one": said of what was shown, and no answer to a question of yes or no. */
const POINTS = /\b(?:that|this|it|those|them|exactly|right|correct|you got|spot on|perhaps|genau|stimmt)\b/iu;

const taken = ({ context }: Began, state: WalkState, guesses: Guesses): WalkState =>
  guesses.reduce((at, { what, answer }) => {
    const earlier = saidBefore(at.events).get(what);
    if (earlier !== undefined && earlier !== answer)
      return answerInstead(context.model, at, { check: what, answer }, context.by);
    const next = answerStep(context.model, at, what, answer, context.by);
    return isProblem(next) ? at : next;
  }, state);

const deniedAll = ({ context, before, ...began }: Began, guesses: Guesses, rest: string): Turn | null => {
  if (before.step.kind === 'try' || rest !== '') return null;
  const state = guesses.reduce<WalkState>((at, { what }) => {
    const next = answerStep(context.model, at, 'not', what, context.by);
    return isProblem(next) ? at : next;
  }, began.walk.state);
  return changed({ context, before, ...began }, state, { notes: ['Not that, then.'], at: before.step });
};

/** Longer than this behind a yes is a tale of its own. */
const LONGEST_BEHIND = 80;

/** "Yes, the search finds it now", "bingo": what came of the remedy in hand, and no yes to a guess beside it. */
const isOfRemedy = (began: Began, text: string, rest: string): boolean => {
  if (isShortCure(began, text) && (began.before.step.kind === 'try' || /\bnow\b/iu.test(text))) return true;
  if (began.before.step.kind !== 'try') return false;
  if (rest === '') return isAffirmed(text);
  return doesWhatFailed(began, text) || tellsOutcome(outcomeSaid(began.context.model.reading, rest));
};

/** @returns null where nothing was guessed, or the words say neither */
export const takeGuessedReply = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  const asked = walk.state.asked;
  const reply = asked?.kind === 'guessed' ? yesOrNo(text) : null;
  if (asked?.kind !== 'guessed' || reply === null || reply.rest.length > LONGEST_BEHIND) return null;
  // "Did you mean …?" of the question in hand comes first, and so does a question of yes or no.
  if (isOfRemedy(began, text, reply.rest) || nearestBefore(began)?.isSure === false) return null;
  const isOfYesOrNo = answersOf(before).some(({ label }) => BEGINS[reply.says].test(label));
  if (isOfYesOrNo && !POINTS.test(text)) return null;
  if (reply.says === 'no') return deniedAll(began, asked.guesses, reply.rest);
  const told =
    reply.rest === ''
      ? keptWords(context.by, walk.state, text)
      : tellText(context.model, walk.state, reply.rest, context.by).state;
  const labels = asked.guesses.map((guess) => labelledGuess(context.model, guess)).join('; ');
  return changed(began, taken(began, told, asked.guesses), { notes: [`I take it: ${labels}.`], at: before.step });
};
