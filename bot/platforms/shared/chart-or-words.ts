/** A chart that cannot be drawn or sent costs the picture alone: the answer goes out, with words in its place. */
import { isProblem } from '../../ground/problem.js';
import type { Chart, Outcome } from '../../reply/reply.js';

/**
 * Null where the outcome has no chart.
 * @param draw the chart as the platform carries it; may reject
 * @param words what stands in its place then, told why
 */
export const chartOrWords = async <Drawn, Words>(
  outcome: Outcome,
  draw: (chart: Chart) => Promise<Drawn>,
  words: (error: unknown, chart: Chart) => Words,
): Promise<Drawn | Words | null> => {
  if (isProblem(outcome) || outcome.chart === undefined) return null;
  const { chart } = outcome;
  return draw(chart).catch((error: unknown) => words(error, chart));
};
