/** The text grammar for commands that take pasted text. */
import { describe, expect, it } from 'vitest';
import { parseLine } from '../../bot/commands/core/grammar.js';
import { triage } from '../../bot/commands/triage/triage.js';

const read = (line: string): Readonly<Record<string, string>> | string => {
  const parsed = parseLine(line, [triage]);
  return 'problem' in parsed ? parsed.problem : Object.fromEntries(parsed.raw);
};

describe('a line with pasted text', () => {
  it("keeps colons, lone quotes and other commands' option names as they stand", () => {
    expect(read('triage Error: could not open port "COM3')).toEqual({ text: 'Error: could not open port "COM3' });
    expect(read('triage usb 1-1: device descriptor read/64, error -71')).toEqual({
      text: 'usb 1-1: device descriptor read/64, error -71',
    });
    expect(read('triage waiting for: reply\ncdc_acm 1-2:1.0: ttyACM0: USB ACM device site:none')).toEqual({
      text: 'waiting for: reply\ncdc_acm 1-2:1.0: ttyACM0: USB ACM device site:none',
    });
  });
  it('still reads its own options', () => {
    expect(read('triage for:@tamsin:fenwold.example nothing lights up')).toEqual({
      for: '@tamsin:fenwold.example',
      text: 'nothing lights up',
    });
    expect(read('triage walk:abc234 answer:path.bluetooth')).toEqual({ walk: 'abc234', answer: 'path.bluetooth' });
    expect(read('triage answer:"not sure"')).toEqual({ answer: 'not sure' });
    expect(read('triage text:"no light at all"')).toEqual({ text: 'no light at all' });
    expect(read('triage it drops again walk:abc234')).toEqual({ walk: 'abc234', text: 'it drops again' });
    expect(read('triage walk:a walk:b')).toBe('option-twice');
  });
  it('takes an option in the midst of the text for text', () => {
    expect(read('triage 12:04 walk:abc lost the mount')).toEqual({ text: '12:04 walk:abc lost the mount' });
    expect(read('triage for:me 12:04 answer:none came back')).toEqual({
      for: 'me',
      text: '12:04 answer:none came back',
    });
  });
});
