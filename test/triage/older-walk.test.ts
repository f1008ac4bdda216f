/** A walk left before another one ended takes no side line, and comes back where it is asked for. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask } from '../commands/real-deps.js';
import { deps, idOf, member, NOW } from './console-walk.js';

const OLDER = 'triage usb adapter at the handset, windows, will not connect';
const NEWER = 'triage do:new windows serial adapter at the handset device manager shows code 28';

const begun = async (
  name: string,
): Promise<{ readonly older: string; readonly say: (line: string) => ReturnType<typeof ask> }> => {
  const who = member(name);
  const older = idOf(await answer(deps, OLDER, NOW, who));
  let at = NOW;
  const say = (line: string): ReturnType<typeof ask> => ask(deps, line, (at += 1000), who);
  await say(NEWER);
  await say('works!');
  return { older, say };
};
const idIn = (outcome: Awaited<ReturnType<typeof ask>>): unknown =>
  isProblem(outcome) ? null : outcome.data['walkId'];

describe('after the end of a newer walk', () => {
  it.each(['did it get counted', 'is that it then?', 'my friend says hi', 'who sees that', 'nice', 'ok what now'])(
    '“%s” is no answer to an older one',
    async (line) => {
      const { older, say } = await begun(`Hyginus ${line}`);
      await say('triage no');
      const said = await say(line);
      expect(idIn(said)).not.toBe(older);
      expect(isProblem(said) ? said.message : said.notes.join(' ')).not.toContain('walk');
    },
  );

  it('it comes back when it is asked for, and then takes words again', async () => {
    const { older, say } = await begun('Hyginus');
    await say('triage no');
    expect(idIn(await say('back'))).toBe(older);
    await say('no reply');
    expect(idIn(await say('it worked last week'))).toBe(older);
  });

  it('a trouble told is told of the one that waits', async () => {
    const { older, say } = await begun('Hygelac');
    await say('triage no');
    expect(idIn(await say('the program says access denied on com5'))).toBe(older);
  });
});
