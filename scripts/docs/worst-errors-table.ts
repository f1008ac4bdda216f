/** The README's table of the worst errors found against reference libraries, computed afresh. */
import { worstErrors } from '../../test/reference/worst-errors.js';

/** Two significant figures, so that the last digits of another machine's arithmetic do not change the page. */
const figure = (value: number): string => {
  if (value === 0) return '0';
  return value < 1e-6 ? 'under 0.000001' : String(Number(value.toPrecision(2)));
};

export const worstErrorsTable = (): string =>
  [
    '| quantity | cases | worst | allowed | reference |',
    '|---|---|---|---|---|',
    ...worstErrors().map(
      ({ quantity, cases, worst, limit, unit, reference }) =>
        `| ${quantity} | ${cases} | ${figure(worst)} ${unit} | ${figure(limit)} ${unit} | ${reference} |`,
    ),
  ].join('\n');
