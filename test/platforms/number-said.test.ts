/** Numbers of what was offered, with words round them. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { numberLed, numberSaid, runOfPick } from '../../bot/platforms/shared/number-said.js';

const PICKS: readonly (readonly [string, readonly number[], boolean])[] = [
  ['2 maybe', [2], true],
  ['the second', [2], false],
  ['number 3 i think', [3], true],
  ['2 or 3', [2, 3], false],
  ['a bit of 1 and 4', [1, 4], false],
  ['3 please', [3], false],
  ['its 1', [1], false],
  ['option two', [2], false],
  ['no. 4', [4], false],
  ['probably the first one', [1], true],
  ['4?', [4], true],
  ['I’d say 2', [2], true],
  ['ok 5 then', [5], false],
  ['#2', [2], false],
  ['2)', [2], false],
  ['1 & 3', [1, 3], false],
  ['somewhere between 2 and 3', [2, 3], false],
  ['um, 6, not sure', [6], true],
  ['Answer 3.', [3], false],
  ['3rd one', [3], false],
  ['2ish', [2], true],
  ['think 3', [3], true],
  ['maybe 1, maybe 2', [1, 2], true],
  ['second', [2], false],
  ['4 is closest', [4], true],
  ['more like 3', [3], true],
  ['3 mate', [3], false],
  ['i go for 2', [2], false],
  ['6 again', [6], false],
];

const NONE = [
  '2 hours early',
  'com5',
  'two',
  'one of them',
  'after 5 minutes',
  '12.5',
  '21:30',
  '192.168.4.1',
  'no',
  'the second light is on',
  'not 2',
  '9600',
  '2 lights',
  'maybe',
  'first time',
  'it says 2',
];

describe('a number with words round it', () => {
  it.each(PICKS)('“%s” picks %j', (text, numbers, isHedged) => expect(numberSaid(text)).toEqual({ numbers, isHedged }));
  it.each(NONE)('“%s” picks nothing', (text) => expect(numberSaid(text)).toBeNull());
  it('leads words that tell more of it', () => {
    expect(numberLed('6 again, only after the flip')).toEqual({ number: 6, rest: 'again, only after the flip' });
  });
  it('takes the doubt along to a walk, and to nothing else', () => {
    const said = { numbers: [2], isHedged: true };
    expect(runOfPick('triage walk:abc answer:lead.ours', '2 "maybe"', said)).toBe(
      'triage walk:abc answer:lead.ours text:"2 maybe"',
    );
    expect(runOfPick('up M 31', '2 maybe', said)).toBe('up M 31');
  });
});

describe('a number behind a whole sentence', () => {
  it('is a pick with its words ahead', () => {
    expect(numberLed('both axes go fast, it stays! 1')).toEqual({ number: 1, rest: 'both axes go fast, it stays!' });
    expect(numberLed('an hour in the dark without a drop. 12')).toMatchObject({ number: 12 });
  });

  it.each(['it says 4', 'set it to 9.', 'no 4', 'it is on com4. com 5'])('“%s” holds none', (text) => {
    expect(numberLed(text)).toBeNull();
  });
});
