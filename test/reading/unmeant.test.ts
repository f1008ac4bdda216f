/** Which stretches of a line its writer does not mean, and that to tell so takes no longer for want of full stops. */
import { describe, expect, it } from 'vitest';
import { unmeantIn } from '../../bot/reading/words/unmeant.js';

const told = (text: string): readonly string[] => unmeantIn(text).map(({ start, end }) => text.slice(start, end));

// Sayings of absurdity: common English, from memory.
const ABSURD = ['the earth is flat', 'pigs might fly', 'it is made of cheese'];

describe('what is said in jest', () => {
  it.each(ABSURD)('makes its whole sentence one, and no other: "…, %s"', (absurd) => {
    const jest = `the cable is fine and ${absurd}, says he`;
    expect(told(jest)).toEqual([jest]);
    expect(told(`It drops. ${jest}! Now it works`)).toEqual([` ${jest}`]);
    expect(told(`${jest}. It drops? ${jest}`)).toEqual([jest, ` ${jest}`]);
  });

  it('begins where "yeah right" does', () => {
    expect(told('It drops. Yeah right, and the fuse is blown. It is new')).toEqual([
      '. Yeah right, and the fuse is blown',
    ]);
  });

  it('is looked for as fast in a paste of 8,000 characters that has no full stop', () => {
    const paste = 'the battery is flat and it lost the link, '.repeat(190);
    const before = process.cpuUsage();
    expect(told(paste)).toEqual([]);
    const { user, system } = process.cpuUsage(before);
    // A millisecond in one pass; four hundred where it is looked for from each letter.
    expect((user + system) / 1000).toBeLessThan(100);
  });
});
