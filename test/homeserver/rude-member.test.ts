/** One member floods a real homeserver in every way there is; another in the same room, and one elsewhere, ask one plain thing. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { botProcess, type BotProcess } from './bot-process.js';
import { createDendrite, dendriteFolder, type Account, type Dendrite } from './dendrite.js';
import { answersTo, memberOf, type Member } from './member.js';

const folder = dendriteFolder();
const FLOOD = 150;
const HEALTH_PORT = 19_473;
/** The aim is a second; one machine carries homeserver, flood and bot here, and may have other work besides. */
const WITHIN_MS = 5000;

const times = async (count: number, work: (i: number) => Promise<unknown>): Promise<void> => {
  for (let from = 0; from < count; from += 25)
    await Promise.allSettled(Array.from({ length: 25 }, (_, i) => work(from + i)));
};

type Kind = readonly [string, (rude: Member, roomId: string) => Promise<unknown>];
const KINDS: readonly Kind[] = [
  ['questions', (rude, roomId) => times(FLOOD, (i) => rude.say(roomId, `!pier up M${(i % 110) + 1}`))],
  [
    'pastes',
    (rude, roomId) => times(FLOOD, () => rude.say(roomId, `!pier triage ${'usb 1-1: error -71 '.repeat(200)}`)),
  ],
  [
    'giant messages',
    (rude, roomId) =>
      times(FLOOD, () =>
        rude.say(roomId, '!pier x'.repeat(3000), {
          format: 'org.matrix.custom.html',
          formatted_body: '<a href="https://matrix.to/#/'.repeat(1000),
        }),
      ),
  ],
  [
    'files',
    (rude, roomId) =>
      times(FLOOD, (i) =>
        rude.send(roomId, 'm.room.message', {
          msgtype: 'm.file',
          body: 'log.txt',
          url: `mxc://nowhere.invalid/file${i}`,
        }),
      ),
  ],
  ['reactions', (rude, roomId) => times(FLOOD, (i) => rude.react(roomId, `$nothing${i}`, '7\uFE0F\u20E3'))],
  [
    'edits',
    (rude, roomId) =>
      times(FLOOD, () =>
        rude.say(roomId, '* !pier up M13', {
          'm.relates_to': { rel_type: 'm.replace', event_id: '$before' },
          'm.new_content': { msgtype: 'm.text', body: '!pier up M13' },
        }),
      ),
  ],
  [
    'comings and goings',
    async (rude, roomId) => {
      for (let i = 0; i < 30; i++) {
        await rude.leave(roomId);
        await rude.join(roomId);
      }
    },
  ],
];

describe.skipIf(folder === null)('one member floods a real homeserver', () => {
  let server: Dendrite;
  let bot: BotProcess;
  let account: Account;
  let rude: Member;
  let odalys: Member;
  let tamsin: Member;
  let room: string;
  let elsewhere: string;

  const invited = async (roomId: string, by: Member): Promise<void> => {
    await by.invite(roomId, account.userId);
    await by.wait('the bot to come in', async () => (await by.membership(roomId, account.userId)) === 'join');
  };
  const answeredAfterMs = async (member: Member, roomId: string, line = '!pier dark'): Promise<number> => {
    const asked = await member.say(roomId, line);
    return member.wait(`an answer to ${member.userId}`, async () => {
      const all = await member.events(roomId);
      const question = all.find(({ event_id: id }) => id === asked);
      const [answer] = answersTo(all, account.userId, asked);
      // By the homeserver's clock, at both ends.
      return answer === undefined || question === undefined
        ? null
        : Math.max(1, answer.origin_server_ts - question.origin_server_ts);
    });
  };
  const health = async (): Promise<number> => (await fetch(`http://127.0.0.1:${HEALTH_PORT}/health`)).status;

  beforeAll(async () => {
    server = await createDendrite(folder ?? '', []);
    await server.start();
    account = await server.register('pier');
    const members: Member[] = [];
    for (const name of ['ingo', 'odalys', 'tamsin']) members.push(memberOf(server.url, await server.register(name)));
    [rude, odalys, tamsin] = members as [Member, Member, Member];
    bot = botProcess(
      {
        MATRIX_HOMESERVER_URL: server.url,
        MATRIX_ACCESS_TOKEN: account.accessToken,
        WITHOUT_LIBRARY: 'yes',
        PIERHAND_HTTP_PORT: String(HEALTH_PORT),
      },
      'bot/main',
    );
    await bot.start();
    room = await odalys.createRoom({ preset: 'public_chat' });
    elsewhere = await tamsin.createRoom({ preset: 'private_chat' });
    await rude.join(room);
    await invited(room, odalys);
    await invited(elsewhere, tamsin);
    await answeredAfterMs(odalys, room);
    await answeredAfterMs(tamsin, elsewhere);
    // The fault model is read before a flood, as a running bot has.
    await answeredAfterMs(tamsin, elsewhere, '!pier triage no port');
  });
  afterAll(async () => {
    await bot?.remove();
    await server?.remove();
  });

  const othersAreAnswered = async (kind: string, flooding: Promise<unknown>): Promise<void> => {
    const waits = await Promise.all([answeredAfterMs(odalys, room), answeredAfterMs(tamsin, elsewhere)]);
    expect(await health()).toBe(200);
    await flooding;
    waits.push(await answeredAfterMs(odalys, room), await answeredAfterMs(tamsin, elsewhere));
    expect(await health()).toBe(200);
    console.log(`flood of ${kind}: others answered after ${waits.join(', ')} ms`);
    expect(Math.max(...waits)).toBeLessThan(WITHIN_MS);
  };

  test.each(KINDS)('with %s: the others do not notice', async (kind, flood) => {
    await othersAreAnswered(kind, flood(rude, room));
  });

  test('with rooms and invitations: the others do not notice', async () => {
    const flooding = times(50, async () => {
      const roomId = await rude.createRoom({ preset: 'private_chat' });
      await rude.invite(roomId, account.userId);
      await Promise.all(Array.from({ length: 5 }, () => rude.say(roomId, '!pier up M13')));
    });
    await othersAreAnswered('rooms', flooding);
  });
});
