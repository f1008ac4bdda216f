/** Words kept with the walk for a helper, of which nothing is read. */
import { WORDS_LIMIT, type Speaker, type WalkState } from '../../triage/index.js';

export const keptWords = (by: Speaker, state: WalkState, words: string): WalkState => ({
  ...state,
  events: [
    ...state.events,
    { kind: 'text', words: words.trim().slice(0, WORDS_LIMIT), facts: [], guesses: [], suggests: [], by },
  ],
});

/**
 * Without what the words of the last turn say of a question that was answered otherwise.
 * @param but what may stand: the answer itself
 */
export const withoutFactsOf = (state: WalkState, what: string, but?: string): WalkState => {
  const last = state.events.at(-1);
  if (last?.kind !== 'text') return state;
  const facts = last.facts.filter((fact) => fact.what !== what || fact.answer === but);
  return { ...state, events: [...state.events.slice(0, -1), { ...last, facts }] };
};
