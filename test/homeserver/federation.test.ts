/** Members of another homeserver: two servers on this machine that federate, the bot at one, a member at the other. */
import { MatrixError } from 'matrix-js-sdk';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { botProcess, type BotProcess } from './bot-process.js';
import { createDendrite, dendriteFolder, type Account, type Dendrite } from './dendrite.js';
import { encryptedMember, type EncryptedMember } from './encrypted-member.js';
import { nativeLibrary } from './native-library.js';

const folder = dendriteFolder();
const canRun = folder !== null && nativeLibrary() !== null;
const ENCRYPTED = { type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } };

describe.skipIf(!canRun)('with members of another homeserver', () => {
  let [home, away]: (Dendrite | undefined)[] = [];
  let bot: BotProcess;
  let account: Account;
  let odalys: EncryptedMember;
  let tamsin: EncryptedMember;

  beforeAll(async () => {
    [home, away] = [
      await createDendrite(folder ?? '', ['odalys'], true),
      await createDendrite(folder ?? '', ['tamsin'], true),
    ];
    await home.start();
    await away.start();
    account = await home.register('pier');
    odalys = await encryptedMember(home.url, await home.register('odalys'));
    tamsin = await encryptedMember(away.url, await away.register('tamsin'));
    bot = botProcess({
      MATRIX_HOMESERVER_URL: home.url,
      MATRIX_ACCESS_TOKEN: account.accessToken,
      MATRIX_ALLOWED: `${odalys.userId},${away.serverName}`,
      LIMIT_MEMBERS: 'no',
    });
    await bot.start();
  });
  afterAll(async () => {
    for (const device of [odalys, tamsin]) device?.stop();
    await bot?.remove();
    await home?.remove();
    await away?.remove();
  });

  const joinFromAway = async (room: string): Promise<void> => {
    await tamsin.wait('the invitation', async () => tamsin.client.getRoom(room)?.getMyMembership() === 'invite');
    // Dendrite now and then answers a join at another server by 500; a person presses again.
    await tamsin.wait('coming in', async () => {
      const joining = tamsin.client.joinRoom(room, { viaServers: [home?.serverName ?? ''] });
      return joining.catch((error: unknown) => {
        if (error instanceof MatrixError && error.httpStatus === 500) return false;
        throw error;
      });
    });
  };
  const answer = async (room: string, line: string): Promise<string> => {
    const [found] = await tamsin.answers(account.userId, room, await tamsin.say(room, line));
    return String(found?.content['body']);
  };

  test.each([
    ['an open', []],
    ['an encrypted', [ENCRYPTED]],
  ])('%s room is the same for them, and a private answer goes to a room of their own', async (_name, initialState) => {
    const { room_id: room } = await odalys.client.createRoom({
      preset: 'private_chat' as never,
      invite: [account.userId, tamsin.userId],
      initial_state: initialState,
    });
    const isIn = async (from: EncryptedMember): Promise<boolean> =>
      from.client.getRoom(room)?.getMember(account.userId)?.membership === 'join';
    // One after the other: two joins at the same moment, one of them from another server, Dendrite may lose to that server.
    await odalys.wait('the bot', () => isIn(odalys));
    await joinFromAway(room);
    await tamsin.wait('the bot, seen from away', () => isIn(tamsin));
    if (initialState.length > 0) await tamsin.knows(room, [odalys.userId, account.userId]);
    expect(await answer(room, '!pier echo from another server')).toContain(`matrix:${tamsin.userId}`);
    expect(await answer(room, '!pier mine')).toContain('in our direct room');
    // It stands in a room of its own; what was said there before they came their server fetches when they scroll back.
    await tamsin.wait('the direct room', async () =>
      tamsin.client
        .getRooms()
        .some(
          (other) =>
            other.getMember(account.userId)?.events.member?.getSender() === account.userId && other.roomId !== room,
        ),
    );
  });
});
