/** Pasted text: what it answers, whatever its line ends, and that no text from a stranger can stall the bot. */
import { describe, expect, it } from 'vitest';
import { readText, TEXT_LIMIT } from '../../bot/reading/index.js';
import { check, evidence, fault, smallModel } from './small-model.js';

const MODEL = smallModel({
  faults: [fault({ id: 'a' })],
  checks: [check({ id: 'listed' })],
  evidence: [
    evidence({
      id: 'attached',
      pattern: 'converter now attached to ttyUSB\\d+',
      answers: { listed: 'yes' },
      system: 'linux',
    }),
    evidence({ id: 'com', pattern: '\\bCOM\\d+\\b', system: 'windows' }),
    evidence({ id: 'nested', pattern: '(a+)+b', suggests: { a: 2 } }),
  ],
});
const ids = (text: string): readonly string[] => readText(MODEL.reading, text).met;
const systemOf = (text: string): string | undefined =>
  readText(MODEL.reading, text).facts.find(({ what }) => what === 'system')?.answer;

describe('pasted text', () => {
  it('is read whatever its case and however its lines were folded', () => {
    expect(ids('pl2303 CONVERTER now\n   attached to\r\nttyUSB3')).toEqual(['attached']);
    expect(systemOf('converter now attached to ttyUSB0')).toBe('linux');
  });

  it('tells no system when it speaks of two', () => {
    expect(systemOf('COM3 here, converter now attached to ttyUSB0 there')).toBeUndefined();
  });

  it('is read from its newest end when it is too long', () => {
    const long = `${'x '.repeat(TEXT_LIMIT)}converter now attached to ttyUSB0`;
    expect(ids(long)).toEqual(['attached']);
    expect(ids(`converter now attached to ttyUSB0 ${'x '.repeat(TEXT_LIMIT)}`)).toEqual([]);
  });

  it('cannot stall the bot with text made to make a pattern backtrack', () => {
    // A backtracking engine takes 2^8000 steps here; a test that ends has shown enough.
    expect(ids('a'.repeat(TEXT_LIMIT))).toEqual([]);
    expect(ids(`${'a'.repeat(TEXT_LIMIT - 1)}b`)).toEqual(['nested']);
  });
});
