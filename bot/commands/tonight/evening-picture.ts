/** The evening of `tonight` as one picture: a bar a target along the hours. */
import { listName } from '../../catalogue/index.js';
import type { EveningHours } from '../../evening/evening-hours.js';
import { leastAltitudeDegOf } from '../../evening/pick.js';
import type { Pick } from '../../evening/tonight-picks.js';
import type { EveningChart } from '../../reply/reply.js';
import { listed } from '../../reply/wording.js';
import { altitudeCurve } from '../../sky/altitude-curve.js';
import type { TimeSpan } from '../../sky/night.js';
import type { Sought } from './sought.js';

const CURVE_STEP_MS = 10 * 60_000;

export const eveningPicture = (
  { night, where }: Sought,
  { brightWindow: { startUtcMs, endUtcMs } }: EveningHours,
  inOrder: readonly Pick[],
  dark: TimeSpan | null,
): EveningChart => {
  const { observer, zone } = where.site;
  const points = Math.max(2, Math.min(80, Math.ceil((endUtcMs - startUtcMs) / CURVE_STEP_MS) + 1));
  return {
    kind: 'evening',
    title: `The evening of ${night.said}`,
    zone,
    startUtcMs,
    endUtcMs,
    darkFromUtcMs: dark?.startUtcMs ?? null,
    rows: inOrder.map(({ target, bestUtcMs }) => ({
      name: listName(target),
      bestUtcMs,
      leastDeg: leastAltitudeDegOf(target.body),
      curve: altitudeCurve(target.body, observer, startUtcMs, endUtcMs, points),
    })),
    altText: `Bars along the hours for ${listed(inOrder.map(({ target }) => target.name))}, each brighter where its target stands higher.`,
  };
};
