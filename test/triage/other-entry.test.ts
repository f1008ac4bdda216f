/** At a remedy for one entry of place and time, words on another. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const atSummerTime = async (name: string) => {
  const first = await answer(deps, 'triage every goto is off by 15 degrees in the same direction', NOW, member(name));
  expect(stepOf(first)).toMatchObject({ kind: 'try', id: 'summer-time-wrong' });
  return (words: string) => answer(deps, `triage walk:${idOf(first)} text:"${words}"`, NOW, member(name));
};

describe('at the remedy for summer time', () => {
  it.each([
    ['Saewara', 'windows. but the clock is NOT wrong, it is correct!'],
    ['Saerun', 'the computer clock is fine, checked it'],
    ['Saegyth', 'what is sidereal? the clock on the hand controller is correct, 3 minutes past 9'],
  ])('a clock that is right takes nothing from it: %s, %s', async (name, words) => {
    const say = await atSummerTime(name);
    await say('ok');
    expect(stepOf(await say(words))).toMatchObject({ kind: 'try', id: 'summer-time-wrong' });
  });

  it('a term asked for beside other words is explained', async () => {
    const say = await atSummerTime('Saethryth');
    const next = await say('I am lost. what is sidereal? the clock is correct, it shows ten past nine');
    expect(next.notes.join(' ')).toContain('Sidereal is the pace of the stars');
  });

  // Summer time in the European Union: Directive 2000/84/EC, from the last Sunday of March to the last of October.
  it('how it should stand is told', async () => {
    const say = await atSummerTime('Saehild');
    const next = await say('it asks daylight saving yes or no, I put yes because I want to save daylight? is that ok');
    expect(next.notes.join(' ')).toContain('last Sunday of March to the last of October');
    expect(stepOf(next)).toMatchObject({ kind: 'try', id: 'summer-time-wrong' });
  });

  it('the setting found right speaks against it', async () => {
    const say = await atSummerTime('Saeflaed');
    const next = await say('summer time is already right, I checked that first');
    expect(stepOf(next)).not.toMatchObject({ kind: 'try', id: 'summer-time-wrong' });
  });
});
