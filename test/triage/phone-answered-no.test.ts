/** A phone that was told not to stay on the mount's network. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const began = async (name: string, opening: string) => {
  const first = await answer(deps, `triage ${opening}`, NOW, member(name));
  return {
    first,
    say: (words: string) => answer(deps, `triage walk:${idOf(first)} text:"${words}"`, NOW, member(name)),
  };
};

describe('a phone that another does better than', () => {
  it('is never asked for ports of a computer, and its mobile data comes first', async () => {
    const { first, say } = await began(
      'Saelufu',
      'phone on the mounts own wifi, app wont connect, tablet connects fine',
    );
    expect(stepOf(first).id).not.toMatch(/^(?:client|system)$/u);
    expect(stepOf(await say('it asked something about no internet stay connected?? i clicked no'))).toMatchObject({
      kind: 'try',
      id: 'phone-sends-by-mobile-data',
    });
  });

  it('is not taken to connect by "stay connected"', async () => {
    const { first, say } = await began(
      'Saewynn',
      'phone on the mounts own wifi, app wont connect, tablet connects fine',
    );
    expect(stepOf(first).id).toBe('message');
    const next = await say('it asked stay connected without internet and i said no');
    expect(next.notes.join(' ')).not.toMatch(/nothing, it connects/iu);
  });
});

describe('a remedy doubted for a reason', () => {
  it('is left, and the reason kept', async () => {
    const { first, say } = await began(
      'Burgrun',
      'phone on the mounts own wifi, app wont connect, tablet connects fine',
    );
    expect(first).toBeDefined();
    const tried = await say('it asked something about no internet stay connected?? i clicked no');
    const next = await say('how can it be the mobile data when the tablet works');
    expect(stepOf(next).id).not.toBe(stepOf(tried).id);
  });
});
