/** What `npm run check` holds a change to. */
import { describe, expect, it } from 'vitest';
import { stepsFor } from '../../scripts/ci/check-steps.js';

const TESTS = ['test/commands/sidereal.test.ts', 'test/sky/sidereal.test.ts', 'test/commands/up.test.ts'];
const names = (changed: readonly string[]): readonly string[] => stepsFor(changed, TESTS).map(({ name }) => name);
const testsOf = (changed: readonly string[]): readonly string[] =>
  stepsFor(changed, TESTS)
    .find(({ name }) => name === 'tests')
    ?.args.slice(1) ?? [];

describe('a change is held', () => {
  it('of knowledge, to its check and its tests', () => {
    expect(names(['knowledge/connection/reading/answers/power.yaml'])).toEqual(['layout', 'knowledge', 'tests']);
    expect(testsOf(['knowledge/connection/faults/power.yaml'])).toEqual(['test/knowledge']);
  });

  it('of a source, to types, lint, the borders, and the tests of its name', () => {
    expect(names(['bot/commands/sidereal.ts'])).toEqual(['layout', 'lint', 'types', 'tests']);
    expect(testsOf(['bot/commands/sidereal.ts'])).toEqual(['test/structure', ...TESTS.slice(0, 2)]);
  });

  it('of a test, to itself, once', () => {
    expect(testsOf(['test/commands/up.test.ts', 'bot/commands/up.ts'])).toEqual(['test/structure', TESTS[2]]);
  });

  it('of a document, to its layout alone; of nothing, to nothing', () => {
    expect(names(['README.md'])).toEqual(['layout']);
    expect(names([])).toEqual([]);
  });
});
