/** How bright a variable star is likely to be at an instant, by its period; what keeps no clock cannot be told. */
import type { Target, VariableStar } from '../catalogue/index.js';
import { apparentMagnitude } from '../sky/brightness.js';
import { julianDateOf } from '../sky/julian-date.js';
import type { UtcMs } from '../sky/types.js';

/** Part of a period in which a star climbs from its faintest to its brightest; common practice, no source. */
const CLIMBS = { long: 0.4, short: 0.3 } as const;
/** Mira stars take longer than this; common practice, no source. */
const LONG_PERIOD_DAYS = 80;
/** Half of an Algol star's eclipse lasts about this part of its period (Algol itself: 5 of 69 hours); common practice, no source. */
const HALF_ECLIPSE = 0.075;

/** Part of a period after which it shows which way its light goes. */
const SOON = 0.02;

export type VariableNow =
  /** By its period. */
  | { readonly by: 'period'; readonly magnitude: number; readonly isRising: boolean }
  /** It erupts once in a lifetime, and is faint between. */
  | { readonly by: 'quiet'; readonly magnitude: number }
  /** It keeps no period, or nobody told when it was at its extreme. */
  | { readonly by: 'nothing' };

/** 0 at the extreme that the elements tell, 1 at the next. */
const phaseAt = (epochJd: number, periodDays: number, utcMs: UtcMs): number => {
  const cycles = (julianDateOf(utcMs) - epochJd) / periodDays;
  return cycles - Math.floor(cycles);
};

/** 0 at the brightest, 1 at the faintest. */
const dimming = (variable: VariableStar, phase: number, periodDays: number): number => {
  if (variable.epochIs === 'minimum') {
    const fromMiddle = Math.min(phase, 1 - phase);
    return variable.type.includes('Lyrae')
      ? (1 + Math.cos(2 * Math.PI * phase)) / 2
      : Math.max(0, 1 - fromMiddle / HALF_ECLIPSE);
  }
  const falls = 1 - (periodDays > LONG_PERIOD_DAYS ? CLIMBS.long : CLIMBS.short);
  return phase < falls
    ? (1 - Math.cos((Math.PI * phase) / falls)) / 2
    : (1 + Math.cos((Math.PI * (phase - falls)) / (1 - falls))) / 2;
};

export const variableNow = (variable: VariableStar, utcMs: UtcMs): VariableNow => {
  const { type, brightestMagnitude, faintestMagnitude, periodDays, epochJd } = variable;
  if (type.includes('nova')) return { by: 'quiet', magnitude: faintestMagnitude };
  if (periodDays === null || epochJd === null) return { by: 'nothing' };
  const phase = phaseAt(epochJd, periodDays, utcMs);
  const share = dimming(variable, phase, periodDays);
  const isRising = dimming(variable, (phase + SOON) % 1, periodDays) < share;
  return { by: 'period', magnitude: brightestMagnitude + share * (faintestMagnitude - brightestMagnitude), isRising };
};

/** What a target's magnitude is taken for at an instant: planets and variable stars as they are then. */
export const magnitudeThen = ({ body, magnitude, variable }: Target, utcMs: UtcMs): number | null => {
  if (body.kind === 'solarSystem') return apparentMagnitude(body.body, utcMs);
  const now = variable === null ? null : variableNow(variable, utcMs);
  return now === null || now.by === 'nothing' ? magnitude : now.magnitude;
};
