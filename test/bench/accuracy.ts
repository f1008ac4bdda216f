/** The worst error of each quantity against the reference libraries' saved answers, as rows beside the others. */
import { worstErrors } from '../reference/worst-errors.js';
import { single, type BenchRow } from './measure.js';

export const accuracyRows = (): BenchRow[] =>
  worstErrors().map(({ quantity, cases, worst, limit, unit, reference }) =>
    single(`worst error: ${quantity} (${cases} cases, ${reference})`, unit, worst, limit),
  );
