/** What a reply asks beside its step or instead of it, kept for the next turn, and the words that answer it. */
import type { Problem } from '../../ground/problem.js';
import { takeWhich } from './which-cured.js';
import { guessedIn, takeGuessedReply } from './guessed-reply.js';
import { takeNotSo } from './not-so-typed.js';
import type { Began, SaidInTurn, Turn, TurnContext } from './turn.js';

const typed = ({ text, answer }: SaidInTurn): string | undefined => (answer === undefined ? text : undefined);

/** Words to a list that stands instead of the step: what is not so, what the cure was. */
export const takeListed = (began: Began, said: SaidInTurn): Turn | Problem | null => {
  const text = typed(said);
  return text === undefined ? null : (takeNotSo(began, text) ?? takeWhich(began, text));
};

/** A yes or a no to what was guessed beside the step. */
export const takeGuessed = (began: Began, said: SaidInTurn): Turn | null => {
  const text = typed(said);
  return text === undefined ? null : takeGuessedReply(began, text);
};

/** The turn, whose record knows what its reply asks; what was asked before is over. */
export const asking = (context: TurnContext, turn: Turn): Turn => {
  const { asked: _before, rests, ...said } = turn.walk.state;
  const state = turn.show === 'glad' && rests === true ? { ...said, rests } : said;
  const asked = turn.show === 'doubt' ? ({ kind: 'doubt' } as const) : (turn.asks ?? guessedIn({ context }, turn));
  return { ...turn, walk: { ...turn.walk, state: asked === undefined ? state : { ...state, asked } } };
};
