/** Zeros and peaks of a smooth function of time, found without missing short excursions between samples. */
import type { TimeSpan } from './night.js';
import type { UtcMs } from './types.js';

export type TimeFunction = (utcMs: UtcMs) => number;

export interface Crossing {
  readonly utcMs: UtcMs;
  /** Whether the function goes from negative to positive. */
  readonly rising: boolean;
}

/**
 * Fine enough that no altitude has two turning points of one kind between three samples; shorter excursions are caught at
 * the turning points themselves.
 */
const SAMPLE_MS = 240_000;
const TIME_TOLERANCE_MS = 0.5;
/** Near enough for what moves a degree in four minutes. */
const REFINED_TO_MS = 1000;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The zero between two instants at which the function's signs differ (bisection kept, secants taken: the Illinois method; M. Dowell and P. Jarratt, BIT 11, 168 (1971)). */
export const zeroBetween = (
  f: TimeFunction,
  startUtcMs: UtcMs,
  endUtcMs: UtcMs,
  valueAtStart = f(startUtcMs),
  valueAtEnd = f(endUtcMs),
): UtcMs => {
  let a = startUtcMs;
  let b = endUtcMs;
  let fa = valueAtStart;
  let fb = valueAtEnd;
  if (fa === 0) return a;
  if (fb === 0) return b;
  let keptSide = 0;
  for (let turn = 0; turn < 100 && Math.abs(b - a) > TIME_TOLERANCE_MS; turn++) {
    // Every third turn halves the bracket outright, so that a flat function cannot stall the secants.
    const c = turn % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const fc = f(c);
    if (fc === 0) return c;
    if (fc > 0 === fb > 0) {
      b = c;
      fb = fc;
      if (keptSide === -1) fa /= 2;
      keptSide = -1;
    } else {
      a = c;
      fa = fc;
      if (keptSide === 1) fb /= 2;
      keptSide = 1;
    }
  }
  return (a + b) / 2;
};

/** Where the function peaks between two instants, given that it has one peak there (golden-section search; J. Kiefer, Proc. AMS 4, 502 (1953)). */
const peakBetween = (
  f: TimeFunction,
  startUtcMs: UtcMs,
  endUtcMs: UtcMs,
  toleranceMs = TIME_TOLERANCE_MS * 2,
): UtcMs => {
  let a = startUtcMs;
  let b = endUtcMs;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let fc = f(c);
  let fd = f(d);
  while (b - a > toleranceMs) {
    if (fc >= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
};

/** Instants from start to end, evenly, at most SAMPLE_MS apart, and `margin` more of them before and after. */
const sampleTimes = (startUtcMs: UtcMs, endUtcMs: UtcMs, margin: number): Float64Array => {
  const steps = Math.max(2, Math.ceil((endUtcMs - startUtcMs) / SAMPLE_MS));
  const stepMs = (endUtcMs - startUtcMs) / steps;
  const times = new Float64Array(steps + 1 + 2 * margin);
  for (let i = 0; i < times.length; i++) times[i] = startUtcMs + stepMs * (i - margin);
  return times;
};

/** A function's values over a span, for all that is asked of it there. */
export interface Sampled extends TimeSpan {
  readonly f: TimeFunction;
  readonly times: Float64Array;
  readonly values: Float64Array;
}

export const sampled = (f: TimeFunction, startUtcMs: UtcMs, endUtcMs: UtcMs): Sampled => {
  // A turning point next to either end shows only beside a sample from outside the span.
  const times = endUtcMs > startUtcMs ? sampleTimes(startUtcMs, endUtcMs, 1) : new Float64Array();
  return { f, startUtcMs, endUtcMs, times, values: times.map(f) };
};

/** Every passage through a level between start and end, in order. The function may be any altitude. */
export const crossingsIn = (of: Sampled, level: number): Crossing[] => {
  const { startUtcMs, endUtcMs, times } = of;
  const f: TimeFunction = (utcMs) => of.f(utcMs) - level;
  const valueAt = (i: number): number => (of.values[i] as number) - level;
  const found: Crossing[] = [];
  const look = (a: UtcMs, fa: number, b: UtcMs, fb: number): void => {
    if (fa > 0 !== fb > 0) found.push({ utcMs: zeroBetween(f, a, b, fa, fb), rising: fb > 0 });
  };
  for (let i = 1; i < times.length; i++) {
    const before = valueAt(i - 1);
    const now = valueAt(i);
    look(times[i - 1]!, before, times[i]!, now);
    if (i + 1 === times.length) continue;
    const after = valueAt(i + 1);
    if (before > 0 !== now > 0 || now > 0 !== after > 0) continue;
    // Three samples on one side with a turning point towards zero: does it reach over?
    const side = now > 0 ? -1 : 1;
    if (side * now < side * before || side * now < side * after) continue;
    const peak = peakBetween((utcMs) => side * f(utcMs), times[i - 1]!, times[i + 1]!);
    const atPeak = f(peak);
    if (atPeak > 0 === now > 0) continue;
    look(times[i - 1]!, before, peak, atPeak);
    look(peak, atPeak, times[i + 1]!, after);
  }
  return found.filter(({ utcMs }) => utcMs >= startUtcMs && utcMs <= endUtcMs).sort((a, b) => a.utcMs - b.utcMs);
};

/** Every change of sign between start and end, in order. The function may be any altitude less a limit. */
export const crossingsOf = (f: TimeFunction, startUtcMs: UtcMs, endUtcMs: UtcMs): Crossing[] =>
  crossingsIn(sampled(f, startUtcMs, endUtcMs), 0);

/** A stretch of time with its ends told apart: an event, or only where the search began or ended. */
export interface Interval extends TimeSpan {
  readonly startsByCrossing: boolean;
  readonly endsByCrossing: boolean;
}

/** The stretches of the span in which the function is at or below a level, in order. */
export const intervalsBelowIn = (of: Sampled, level: number): Interval[] => {
  const { startUtcMs, endUtcMs } = of;
  const intervals: Interval[] = [];
  const crossings = crossingsIn(of, level);
  const belowAtStart = crossings[0]?.rising ?? of.f(startUtcMs) - level <= 0;
  let open: { startUtcMs: UtcMs; startsByCrossing: boolean } | null = belowAtStart
    ? { startUtcMs, startsByCrossing: false }
    : null;
  for (const { utcMs, rising } of crossings) {
    if (rising && open) {
      intervals.push({ ...open, endUtcMs: utcMs, endsByCrossing: true });
      open = null;
    } else if (!rising) {
      open = { startUtcMs: utcMs, startsByCrossing: true };
    }
  }
  if (open) intervals.push({ ...open, endUtcMs, endsByCrossing: false });
  return intervals;
};

/** The stretches of the span in which the function is at or below zero, in order. */
export const intervalsBelow = (f: TimeFunction, startUtcMs: UtcMs, endUtcMs: UtcMs): Interval[] =>
  intervalsBelowIn(sampled(f, startUtcMs, endUtcMs), 0);

/** When the function is greatest between start and end, ends included. */
export const greatestIn = (f: TimeFunction, startUtcMs: UtcMs, endUtcMs: UtcMs): UtcMs => {
  const times = sampleTimes(startUtcMs, endUtcMs, 0);
  const values = times.map(f);
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i;
  const peak = peakBetween(f, times[Math.max(0, best - 1)]!, times[Math.min(times.length - 1, best + 1)]!);
  // At an end of the span the function may still be climbing out of it; then the end itself is the answer.
  return f(peak) >= values[best]! ? peak : times[best]!;
};

/**
 * When the function is least in a span, ends included: sampled at most `stepMs` apart, which must leave no two valleys between
 * three samples, then refined. An empty span is its start.
 */
export const leastIn = (f: TimeFunction, { startUtcMs, endUtcMs }: TimeSpan, stepMs: number): UtcMs => {
  if (!(endUtcMs > startUtcMs)) return startUtcMs;
  const steps = Math.max(2, Math.ceil((endUtcMs - startUtcMs) / stepMs));
  const times = Array.from({ length: steps + 1 }, (_, i) => startUtcMs + ((endUtcMs - startUtcMs) * i) / steps);
  const values = times.map(f);
  const best = values.reduce((least, value, i) => (value < values[least]! ? i : least), 0);
  const valley = peakBetween(
    (utcMs) => -f(utcMs),
    times[Math.max(0, best - 1)]!,
    times[Math.min(steps, best + 1)]!,
    REFINED_TO_MS,
  );
  return f(valley) <= values[best]! ? valley : times[best]!;
};
