/** Every reference case (made by test/reference/generate_*.py with astropy, pyerfa and skyfield on JPL DE421), worst errors printed. */
import { describe, expect, it } from 'vitest';
import { altitudeCrossings } from '../../bot/sky/rise-set.js';
import { readEvents, readPlaces } from '../reference/reference-cases.js';
import { worstErrors } from '../reference/worst-errors.js';

const rows = worstErrors();

describe('the sky core against reference libraries', () => {
  it('has at least 300 cases over the latitudes and years promised', () => {
    const places = readPlaces();
    const cases = [...places.stars, ...places.solarSystem];
    const latitudes = cases.map(({ observer }) => observer.latitudeDeg);
    const years = cases.map(({ utcMs }) => new Date(utcMs).getUTCFullYear());
    expect(cases.length).toBeGreaterThanOrEqual(300);
    expect([Math.min(...latitudes), Math.max(...latitudes)]).toEqual([-75, 78]);
    expect([Math.min(...years), Math.max(...years)]).toEqual([2020, 2035]);
  });

  it.each(rows.map((row) => [row.quantity, row] as const))('%s', (_, row) => {
    console.info(
      `${row.quantity}: worst ${row.worst.toPrecision(3)} ${row.unit}, rms ${row.rms.toPrecision(2)} ${row.unit}, ` +
        `limit ${row.limit} ${row.unit}, ${row.cases} values against ${row.reference}`,
    );
    expect(row.cases).toBeGreaterThan(0);
    expect(row.worst).toBeLessThanOrEqual(row.limit);
  });

  it('finds every short appearance and disappearance of a body that grazes the horizon', () => {
    const grazing = readEvents().grazing.filter(({ body }) => body.kind === 'fixed');
    const short = grazing.filter(({ crossings }) => crossings === 2);
    expect(short.length).toBeGreaterThan(10);
    for (const { body, observer, startUtcMs, endUtcMs, crossings } of grazing) {
      expect(altitudeCrossings(body, observer, -34 / 60, startUtcMs, endUtcMs)).toHaveLength(crossings);
    }
  });
});
