import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { tidy } from '../../bot/ground/tidy.js';
import { parseLine } from '../../bot/commands/core/grammar.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { commandLine } from '../../bot/commands/asking/question-parts.js';
import { parseTime } from '../../bot/times/index.js';

const NOW_UTC_MS = Date.UTC(2026, 10, 25, 18);
const refusal = (text: string): string => {
  const found = parseTime(text, 'Europe/London', NOW_UTC_MS);
  return !isProblem(found) ? `read as ${new Date(found.utcMs).toISOString()}` : found.message;
};

describe('what random inputs found', () => {
  it('an hour that no clock has is not called morning or evening', () => {
    for (const text of ["25 o'clock", '25', '99 oclock']) expect(refusal(text)).toContain('hours go from 0 to 23');
    expect(refusal("9 o'clock")).toBe("“9 o'clock” could be morning or evening. Write 09:00, 9am or 9pm.");
    expect(refusal('0')).toContain('00:00, 12am or 12pm');
    expect(refusal('23')).toBe('Write “23” with its minutes: 23:00.');
  });

  it('an echo holds no half characters, no Arabic letter mark, and calls nobody', () => {
    expect(tidy('a\udfffb\u061cc\u00add')).toBe('abcd');
    expect(tidy('fork@here @@everyone @\u200broom')).toBe('forkhere everyone room');
    expect(tidy('👩‍🚀'.replace('\u200d', ''))).toBe('👩🚀');
  });

  it("a choice's line gives back the values it was made from, quotes and colons in them too", () => {
    for (const site of ['-"Cork, Ireland"', 'Quarry "the pit" Field', 'at:noon', 'back\\slash', '"', 'Ely']) {
      const parsed = parseLine(commandLine('altitude', 'Capella', { site, at: '22:30' }), allCommands);
      expect('problem' in parsed ? parsed.message : Object.fromEntries(parsed.raw)).toEqual({
        target: 'Capella',
        site,
        at: '22:30',
      });
    }
  });
});
