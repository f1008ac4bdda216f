/** Turns of a walk: what one message or press added to its record. */
import type { WalkState } from './walk-state.js';

/** Notes where a turn begins: `before` is the record as it stood then. */
export const turnFrom = (before: WalkState, after: WalkState): WalkState => ({
  ...after,
  turns: [...before.turns, before.events.length],
});

/** Takes back the last turn, with all that was read from it; null where nothing is left to take back. */
export const stepBack = (state: WalkState): WalkState | null => {
  const last = state.events.findLastIndex(({ by }) => by !== null);
  if (last < 0) return null;
  const turns = state.turns.filter((began) => began <= last);
  return { ...state, events: state.events.slice(0, turns.at(-1) ?? last), turns: turns.slice(0, -1) };
};
