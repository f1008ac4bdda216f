/** Many members asking in many rooms of a real homeserver, which is killed and started again among their questions. */
import { setTimeout as sleep } from 'node:timers/promises';
import { botProcess } from '../homeserver/bot-process.js';
import { createDendrite, dendriteFolder } from '../homeserver/dendrite.js';
import { answersTo, memberOf, type Member } from '../homeserver/member.js';
import { latencyLines, type Report } from './discord-evening.js';

const ROOMS = 12;
const MEMBERS_OF_ROOM = 3;
const ROUNDS = 4;
const LINES = [
  'altitude Capella',
  'sidereal',
  'dark',
  'epoch NGC 7331',
  'tonight',
  'up M 97',
  'help',
  'altitude Saturn site:"Hobart, Tasmania"',
];

interface Asked {
  readonly room: string;
  readonly eventId: string;
  readonly sentMs: number;
}

export const matrixEvening = async (): Promise<Report> => {
  const folder = dendriteFolder();
  if (folder === null)
    return {
      lines: ['Matrix: not loaded, no homeserver binaries here (scripts/install-dendrite.sh, or DENDRITE_BIN)'],
      failures: [],
    };
  const names = Array.from({ length: ROOMS * MEMBERS_OF_ROOM }, (_, i) => `member${i}`);
  // The homeserver's own limit on how fast one user may send is lifted for the bot: here it is the bot that is measured.
  const server = await createDendrite(folder, [...names, 'pier']);
  await server.start();
  const account = await server.register('pier');
  const bot = botProcess(
    { MATRIX_HOMESERVER_URL: server.url, MATRIX_ACCESS_TOKEN: account.accessToken, LOG_LEVEL: 'info' },
    'bot/main',
  );
  try {
    const members: Member[] = [];
    for (const name of names) members.push(memberOf(server.url, await server.register(name)));
    await bot.start();
    const rooms: string[] = [];
    for (let i = 0; i < ROOMS; i++) {
      const own = members.slice(i * MEMBERS_OF_ROOM, (i + 1) * MEMBERS_OF_ROOM);
      const [owner, ...others] = own as [Member, ...Member[]];
      const room = await owner.createRoom({
        preset: 'private_chat',
        name: `Club ${i + 1}`,
        invite: [...others.map(({ userId }) => userId), account.userId],
      });
      for (const other of others) await other.join(room);
      rooms.push(room);
    }
    for (const [i, room] of rooms.entries())
      await (members[i * MEMBERS_OF_ROOM] as Member).wait(
        'the bot to come in',
        async () => (await (members[i * MEMBERS_OF_ROOM] as Member).membership(room, account.userId)) === 'join',
      );

    const askRound = async (round: number): Promise<Asked[]> =>
      Promise.all(
        members.map(async (member, i) => {
          await sleep((i % 9) * 120);
          const room = rooms[Math.floor(i / MEMBERS_OF_ROOM)] ?? '';
          // The homeserver may be away: the member's client tries again, as real ones do.
          const eventId = await member.wait(
            'the server to take a question',
            async () => member.say(room, `!pier ${LINES[(i + round) % LINES.length]}`).catch(() => null),
            60_000,
          );
          return { room, eventId, sentMs: Date.now() };
        }),
      );
    const answersOf = async (
      asked: readonly Asked[],
    ): Promise<ReadonlyMap<string, { readonly count: number; readonly afterMs: number }>> => {
      const found = new Map<string, { count: number; afterMs: number }>();
      for (const [i, room] of rooms.entries()) {
        const all = await (members[i * MEMBERS_OF_ROOM] as Member).events(room).catch(() => []);
        for (const { eventId } of asked.filter((one) => one.room === room)) {
          // Words alone: a picture is a second event by intent.
          const answers = answersTo(all, account.userId, eventId).filter(
            ({ content }) => content['msgtype'] !== 'm.image',
          );
          const question = all.find(({ event_id }) => event_id === eventId);
          const first = answers[0];
          found.set(eventId, {
            count: answers.length,
            afterMs:
              first === undefined || question === undefined
                ? Number.NaN
                : first.origin_server_ts - question.origin_server_ts,
          });
        }
      }
      return found;
    };
    const settled = async (
      asked: readonly Asked[],
      withinMs: number,
    ): Promise<ReadonlyMap<string, { readonly count: number; readonly afterMs: number }>> => {
      const end = performance.now() + withinMs;
      for (;;) {
        const found = await answersOf(asked);
        if ([...found.values()].every(({ count }) => count > 0) || performance.now() > end) return found;
        await sleep(1000);
      }
    };

    const calm: Asked[] = [];
    for (let round = 0; round < ROUNDS; round++) calm.push(...(await askRound(round)));
    const calmAnswers = [...(await settled(calm, 40_000)).values()];

    const rough = askRound(ROUNDS);
    await sleep(500);
    await server.kill();
    await sleep(2500);
    await server.start();
    const roughAsked = await rough;
    await settled(roughAsked, 60_000);
    await sleep(3000);
    const roughAnswers = [...(await answersOf(roughAsked)).values()];

    const unanswered = (of: readonly { readonly count: number }[]): number =>
      of.filter(({ count }) => count === 0).length;
    const twice = (of: readonly { readonly count: number }[]): number => of.filter(({ count }) => count > 1).length;
    const times = calmAnswers.map(({ afterMs }) => afterMs).filter((ms) => !Number.isNaN(ms));
    return {
      lines: [
        `Matrix, ${members.length} members in ${ROOMS} rooms, ${calm.length} questions as fast as they type: ${unanswered(calmAnswers)} not answered, ${twice(calmAnswers)} answered twice`,
        `  by the homeserver's clock: ${latencyLines(times)}`,
        `Matrix, the homeserver killed and started again among ${roughAsked.length} more: ${unanswered(roughAnswers)} not answered, ${twice(roughAnswers)} answered twice`,
      ],
      failures: [
        ...(unanswered(calmAnswers) + unanswered(roughAnswers) > 0 ? ['questions on Matrix went unanswered'] : []),
        ...(twice(calmAnswers) + twice(roughAnswers) > 0 ? ['questions on Matrix were answered twice'] : []),
        ...(bot.output().includes(account.accessToken) ? ['the access token is in the log'] : []),
      ],
    };
  } finally {
    await bot.remove();
    await server.remove();
  }
};
