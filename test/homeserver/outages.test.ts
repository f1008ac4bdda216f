/** Every question is answered exactly once, whatever is killed or cut between member, homeserver and bot. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { botProcess, type BotProcess } from './bot-process.js';
import { createDendrite, dendriteFolder, type Account, type Dendrite } from './dendrite.js';
import { flakyProxy, type FlakyProxy } from './flaky-proxy.js';
import { answersTo, memberOf, type Member } from './member.js';

const folder = dendriteFolder();
if (folder === null)
  console.log(
    'NO HOMESERVER: no Dendrite binaries found, nothing was tested here. Run scripts/install-dendrite.sh, or set DENDRITE_BIN.',
  );

const isSend = (method: string, path_: string): boolean => method === 'PUT' && path_.includes('/send/m.room.message/');

describe.skipIf(folder === null)('outages on a real homeserver', () => {
  let server: Dendrite;
  let proxy: FlakyProxy;
  let bot: BotProcess;
  let account: Account;
  let odalys: Member;
  let mbali: Member;
  let room: string;
  let effects: string;
  let serial = 0;
  const scratch = mkdtempSync(path.join(tmpdir(), 'pierhand-effects-'));

  beforeAll(async () => {
    server = await createDendrite(folder ?? '', ['odalys', 'mbali']);
    await server.start();
    [odalys, mbali] = [
      memberOf(server.url, await server.register('odalys')),
      memberOf(server.url, await server.register('mbali')),
    ];
  });
  afterAll(async () => {
    await server?.remove();
    rmSync(scratch, { recursive: true, force: true });
  });

  // Each test has a bot account, a store and a room of its own.
  beforeEach(async () => {
    account = await server.register(`pier${++serial}`);
    effects = path.join(scratch, `effects-${serial}`);
    proxy = await flakyProxy(server.url);
    bot = botProcess({
      MATRIX_HOMESERVER_URL: proxy.url,
      MATRIX_ACCESS_TOKEN: account.accessToken,
      EFFECT_FILE: effects,
      LIMIT_MEMBERS: 'no',
    });
    room = await odalys.createRoom({ preset: 'private_chat', invite: [mbali.userId, account.userId] });
    await mbali.join(room);
    await bot.start();
    await odalys.wait('the greeting', async () =>
      (await odalys.events(room)).some(({ sender, type }) => type === 'm.room.message' && sender === account.userId),
    );
  });
  afterEach(async () => {
    await bot.remove();
    await proxy.close();
  });

  const counts = async (asked: readonly string[]): Promise<readonly number[]> => {
    const events = await odalys.events(room);
    return asked.map((eventId) => answersTo(events, account.userId, eventId).length);
  };
  /** Waits until all are answered, then for what a wrong second answer would take to come. */
  const eachOnce = async (asked: readonly string[]): Promise<void> => {
    await odalys.wait('all answers', async () => (await counts(asked)).every((count) => count > 0), 60_000);
    const marker = await odalys.say(room, '!pier echo and one more');
    await odalys.wait('one more', async () => (await counts([marker]))[0] === 1);
    await sleep(2500);
    expect(await counts(asked)).toEqual(asked.map(() => 1));
  };
  const effectCount = (name: string): number =>
    readFileSync(effects, 'utf8')
      .split('\n')
      .filter((line) => line === name).length;

  test('the homeserver is killed and started again in mid-conversation', async () => {
    const asked = [await odalys.say(room, '!pier effect before')];
    await odalys.wait('the first answer', async () => (await counts(asked))[0] === 1);
    const slow = await odalys.say(room, '!pier ponder');
    await sleep(500);
    await server.kill();
    // The bot is thinking about its answer while the server is away.
    await sleep(3000);
    await server.start();
    asked.push(slow);
    for (let i = 0; i < 3; i++) asked.push(await mbali.say(room, `!pier effect after ${i}`));
    await eachOnce(asked);
    for (const name of ['before', 'after 0', 'after 1', 'after 2']) expect(effectCount(name)).toBe(1);
  });

  test('the homeserver takes the answer in, dies before it says so, and forgets the transaction', async () => {
    proxy.decide = (method, url) => (isSend(method, url) ? 'lose' : 'pass');
    const lost = proxy.met('lose');
    const asked = await odalys.say(room, '!pier effect lost');
    await lost;
    proxy.decide = () => 'cut';
    await server.kill();
    await server.start();
    proxy.decide = () => 'pass';
    await eachOnce([asked]);
    expect(effectCount('lost')).toBe(1);
  });

  test('the bot is killed after reading and before its answer reaches the homeserver', async () => {
    proxy.decide = (method, url) => (isSend(method, url) ? 'hold' : 'pass');
    const held = proxy.met('hold');
    const asked = await odalys.say(room, '!pier effect once');
    await held;
    await bot.kill();
    expect(await counts([asked])).toEqual([0]);
    proxy.decide = () => 'pass';
    const meanwhile = await mbali.say(room, '!pier effect meanwhile');
    await bot.start();
    await eachOnce([asked, meanwhile]);
    expect(effectCount('once')).toBe(1);
    expect(effectCount('meanwhile')).toBe(1);
  });

  test('the bot is killed when the homeserver has its answer and the bot does not know', async () => {
    proxy.decide = (method, url) => (isSend(method, url) ? 'lose' : 'pass');
    const lost = proxy.met('lose');
    const asked = await odalys.say(room, '!pier effect unsure');
    await lost;
    await bot.kill();
    expect(await counts([asked])).toEqual([1]);
    // And the homeserver forgets its transactions on top of it.
    await server.kill();
    await server.start();
    proxy.decide = () => 'pass';
    await bot.start();
    await eachOnce([asked]);
    expect(effectCount('unsure')).toBe(1);
  });

  test("the bot is killed between an answer's words and its picture", async () => {
    proxy.decide = (_method, url) => (url.includes('/_matrix/media/') ? 'hold' : 'pass');
    const held = proxy.met('hold');
    const asked = await odalys.say(room, '!pier up M33');
    await held;
    await bot.kill();
    proxy.decide = () => 'pass';
    await bot.start();
    const parts = async (): Promise<readonly string[]> =>
      answersTo(await odalys.events(room), account.userId, asked).map(({ content }) => content['msgtype'] as string);
    await odalys.wait('words and picture', async () => (await parts()).length >= 2);
    await sleep(2000);
    expect(await parts()).toEqual(['m.notice', 'm.image']);
  });

  test('the bot is killed between making a direct room and writing it down', async () => {
    proxy.decide = (method, url) => (method === 'PUT' && url.includes('/account_data/m.direct') ? 'hold' : 'pass');
    const held = proxy.met('hold');
    const asked = await mbali.say(room, '!pier mine');
    await held;
    await bot.kill();
    proxy.decide = () => 'pass';
    await bot.start();
    await eachOnce([asked]);
    const invitations = await mbali.invitations();
    expect(invitations).toHaveLength(1);
    const [direct = ''] = invitations;
    await mbali.join(direct);
    const said = async (words: string): Promise<number> =>
      (await mbali.events(direct)).filter(({ content }) => String(content['body']).includes(words)).length;
    // What was for her alone was not kept over the crash; that it was asked was.
    await mbali.wait('a word about the private answer', async () => (await said('please ask again')) > 0);
    expect(await said('please ask again')).toBe(1);
    expect(await said('51.42')).toBe(0);
    await mbali.leave(direct);
  });

  test('the network is cut for a while', async () => {
    proxy.decide = () => 'cut';
    const asked = [await odalys.say(room, '!pier effect cut')];
    await sleep(4000);
    asked.push(await mbali.say(room, '!pier effect still cut'));
    proxy.decide = () => 'pass';
    await eachOnce(asked);
    expect(effectCount('cut') + effectCount('still cut')).toBe(2);
  });

  test('the homeserver says that there were too many requests', async () => {
    let refusals = 0;
    proxy.decide = (method, url) => (isSend(method, url) && refusals++ < 3 ? 300 : 'pass');
    const asked = await odalys.say(room, '!pier effect limited');
    await eachOnce([asked]);
    expect(refusals).toBeGreaterThan(3);
    expect(effectCount('limited')).toBe(1);
  });

  test('questions asked while the bot was away, in a busy room, are answered if not older than ten minutes', async () => {
    await bot.stop();
    const sendAt = async (minutesAgo: number, body: string): Promise<string> =>
      (
        (await odalys.request(
          'PUT',
          `/rooms/${encodeURIComponent(room)}/send/m.room.message/old-${minutesAgo}-${Date.now()}?ts=${Date.now() - minutesAgo * 60_000}`,
          { msgtype: 'm.text', body },
        )) as { event_id: string }
      ).event_id;
    const old = await sendAt(11, '!pier effect eleven minutes');
    const asked = [await sendAt(9, '!pier effect nine minutes')];
    // More than one sync brings: the rest has to be fetched from the room's past.
    for (let i = 0; i < 70; i++) await mbali.say(room, `chatter ${i}`);
    asked.push(await mbali.say(room, '!pier effect late'));
    for (let i = 0; i < 70; i++) await mbali.say(room, `more chatter ${i}`);
    await bot.start();
    await eachOnce(asked);
    expect(await counts([old])).toEqual([0]);
    expect(effectCount('nine minutes') + effectCount('late')).toBe(2);
    expect(effectCount('eleven minutes')).toBe(0);
  });

  test('a bot that starts for the first time answers nothing of what was said before', async () => {
    await bot.kill();
    rmSync(bot.dataFolder, { recursive: true, force: true });
    const before = await odalys.say(room, '!pier effect before the first start');
    await bot.start();
    const asked = await odalys.say(room, '!pier effect after the first start');
    await eachOnce([asked]);
    expect(await counts([before])).toEqual([0]);
  });

  test('many questions at once, from a homeserver that limits the bot', async () => {
    const asked = await Promise.all(
      Array.from({ length: 30 }, (_, i) => (i % 2 === 0 ? odalys : mbali).say(room, `!pier effect crowd ${i}`)),
    );
    await eachOnce(asked);
    for (let i = 0; i < 30; i++) expect(effectCount(`crowd ${i}`)).toBe(1);
  });
});
