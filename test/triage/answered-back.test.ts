/** A walk in course answered by a number with words, by a yes or a no, by a cure told by the way. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { consoleSession } from '../../bot/platforms/console/session.js';
import type { Reply } from '../../bot/reply/reply.js';
import { deps, idOf, NOW, stepOf } from './console-walk.js';

let members = 0;

/** A member's session at the console, at the question with this id. */
const at = async (
  opening: string,
  question: string,
): Promise<{ say: (line: string) => Promise<Reply>; shown: Reply }> => {
  const session = consoleSession(
    deps,
    () => NOW,
    (error) => {
      throw error instanceof Error ? error : new Error(String(error));
    },
  );
  const say = async (line: string): Promise<Reply> => {
    const outcome = await session.answer(line);
    if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
    return outcome;
  };
  members += 1;
  await say(`/as Perrin${members}`);
  let shown = await say(`triage ${opening}`);
  for (let turn = 0; turn < 30 && stepOf(shown).id !== question; turn++) {
    const { id, kind } = stepOf(shown);
    shown = await say(`triage walk:${idOf(shown)} answer:${id}.${kind === 'try' ? 'same' : 'unsure'}`);
  }
  expect(stepOf(shown).id).toBe(question);
  return { say, shown };
};

const numberOf = (reply: Reply, answer: string): number =>
  (reply.choices ?? []).filter(({ form }) => form === undefined).findIndex(({ run }) => run.endsWith(`.${answer}`)) + 1;
const noteOf = (reply: Reply): string => reply.notes.join(' ');
const answersShown = (reply: Reply): number =>
  (reply.choices ?? []).filter(({ run }) => run.includes('answer:') && !run.endsWith('.unsure')).length;

const CABLE = 'lead from the laptop to the hand controller over an adapter, windows, the mount never replies';
const SILENT = 'my mount will not talk over usb';

describe('a number with words', () => {
  it.each([
    [SILENT, 'message', 'not-found', '. that com thing is not found it tells me', 'port or device not found'],
    [CABLE, 'adapter-light', 'sends', ', just one of them winks', 'it sends, nothing comes back'],
    [CABLE, 'changed-last', 'cable', ' - got a new lead for my birthday', 'another cable, adapter or plug'],
  ])('is the answer: %s, %s', async (opening, question, answer, words, label) => {
    const { say, shown } = await at(opening, question);
    const reply = await say(`${numberOf(shown, answer)}${words}`);
    expect(noteOf(reply).toLowerCase()).toContain(label);
    expect(stepOf(reply).id).not.toBe(question);
  });

  it('is asked about where the words say another', async () => {
    const { say, shown } = await at(SILENT, 'message');
    const reply = await say(`${numberOf(shown, 'denied')}. it waits and then there is a time out`);
    expect(noteOf(reply)).toContain('Which is it?');
    expect(stepOf(reply).id).toBe('message');
    expect(stepOf(await say(String(numberOf(shown, 'no-reply')))).id).not.toBe('message');
  });
});

describe('what was asked back', () => {
  const ASKED = 'some flicker i think';
  const asked = async () => {
    const own = await at(CABLE, 'adapter-light');
    const reply = await own.say(ASKED);
    expect(noteOf(reply)).toContain('Did you mean “It sends and receives”?');
    return own;
  };

  it.each(['aye', 'yup thats the one', 'jawohl', 'that is correct mate', 'claro', 'precisely', 'it does'])(
    'is taken by “%s”',
    async (yes) => {
      const reply = await (await asked()).say(yes);
      expect(stepOf(reply).id).not.toBe('adapter-light');
    },
  );

  it('is refused, and the right one taken with it', async () => {
    const reply = await (await asked()).say('nope, it stays dark all along');
    expect(noteOf(reply)).toContain('it stays dark');
    expect(stepOf(reply).id).not.toBe('adapter-light');
  });

  it('is refused alone', async () => {
    const reply = await (await asked()).say('nein');
    expect(stepOf(reply).id).toBe('adapter-light');
    expect(noteOf(reply)).toContain('Not that one');
  });
});

describe('words that are no answer', () => {
  it('leave the list as it is, then bring another question; put twice, the question comes no more', async () => {
    const { say, shown } = await at(SILENT, 'message');
    expect(answersShown(shown)).toBeGreaterThan(5);
    const first = await say('the neighbours have a new fence');
    expect(noteOf(first)).toContain('“the neighbours have a new fence”');
    expect(answersShown(first)).toBe(answersShown(shown));
    let reply = await say('grandmother sends her love');
    expect(stepOf(reply).id).not.toBe('message');
    const asked: string[] = [];
    for (let turn = 0; turn < 30 && stepOf(reply).kind !== 'handOn'; turn++) {
      const { id, kind } = stepOf(reply);
      asked.push(id);
      reply = await say(`triage walk:${idOf(reply)} answer:${id}.${kind === 'try' ? 'same' : 'unsure'}`);
    }
    expect(asked.length).toBeGreaterThan(2);
    expect(asked).not.toContain('message');
  });
});

describe('one word on all of a list', () => {
  it.each(['nothing of all that', 'no to every one of those', 'looked at them all, none', 'not a single one of these'])(
    'says that none is so: “%s”',
    async (words) => {
      const { say, shown } = await at('goes to the wrong place, mac', 'entries-screen');
      const reply = await say(words);
      expect(shown.summary).toContain('which line');
      expect(noteOf(reply)).toContain('none, all match');
    },
  );
});

describe('a cure told by the way', () => {
  it.each(['well i never, it has come alive', 'never mind all that, got the thing going', 'hurrah, success at last'])(
    'is asked about, and one press ends the walk: “%s”',
    async (words) => {
      const { say } = await at(CABLE, 'changed-last');
      const reply = await say(words);
      expect(reply.summary).toBe('Is it fixed?');
      const end = await say('1');
      expect(end.summary).toContain('has ended');
    },
  );

  it('is answered in words too', async () => {
    const { say } = await at(CABLE, 'changed-last');
    await say('hurrah, success');
    const on = await say('no');
    expect(stepOf(on).id).toBe('changed-last');
    await say('hurrah, success');
    expect((await say('aye it is')).summary).toContain('has ended');
  });

  it.each([
    'the light on the box works now',
    'his mount works fine',
    'it works but then it stops',
    'is it working yet?',
  ])('is not: “%s”', async (words) => {
    const { say } = await at(CABLE, 'changed-last');
    expect((await say(words)).summary).not.toBe('Is it fixed?');
  });
});

describe('a word of the trade', () => {
  it.each([
    ['i dont know what a ping is', 'ping', 'a ping is'],
    ['whats an address then', 'ping', 'four numbers'],
    ['never heard of a vpn', 'ping', 'a tunnel'],
  ])('is explained, and the question stands: “%s”', async (words, question, explanation) => {
    const { say } = await at('the bridge on the mount makes its own network, windows, it times out', question);
    const reply = await say(words);
    expect(noteOf(reply).toLowerCase()).toContain(explanation);
    expect(stepOf(reply).id).toBe(question);
  });

  it('is no question where the words tell what was seen', async () => {
    const { say } = await at(SILENT, 'message');
    expect(noteOf(await say('what it says is driver missing'))).not.toContain('piece of software');
  });
});
