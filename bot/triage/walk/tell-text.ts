/** Takes what a member wrote or pasted into a walk's record. */
import { asIfOwn, readText, type ReadBy, type ReadFact, type Reading } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import { withLeadsSocket } from './lead-of-handset.js';
import { withoutStillToCome } from './not-yet-there.js';
import { withoutOtherSystem } from './other-system.js';
import { withoutOtherWays } from './other-way.js';
import { withAllTold } from './told-together.js';
import {
  EVENT_LIMIT,
  keptFact,
  wordsIn,
  WORDS_LIMIT,
  type Speaker,
  type WalkEvent,
  type WalkState,
} from './walk-state.js';
import { withFact, withoutGuesses, type HowTold } from './with-fact.js';

/** Of a paste the end is kept, of words the beginning. */
const bounded = (text: string, by: ReadBy): string =>
  by === 'words' ? text.slice(0, WORDS_LIMIT) : text.slice(-WORDS_LIMIT);

/** The lines of the look at all entries, by the look at one kind of them. */
const ENTRY_LINES: ReadonlyMap<string, readonly string[]> = new Map([
  ['site-entries', ['longitude', 'latitude', 'place']],
  ['zone-entries', ['offset', 'summer-time']],
  ['date-entries', ['date', 'time']],
]);
const ALL_ENTRIES = 'entries-screen';

/** What was reckoned from the words stands in place of what they were taken for or are only like. */
const withKnown = (read: Reading, known: HowTold['known'] = []): Reading => {
  if (known.length === 0) return read;
  const reckoned = known.flatMap(({ fact: { what } }) => ENTRY_LINES.get(what) ?? []);
  const isStale = ({ what, answer }: ReadFact): boolean => what === ALL_ENTRIES && reckoned.includes(answer);
  const others: Reading = {
    ...read,
    facts: read.facts.filter((fact) => !isStale(fact)),
    understood: read.understood.filter(({ fact }) => !isStale(fact)),
  };
  return withoutGuesses(
    known.reduce((told, one) => withFact(told, one), others),
    (what) => what === ALL_ENTRIES || known.some(({ fact }) => fact.what === what),
  );
};

const eventOf = (text: string, read: Reading, by: Speaker): WalkEvent => ({
  kind: 'text',
  words: bounded(text.trim(), read.by),
  facts: read.facts.slice(0, 60).map(keptFact),
  guesses: read.perhaps.slice(0, 20).map(keptFact),
  suggests: read.suggested.slice(0, 40).map(({ faultId, weight }) => ({ faultId, weight })),
  by,
});

/** Takes a paste or a member's own words; the record keeps them, bounded, with what was read. */
export const tellText = (
  model: TriageModel,
  state: WalkState,
  text: string,
  by: Speaker,
  how: HowTold = {},
): { readonly state: WalkState; readonly read: Reading } => {
  // What a friend has is said of the mount in hand.
  const heard = state.about === undefined ? text : asIfOwn(text, { who: state.about });
  const told = withoutStillToCome(readText(model.reading, heard, how.by), text);
  const own = withoutOtherWays(model, withoutOtherSystem(told, heard, state.events));
  const texts = [...wordsIn(state), text.slice(-WORDS_LIMIT)];
  const known = withKnown(withAllTold(own, text, texts), how.known);
  const first = eventOf(text, known, by);
  const read = withLeadsSocket(model, [...state.events, first], known);
  if (text.trim() === '' || state.events.length >= EVENT_LIMIT) return { state, read };
  const event = read === known ? first : eventOf(text, read, by);
  return { state: { ...state, events: [...state.events, event] }, read };
};
