/** Takes what a member wrote or pasted into a walk's record. */
import { readText, type ReadBy, type Reading } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import { withoutOtherSystem } from './other-system.js';
import { withAllTold } from './told-together.js';
import { EVENT_LIMIT, keptFact, WORDS_LIMIT, type Speaker, type WalkEvent, type WalkState } from './walk-state.js';
import { withFact, type HowTold } from './with-fact.js';

/** Of a paste the end is kept, of words the beginning. */
const bounded = (text: string, by: ReadBy): string =>
  by === 'words' ? text.slice(0, WORDS_LIMIT) : text.slice(-WORDS_LIMIT);

/** Takes a paste or a member's own words; the record keeps them, bounded, with what was read. */
export const tellText = (
  model: TriageModel,
  state: WalkState,
  text: string,
  by: Speaker,
  how: HowTold = {},
): { readonly state: WalkState; readonly read: Reading } => {
  const own = withoutOtherSystem(readText(model.reading, text, how.by), text, state.events);
  const earlier = state.events.flatMap((event) => (event.kind === 'text' ? [event.words] : []));
  const texts = [...earlier, text.slice(-WORDS_LIMIT)];
  const read = (how.known ?? []).reduce((told, one) => withFact(told, one), withAllTold(own, text, texts));
  if (text.trim() === '' || state.events.length >= EVENT_LIMIT) return { state, read };
  const event: WalkEvent = {
    kind: 'text',
    words: bounded(text.trim(), read.by),
    facts: read.facts.slice(0, 60).map(keptFact),
    guesses: read.perhaps.slice(0, 20).map(keptFact),
    suggests: read.suggested.slice(0, 40).map(({ faultId, weight }) => ({ faultId, weight })),
    by,
  };
  return { state: { ...state, events: [...state.events, event] }, read };
};
