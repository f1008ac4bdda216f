import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeTargets, resolveTarget } from '../../bot/catalogue/index.js';
import { catalogue } from './loaded.js';

const values = (partial: string, limit?: number): readonly string[] =>
  completeTargets(catalogue, partial, limit).map((c) => c.value);

describe('completion as a member types', () => {
  it('puts the whole name first, then what is best known', () => {
    expect(values('m 1')[0]).toBe('M 1');
    expect(values('ngc 733')[0]).toBe('NGC 733');
    expect(values('ngc 733')[1]).toBe('NGC 7331');
    expect(values('mars')[0]).toBe('Mars');
    expect(values('s')[0]).toBe('Sun');
  });

  it.each([
    ['deer', 'NGC 7331'],
    ['messier 10', 'M 10'],
    ['alf l', 'Vega'],
    ['alpha ly', 'Vega'],
    ['α L', 'Vega'],
    ['beteg', 'Betelgeuse'],
    ['andromeda g', 'M 31'],
    ['61 c', '61 Cyg'],
    ['61 cygni', '61 Cyg'],
    ['caldwell 30', 'NGC 7331'],
    ['hip 9126', 'Vega'],
    ['the whirl', 'M 51'],
    ['qqqqq', null],
    ['tuc', 'NGC 104'],
  ])('%s offers %s', (partial, name) => {
    if (name === null) expect(values(partial)).toEqual([]);
    else expect(values(partial)).toContain(name);
  });

  it('finds a later word, and a near spelling when nothing else fits', () => {
    expect(values('lagoon')).toContain('M 8');
    expect(values('nebula').length).toBe(25);
    expect(values('andromido')).toContain('M 31');
  });

  it('says what each is, in at most 100 characters', () => {
    expect(completeTargets(catalogue, 'deer lick')[0]).toEqual({
      value: 'NGC 7331',
      label: 'NGC 7331 (Deer Lick Galaxy) · spiral galaxy in Pegasus',
    });
    for (const letter of 'abcdefghijklmnopqrstuvwxyz') {
      for (const { label } of completeTargets(catalogue, letter)) expect(label.length).toBeLessThanOrEqual(100);
    }
  });

  it('gives at most as many as asked for, each once, and something for an empty text', () => {
    expect(values('').length).toBe(25);
    expect(values('n', 7).length).toBe(7);
    expect(values('ngc', 0)).toEqual([]);
    expect(new Set(values('great')).size).toBe(values('great').length);
  });

  it('offers only what then resolves to one target', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'abcdeginmorstuv 123467αβγ'), minLength: 0, maxLength: 5 }),
        (partial) => {
          for (const value of values(partial, 10))
            expect(isProblem(resolveTarget(catalogue, value)), value).toBe(false);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (partial) => {
        expect(completeTargets(catalogue, partial).length).toBeLessThanOrEqual(25);
      }),
      { numRuns: 500 },
    );
    expect(values('x'.repeat(10_000))).toEqual([]);
    expect(values('__proto__')).toEqual([]);
  });
});
