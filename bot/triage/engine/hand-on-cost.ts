/** What it costs to hand on to a person, by how long the walk has lasted. */
import type { Evidence } from './evidence.js';
import type { Situation } from './situation.js';

/** While a walk is young another look is better than a person's visit; as it grows long the person is. */
const YOUNG_STEPS = 8;
const MINUTES_A_YOUNG_STEP = 12;
const MINUTES_AN_OLD_STEP = 30;
const LEAST_HAND_ON_MINUTES = 15;

export const handOnMinutes = (situation: Situation, { turns }: Evidence): number => {
  const left = YOUNG_STEPS - turns;
  return Math.max(
    LEAST_HAND_ON_MINUTES,
    situation.handOnMinutes + left * (left > 0 ? MINUTES_A_YOUNG_STEP : MINUTES_AN_OLD_STEP),
  );
};
