/** How bright a variable star is likely to be this night: by its period, or that nobody can tell. */
import type { Target } from '../../catalogue/index.js';
import { variableNow } from '../../evening/variable-now.js';
import type { Fact } from '../../reply/reply.js';
import { magnitudeText } from '../../reply/wording.js';
import type { UtcMs } from '../../sky/types.js';

/** Over so small a range nobody takes a star for missing; common practice, no source. */
const WIDE_RANGE_MAG = 2;
/** From so far down its range on a star is called faint. */
const FAINT_SHARE = 0.6;
/** Mira stars keep to their period by weeks and to no height, and climb faster than they fall: common practice, no source. */
const LOOSE_RANGE_MAG = 3;
const MAY_BE_FAINT_SHARE = 0.4;

export interface VariableTonight {
  readonly facts: readonly Fact[];
  /** It is, or may be, much fainter than at its best. */
  readonly mayBeFaint: boolean;
}

const NOTHING: VariableTonight = { facts: [], mayBeFaint: false };

const told = (value: string, mayBeFaint: boolean): VariableTonight => ({
  facts: [{ label: 'Now', value }],
  mayBeFaint,
});

export const variableTonight = ({ variable }: Target, utcMs: UtcMs): VariableTonight => {
  if (variable === null) return NOTHING;
  const { brightestMagnitude, faintestMagnitude } = variable;
  const range = faintestMagnitude - brightestMagnitude;
  const now = variableNow(variable, utcMs);
  if (now.by === 'nothing')
    return range < WIDE_RANGE_MAG
      ? NOTHING
      : told('not to be told ahead, and it may be faint: compare it with its neighbours', true);
  const magnitude = magnitudeText(now.magnitude);
  if (now.by === 'quiet') return told(`about mag ${magnitude}, unless it has just erupted`, true);
  const isFaint = range >= WIDE_RANGE_MAG && now.magnitude - brightestMagnitude >= FAINT_SHARE * range;
  const faint = isFaint ? ': near its faintest' : '';
  if (range < LOOSE_RANGE_MAG) return told(`about mag ${magnitude} by its period${faint}`, isFaint);
  const way = now.isRising ? 'growing brighter' : 'fading';
  return told(
    `${way}; about mag ${Math.round(now.magnitude)} by its period, give or take two${faint}`,
    now.magnitude - brightestMagnitude >= MAY_BE_FAINT_SHARE * range,
  );
};
