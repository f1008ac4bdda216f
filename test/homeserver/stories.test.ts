/** The two whole stories in Matrix rooms on a real homeserver: a helper, a member, and a bot started anew on the same store. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDeps, type OpenedDeps } from '../../bot/app/compose.js';
import { createLog } from '../../bot/app/log.js';
import { startMatrix } from '../../bot/platforms/matrix/index.js';
import { createMetrics } from '../../bot/app/metrics.js';
import type { RunningPlatform } from '../../bot/app/platform.js';
import { loadSettings } from '../../bot/app/settings.js';
import { connectionWalk } from '../stories/connection-walk.js';
import { lookThrough } from '../stories/look-through.js';
import { memberLife } from '../stories/member-life.js';
import { EVENING, numberOf, type Actor, type Shown, type Stage } from '../stories/stage.js';
import { createDendrite, dendriteFolder, type Account, type Dendrite } from './dendrite.js';
import { answersTo, memberOf, type Member, type SeenEvent } from './member.js';

const folder = dendriteFolder();
if (folder === null)
  console.log(
    'NO HOMESERVER: no Dendrite binaries found, nothing was tested here. Run scripts/install-dendrite.sh, or set DENDRITE_BIN.',
  );

interface Seen extends Shown {
  readonly roomId: string;
  readonly eventId: string;
}

/** The numbered lines at the end are what can be picked, one a line ("1. …") or several in one ("1 … · 2 …"). */
const labelsIn = (text: string): readonly string[] => {
  const lines = text.split('\n');
  const end = lines.findLastIndex((line) => /^Answer with a number/u.test(line));
  const first = lines.slice(0, Math.max(0, end)).findLastIndex((line) => /^1\.? /u.test(line));
  return first < 0
    ? []
    : lines
        .slice(first, end)
        .flatMap((line) => (/^\d+\. /u.test(line) ? [line] : line.split(' · ')))
        .map((choice) => choice.replace(/^\d+\.? /u, '').replace(/ \(usual\)$/u, ''));
};

describe.skipIf(folder === null)('whole stories on a real homeserver', () => {
  let server: Dendrite;
  let bot: Account;
  let room: string;
  let dataFolder: string;
  let opened: OpenedDeps;
  let running: RunningPlatform;
  let clockUtcMs = EVENING;
  const directRooms = new Map<string, string>();
  const members = new Map<string, Member>();
  const member = (name: string): Member => {
    const found = members.get(name);
    if (found === undefined) throw new Error(`no account for ${name}`);
    return found;
  };

  const start = async (): Promise<void> => {
    const settings = loadSettings(
      {
        MATRIX_HOMESERVER_URL: server.url,
        MATRIX_ACCESS_TOKEN: bot.accessToken,
        PIERHAND_DATA: dataFolder,
        PIERHAND_SITE: '52.71,0.12',
        LOG_LEVEL: 'silent',
      },
      () => '',
    );
    opened = await openDeps(settings);
    running = await startMatrix(
      { deps: opened.deps, settings, log: createLog('silent', []), metrics: createMetrics(), now: () => clockUtcMs },
      { perMember: { burst: 1000, perSecond: 1000 } },
    );
    await member('Tamsin').wait('the bot to follow the rooms', async () => running.health().ok);
  };
  const stop = async (): Promise<void> => {
    await running.stop();
    await opened.close();
  };

  beforeAll(async () => {
    dataFolder = mkdtempSync(path.join(tmpdir(), 'pierhand-matrix-'));
    server = await createDendrite(folder ?? '', ['odalys', 'tamsin']);
    await server.start();
    bot = await server.register('pier');
    for (const name of ['Odalys', 'Tamsin']) {
      const account = memberOf(server.url, await server.register(name.toLowerCase()));
      await account.request('PUT', `/profile/${encodeURIComponent(account.userId)}/displayname`, { displayname: name });
      members.set(name, account);
    }
    await start();
    const [odalys, tamsin] = [member('Odalys'), member('Tamsin')];
    room = await odalys.createRoom({
      preset: 'private_chat',
      name: 'Fenwold nights',
      invite: [tamsin.userId, bot.userId],
    });
    await tamsin.join(room);
    await odalys.wait('the bot to come in', async () => (await odalys.membership(room, bot.userId)) === 'join');
  });
  afterAll(async () => {
    await stop();
    await server.remove();
    rmSync(dataFolder, { recursive: true, force: true });
  });

  const person = (name: string): Actor<Seen> => {
    const noticeIn = (events: readonly SeenEvent[]): SeenEvent | undefined =>
      events.findLast(
        ({ type, sender, content }) =>
          type === 'm.room.message' && sender === bot.userId && content['msgtype'] === 'm.notice',
      );
    const seen = (roomId: string, { event_id: eventId, content }: SeenEvent): Seen => {
      const text = String(content['body']);
      return { roomId, eventId, text, labels: labelsIn(text), isPrivate: roomId !== room };
    };
    /** The answer to what was said, followed into the direct room where the club's room is told that it is there. */
    const answerTo = async (roomId: string, eventId: string): Promise<Seen> => {
      const self = member(name);
      const answer = await self.wait(
        `an answer to ${name}`,
        async () => answersTo(await self.events(roomId), bot.userId, eventId)[0],
      );
      if (roomId !== room || !/it is in our direct room/u.test(String(answer.content['body'])))
        return seen(roomId, answer);
      const [invitation] = await self.invitations();
      if (invitation !== undefined) {
        await self.join(invitation);
        directRooms.set(name, invitation);
      }
      const direct = directRooms.get(name) ?? '';
      return seen(direct, await self.wait('the private answer', async () => noticeIn(await self.events(direct))));
    };
    return {
      name,
      get memberId() {
        return `matrix:${member(name).userId}`;
      },
      asks: async (line) => answerTo(room, await member(name).say(room, `!pier ${line}`)),
      picks: async (shown, label) =>
        answerTo(
          shown.roomId,
          await member(name).say(shown.roomId, String(numberOf(shown, label)), {
            'm.relates_to': { 'm.in_reply_to': { event_id: shown.eventId } },
          }),
        ),
      // A reminder is no notice: it must ring.
      wasTold: async () => {
        const direct = directRooms.get(name);
        if (direct === undefined) return [];
        return (await member(name).events(direct))
          .filter(({ sender, content }) => sender === bot.userId && content['msgtype'] === 'm.text')
          .map(({ content }) => String(content['body']));
      },
    };
  };

  const stage: Stage<Seen> = {
    helper: person('Odalys'),
    member: person('Tamsin'),
    get clubId() {
      return `matrix:${room}`;
    },
    store: () => opened.deps.store,
    get dataFolder() {
      return dataFolder;
    },
    restart: async () => {
      await stop();
      await start();
    },
    clockTo: async (utcMs) => {
      clockUtcMs = utcMs;
      await lookThrough(opened.deps.store, running, () => clockUtcMs);
    },
  };

  test('a connection walk, by a helper for another member, from the first message to the verified cure, across a restart', () =>
    connectionWalk(stage));

  test('a member adds a site by place name, sets a horizon, is reminded, exports and forgets', async () => {
    await memberLife(stage);
    // Not one word of it was said where others read.
    const inRoom = (await member('Odalys').events(room))
      .filter(({ sender }) => sender === bot.userId)
      .map(({ content }) => String(content['body']))
      .join('\n');
    expect(inRoom).toContain('Tamsin, that answer is for you alone');
    for (const word of ['Quarry Field', '-23.7', 'Regulus']) expect(inRoom).not.toContain(word);
  });
});
