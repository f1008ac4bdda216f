/** Words kept with the walk for a helper, of which nothing is read. */
import { readText, withoutOtherThings, type Reading } from '../../reading/index.js';
import { WORDS_LIMIT, type Speaker, type TriageModel, type WalkState } from '../../triage/index.js';

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

interface Told {
  readonly state: WalkState;
  readonly read: Reading;
}

/** Without the facts, told or guessed, that this finds. */
const withoutWhich = ({ state, read }: Told, isOut: (fact: Reading['facts'][number]) => boolean): Told => {
  const last = state.events.at(-1);
  if (last?.kind !== 'text' || ![...read.facts, ...read.perhaps].some(isOut)) return { state, read };
  const out = new Set([...read.facts, ...read.perhaps].filter(isOut).map(({ what, answer }) => `${what}.${answer}`));
  const stays = <Fact extends { readonly what: string; readonly answer: string }>(facts: readonly Fact[]): Fact[] =>
    facts.filter(({ what, answer }) => !out.has(`${what}.${answer}`));
  const own = { ...last, facts: stays(last.facts), guesses: stays(last.guesses) };
  return {
    state: { ...state, events: [...state.events.slice(0, -1), own] },
    read: {
      ...read,
      facts: stays(read.facts),
      perhaps: stays(read.perhaps),
      understood: read.understood.filter(({ fact }) => !out.has(`${fact.what}.${fact.answer}`)),
    },
  };
};

/**
 * Where one thing is set apart as wrong, that all is well was not said: what was read as sound goes.
 * @param isSetApart asked only where something was read as sound
 */
export const withoutSound = (model: TriageModel, told: Told, isSetApart: () => boolean): Told => {
  const isSound = ({ what, answer }: Reading['facts'][number]): boolean => model.check(what)?.good === answer;
  return told.read.facts.some(isSound) && isSetApart() ? withoutWhich(told, isSound) : told;
};

/** What the mount, its hand controller and the boxes at it show: another's screen or light is none of these. */
export const SHOWN_BY_IT: ReadonlySet<string> = new Set([
  'controller-screen',
  'power-light',
  'power-touch',
  'board-light',
  'bridge-light',
  'bt-light',
  'adapter-light',
  'arrow-keys',
  'guide-buttons',
  'gear-sound',
]);
const DARK = 'no-light';

/** Without what was read of the mount's own from words on another thing. */
export const withoutOthers = (model: TriageModel, told: Told, text: string): Told => {
  const own = withoutOtherThings(text);
  if (own === null) return told;
  const still = new Set(
    own === '' ? [] : readText(model.reading, own).facts.map(({ what, answer }) => `${what}.${answer}`),
  );
  return withoutWhich(
    told,
    ({ what, answer }) => (SHOWN_BY_IT.has(what) || answer === DARK) && !still.has(`${what}.${answer}`),
  );
};
