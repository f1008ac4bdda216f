import { describe, expect, it } from 'vitest';
import { createTurns } from '../../bot/platforms/shared/take-turns.js';

describe('turns of many members', () => {
  it('serves the members one after the other, and each in the order of asking', async () => {
    const { take } = createTurns();
    const served: string[] = [];
    const asked = ['ada 1', 'ada 2', 'ada 3', 'bo 1', 'cy 1'].map(async (what) => {
      await take(what.split(' ')[0] ?? '');
      served.push(what);
    });
    await Promise.all(asked);
    expect(served).toEqual(['ada 1', 'bo 1', 'cy 1', 'ada 2', 'ada 3']);
  });

  it('serves what goes on with something begun before what is asked anew, there too the members one after the other', async () => {
    const { take, waitMs } = createTurns();
    const served: string[] = [];
    const asked = ['ada new', 'bo new', 'bo step', 'bo step 2', 'cy step'].map(async (what) => {
      await take(what.split(' ')[0] ?? '', what.includes('step'));
      served.push(what);
    });
    await Promise.all(asked);
    expect(served).toEqual(['bo step', 'cy step', 'bo step 2', 'ada new', 'bo new']);
    expect(waitMs()).toBe(0);
  });

  it('tells how long what comes now would wait, by how long the turns took lately', async () => {
    // Each turn lasts as long as the clock is moved on in it.
    let nowMs = 0;
    const { take, waitMs } = createTurns(() => nowMs);
    expect(waitMs()).toBe(0);
    const works = Array.from({ length: 60 }, (_, i) =>
      take(`member ${i}`).then(() => {
        nowMs += 40;
      }),
    );
    const last = Array.from({ length: 50 }, (_, i) => take(`later ${i}`));
    await Promise.all(works);
    const told = waitMs();
    // 50 still wait, 40 ms each; the mean has all but forgotten its first guess.
    expect(told).toBeGreaterThan(0.9 * 50 * 40);
    expect(told).toBeLessThan(1.1 * 51 * 40);
    await Promise.all(last);
    expect(waitMs()).toBe(0);
  });

  it('lets only so many wait, however quick they are', async () => {
    const { take, waitMs } = createTurns(() => 0);
    const waiting = Array.from({ length: 399 }, (_, i) => take(`member ${i}`));
    expect(waitMs()).toBeLessThan(10_000);
    waiting.push(take('one more'));
    expect(waitMs()).toBe(Infinity);
    await Promise.all(waiting);
    expect(waitMs()).toBe(0);
  });

  it('tells a crowd that lasts from a handful who ask at once, and forgets it after a while', async () => {
    let nowMs = 0;
    const { take, isCrowded } = createTurns(() => nowMs);
    const ask = (members: number) =>
      Promise.all(
        Array.from({ length: members }, (_, i) =>
          take(`member ${i}`).then(() => {
            nowMs += 30;
          }),
        ),
      );
    await ask(10);
    expect(isCrowded()).toBe(false);
    await ask(30);
    expect(isCrowded()).toBe(true);
    nowMs += 11_000;
    expect(isCrowded()).toBe(false);
  });

  it('tells more than can be answered from a club that asks all at once, and never cuts a handful', async () => {
    let nowMs = 0;
    const { take, isOverrun } = createTurns(() => nowMs);
    /** After each turn: how many were left, and whether it was told so. */
    const askedAtOnce = async (members: number): Promise<readonly (readonly [left: number, boolean])[]> => {
      const told: (readonly [number, boolean])[] = [];
      await Promise.all(
        Array.from({ length: members }, (_, i) =>
          take(`member ${i}`).then(() => {
            nowMs += 30;
            told.push([members - 1 - i, isOverrun()]);
          }),
        ),
      );
      return told;
    };
    expect((await askedAtOnce(30)).some(([, isTold]) => isTold)).toBe(false);
    nowMs += 11_000;
    const told = await askedAtOnce(60);
    expect(told.filter(([, isTold]) => isTold).length).toBeGreaterThan(10);
    expect(told.every(([left, isTold]) => !isTold || left >= 10)).toBe(true);
    // The same crowd a moment later is one that lasts.
    expect((await askedAtOnce(20))[0]).toEqual([19, true]);
    nowMs += 11_000;
    expect((await askedAtOnce(20)).some(([, isTold]) => isTold)).toBe(false);
  });

  it('does not take a machine that stood still for once for slow work', async () => {
    let nowMs = 0;
    const { take, waitMs } = createTurns(() => nowMs);
    const first = take('ada').then(() => {
      nowMs += 60_000;
    });
    const rest = Array.from({ length: 21 }, (_, i) => take(`member ${i}`));
    await first;
    await rest[0];
    expect(waitMs()).toBeLessThan(1500);
    await Promise.all(rest);
  });
});
