import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tidy } from '../../bot/ground/tidy.js';
import { choice, defineCommand, number, optional, text } from '../../bot/commands/core/command.js';
import { LINE_LIMIT, parseLine } from '../../bot/commands/core/grammar.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';

const point = defineCommand({
  name: 'point',
  summary: 'A command to test with',
  examples: ['point Vega'],
  options: {
    target: text('Target'),
    site: optional(text('Site')),
    at: optional(text('When')),
    above: optional(number('Least', { min: 0, max: 90 })),
    kind: optional(choice('Kind', ['one', 'two'])),
  },
  run: async () => reply({ pointsAt: NOWHERE, title: 't', summary: 's' }),
});
const bareless = defineCommand({
  name: 'list',
  summary: 'No required option',
  examples: ['list'],
  options: { site: optional(text('Site')) },
  run: async () => reply({ pointsAt: NOWHERE, title: 't', summary: 's' }),
});
const commands = [point, bareless];

const values = (line: string): Record<string, string> | string => {
  const parsed = parseLine(line, commands);
  return 'problem' in parsed ? parsed.problem : Object.fromEntries(parsed.raw);
};
const message = (line: string): string => {
  const parsed = parseLine(line, commands);
  return 'problem' in parsed ? parsed.message : '';
};

describe('the text grammar', () => {
  it.each([
    ['point NGC 7331 site:51.05,-114.07', { target: 'NGC 7331', site: '51.05,-114.07' }],
    ['/point Vega', { target: 'Vega' }],
    ['POINT Vega', { target: 'Vega' }],
    ['point target:Vega at:"tonight 22:30"', { target: 'Vega', at: 'tonight 22:30' }],
    ['point Vega at:tonight 22:30 site:Cork, Ireland', { target: 'Vega', at: 'tonight 22:30', site: 'Cork, Ireland' }],
    ['point 16:41:42 +36:28', { target: '16:41:42 +36:28' }],
    ['point Vega at:2026-12-13T21:00:05Z', { target: 'Vega', at: '2026-12-13T21:00:05Z' }],
    ['point "Barnard\'s star"', { target: "Barnard's star" }],
    ["point “Cat's Eye” SITE:Cork", { target: "Cat's Eye", site: 'Cork' }],
    ['point Vega site:"The \\"Hut\\""', { target: 'Vega', site: 'The "Hut"' }],
    ['point   Vega\t site:  Cork  ', { target: 'Vega', site: 'Cork' }],
    ['list', {}],
    ['point 18h36m56.3s +38°47\'01" site:Cork', { target: '18h36m56.3s +38°47\'01"', site: 'Cork' }],
  ])('reads %s', (line, expected) => expect(values(line)).toEqual(expected));

  it.each([
    ['', 'empty-line'],
    ['   ', 'empty-line'],
    ['/', 'empty-line'],
    ['pint Vega', 'unknown-command'],
    ['__proto__', 'unknown-command'],
    ['constructor x', 'unknown-command'],
    ['point Vega sitte:Cork', 'unknown-option'],
    ['point Vega __proto__:1', 'unknown-option'],
    ['point Vega constructor:1', 'unknown-option'],
    ['point Vega site:"Cork', 'unclosed-quote'],
    ['point "', 'unclosed-quote'],
    ['point “Vega', 'unclosed-quote'],
    ['point Vega site:', 'empty-option'],
    ['point Vega site:""', 'empty-option'],
    ['point Vega site:Cork site:Ely', 'option-twice'],
    ['list Cork', 'unexpected-words'],
    [`point ${'x'.repeat(10_000)}`, 'line-too-long'],
  ])('refuses %.40s with a code', (line, code) => expect(values(line)).toBe(code));

  it('says what would be right', () => {
    expect(message('pint Vega')).toContain('Did you mean point?');
    expect(message('point Vega sitte:Cork')).toContain('Did you mean site:?');
    expect(message('point Vega wibble:Cork')).toContain('target: site: at:');
    expect(message(`point ${'x'.repeat(10_000)}`)).toContain(String(LINE_LIMIT));
  });

  it('drops control and bidirectional characters', () => {
    expect(values('point \u202eVega\u0007 site:Co\u200brk')).toEqual({ target: 'Vega', site: 'Cork' });
    expect(tidy('a\u202eb\u0000c', 10)).toBe('abc');
  });

  it('gives back any plain value it was given in quotes, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (value) => {
        const clean = tidy(value.replace(/["\\“”]/gu, ''), 200);
        if (clean === '') return;
        expect(values(`point "${clean}"`)).toEqual({ target: clean });
      }),
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (line) => {
        const parsed = parseLine(line, commands);
        if ('problem' in parsed) expect(parsed.message.length).toBeLessThanOrEqual(400);
      }),
      { numRuns: 2000 },
    );
  });
});
