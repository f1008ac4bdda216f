/* eslint-disable max-lines -- one homeserver and its encrypted rooms, started once */
/**
 * Encrypted rooms on a real homeserver, between the bot with its native library and members at another implementation
 * (matrix-js-sdk with WebAssembly). Runs where the homeserver and the library are; prints how long answers took.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { botProcess, type BotProcess } from './bot-process.js';
import { createDendrite, dendriteFolder, type Account, type Dendrite } from './dendrite.js';
import {
  encryptedMember,
  lockAttachment,
  logIn,
  openAttachment,
  type EncryptedMember,
  type OpenedEvent,
} from './encrypted-member.js';
import { memberOf, type Member, type SeenEvent } from './member.js';
import { nativeLibrary } from './native-library.js';

const folder = dendriteFolder();
const canRun = folder !== null && nativeLibrary() !== null;
if (!canRun)
  console.log(
    'NO ENCRYPTION TESTED: it takes the homeserver (scripts/install-dendrite.sh) and the library (npm run matrix:encryption, or ../shared/native).',
  );

const ENCRYPTED = { type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } };
const scratch = mkdtempSync(path.join(tmpdir(), 'pierhand-encrypted-'));
const text = (event: SeenEvent | undefined): string => String(event?.content['body']);

describe.skipIf(!canRun)('in encrypted rooms', () => {
  let server: Dendrite;
  let env: Record<string, string>;
  let bot: BotProcess;
  let restored: BotProcess | null = null;
  let account: Account;
  let accounts: Record<'odalys' | 'tamsin' | 'ravi', Account>;
  let odalys: EncryptedMember;
  let tamsin: EncryptedMember;
  let ravi: EncryptedMember;
  let watcher: Member;
  let club: string;
  const effects = path.join(scratch, 'effects');
  const devices: EncryptedMember[] = [];

  const at = async (account_: Account): Promise<EncryptedMember> => {
    const device = await encryptedMember(server.url, account_);
    devices.push(device);
    return device;
  };
  const roomBy = async (
    member: EncryptedMember,
    invite: readonly EncryptedMember[],
    content: object = {},
  ): Promise<string> => {
    const { room_id: room } = await member.client.createRoom({
      preset: 'private_chat' as never,
      invite: [account.userId, ...invite.map(({ userId }) => userId)],
      initial_state: [ENCRYPTED],
      ...content,
    });
    for (const other of invite) await other.client.joinRoom(room);
    await member.wait(
      'the bot to come in',
      async () => (await member.plain.membership(room, account.userId)) === 'join',
    );
    if (!('initial_state' in content))
      for (const device of [member, ...invite]) await device.knows(room, [account.userId]);
    return room;
  };
  const direct = (member: EncryptedMember): Promise<string> =>
    roomBy(member, [], { preset: 'trusted_private_chat', is_direct: true });
  const ask = async (member: EncryptedMember, room: string, line: string, more: object = {}): Promise<OpenedEvent> => {
    const [answer] = await member.answers(account.userId, room, await member.say(room, line, more));
    if (answer === undefined) throw new Error('no answer');
    return answer;
  };
  /** From the question's being sent to the answer on the member's screen, ms. */
  const timed = async (member: EncryptedMember, room: string, line: string): Promise<number> => {
    const eventId = await member.say(room, line);
    const began = performance.now();
    await member.answers(account.userId, room, eventId);
    return Math.round(performance.now() - began);
  };
  const sees = (member: EncryptedMember, room: string, eventId: string): Promise<OpenedEvent> =>
    member.wait(`${eventId} to be read`, async () =>
      member.events(room).find((event) => event.event_id === eventId && event.type === 'm.room.message'),
    );
  const bySay = (room: string, word: RegExp, member: EncryptedMember): Promise<OpenedEvent> =>
    member.wait(`the bot to say ${word}`, async () =>
      member.events(room).findLast((event) => event.sender === account.userId && word.test(text(event))),
    );

  beforeAll(async () => {
    server = await createDendrite(folder ?? '', ['odalys', 'tamsin', 'ravi']);
    await server.start();
    account = await server.register('pier');
    watcher = memberOf(server.url, account);
    accounts = {
      odalys: await server.register('odalys'),
      tamsin: await server.register('tamsin'),
      ravi: await server.register('ravi'),
    };
    [odalys, tamsin, ravi] = [await at(accounts.odalys), await at(accounts.tamsin), await at(accounts.ravi)];
    env = { MATRIX_HOMESERVER_URL: server.url, LIMIT_MEMBERS: 'no', EFFECT_FILE: effects };
    bot = botProcess({ ...env, MATRIX_ACCESS_TOKEN: account.accessToken });
    await bot.start();
  });
  afterAll(async () => {
    for (const device of devices) device.stop();
    await restored?.remove();
    await bot?.remove();
    await server?.remove();
    rmSync(scratch, { recursive: true, force: true });
  });

  test('the first answers come at once, encrypted or not, and later ones as fast', async () => {
    const plain = await roomBy(tamsin, [], { initial_state: [] });
    const secret = await direct(ravi);
    const plainMs = await timed(tamsin, plain, 'echo first');
    const secretMs = await timed(ravi, secret, 'echo first');
    const later = { plain: [] as number[], secret: [] as number[] };
    for (let i = 0; i < 8; i++) {
      later.plain.push(await timed(tamsin, plain, `echo ${i}`));
      later.secret.push(await timed(ravi, secret, `echo ${i}`));
    }
    const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
    console.log(
      `first answer in a fresh room: plain ${plainMs} ms, encrypted ${secretMs} ms; later, median of 8: plain ${median(later.plain)} ms, encrypted ${median(later.secret)} ms`,
    );
    const answer = await ask(ravi, secret, 'echo locked');
    expect(answer).toMatchObject({ isEncrypted: true, content: { msgtype: 'm.notice', 'm.mentions': {} } });
    expect(text(answer)).toContain('locked');
  });

  test("a direct room's first words, said before the bot could come in, are answered without more ado", async () => {
    await bot.stop();
    const { room_id: room } = await tamsin.client.createRoom({
      preset: 'trusted_private_chat' as never,
      is_direct: true,
      invite: [account.userId],
      initial_state: [ENCRYPTED],
    });
    await tamsin.knows(room, [account.userId]);
    const eventId = await tamsin.say(room, 'echo the very first words');
    await bot.start();
    expect(text((await tamsin.answers(account.userId, room, eventId))[0])).toContain('the very first words');
    // No greeting beside it.
    const said = tamsin
      .events(room)
      .filter(({ sender, type }) => sender === account.userId && type === 'm.room.message');
    expect(said).toHaveLength(1);
  });

  test('a club of three: one comes later, one has two devices, and each device reads what it may', async () => {
    club = await roomBy(odalys, [tamsin]);
    const second = await at(accounts.tamsin);
    await second.knows(club, [odalys.userId, account.userId]);
    const early = await ask(odalys, club, '!pier echo before Ravi');
    for (const device of [odalys, tamsin, second])
      expect(text(await sees(device, club, early.event_id))).toContain('before Ravi');
    await odalys.client.invite(club, ravi.userId);
    await ravi.client.joinRoom(club);
    await ravi.knows(club, [odalys.userId, tamsin.userId, account.userId]);
    const late = await ask(ravi, club, '!pier echo with Ravi');
    for (const device of [odalys, tamsin, second, ravi])
      expect(text(await sees(device, club, late.event_id))).toContain('with Ravi');
    const bySecond = await ask(second, club, '!pier echo from the second device');
    expect(text(await sees(ravi, club, bySecond.event_id))).toContain(`matrix:${tamsin.userId}`);
  });

  test('choices are picked by number, by reply and by reaction', async () => {
    const offer = await ask(odalys, club, '!pier offer');
    expect(offer.isEncrypted).toBe(true);
    expect(text(await ask(odalys, club, '2'))).toContain('Cold Ridge');
    const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: offer.event_id } } };
    expect(text(await ask(tamsin, club, '3', reply))).toContain('Quarry Field');
    const before = odalys.events(club).length;
    await odalys.wait('number reactions', async () =>
      odalys.events(club).some(({ type, sender }) => type === 'm.reaction' && sender === account.userId),
    );
    await ravi.react(club, offer.event_id, '1️⃣');
    const below = await ravi.answers(account.userId, club, offer.event_id);
    expect(text(below.at(-1))).toContain('Fenwold Common');
    expect(odalys.events(club).length).toBeGreaterThanOrEqual(before);
  });

  test('threads hold together: the relation stands outside the ciphertext, picks are taken there', async () => {
    const root = await odalys.say(club, 'A thread of its own');
    const inThread = (eventId: string) => ({
      'm.relates_to': {
        rel_type: 'm.thread',
        event_id: root,
        is_falling_back: true,
        'm.in_reply_to': { event_id: eventId },
      },
    });
    const offer = await ask(odalys, club, '!pier offer', inThread(root));
    expect(offer.content['m.relates_to']).toMatchObject({ rel_type: 'm.thread', event_id: root });
    const picked = await ask(tamsin, club, '1', inThread(offer.event_id));
    expect(text(picked)).toContain('Fenwold Common');
    expect(picked.content['m.relates_to']).toMatchObject({ rel_type: 'm.thread', event_id: root });
  });

  test('a chart arrives locked and opens to the very picture of an open room', async () => {
    const question = 'up M13 on:2026-12-12 site:52.71,0.12';
    const [, locked] = await tamsin.answers(account.userId, club, await tamsin.say(club, `!pier ${question}`), 2);
    expect(locked?.content).toMatchObject({ msgtype: 'm.image', file: { key: { alg: 'A256CTR' }, v: 'v2' } });
    expect(locked?.content).not.toHaveProperty('url');
    const opened = await openAttachment(tamsin.plain, server.url, locked?.content['file'] as never);
    // The PNG signature: W3C PNG specification, third edition, section 5.2.
    expect(opened.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
    const plain = await roomBy(tamsin, [], { initial_state: [] });
    const [, open] = await tamsin.answers(account.userId, plain, await tamsin.say(plain, question), 2);
    const [, media] = /^mxc:\/\/(.+)$/u.exec(String(open?.content['url'])) ?? [];
    const response = await fetch(`${server.url}/_matrix/client/v1/media/download/${media}`, {
      headers: { Authorization: `Bearer ${tamsin.plain.accessToken}` },
    });
    expect(opened.equals(Buffer.from(await response.arrayBuffer()))).toBe(true);
  });

  test('a private answer goes to an encrypted direct room, and can be read there by who comes in after it', async () => {
    const told = await ask(ravi, club, '!pier mine');
    expect(text(told)).toContain('direct room');
    expect(text(told)).not.toContain('51.42');
    const [invitation = ''] = await ravi.plain.invitations();
    const own =
      invitation === ''
        ? (ravi.client
            .getRooms()
            .find(({ roomId }) => ravi.events(roomId).some((event) => text(event).includes('51.42')))?.roomId ?? '')
        : invitation;
    if (invitation !== '') await ravi.client.joinRoom(invitation);
    const answer = await bySay(own, /51\.42/u, ravi);
    expect(answer.isEncrypted).toBe(true);
    expect(text(await ask(ravi, own, '1'))).toContain('Quarry Field');
  });

  test('a walk with a helper: begun for a member, answered by the member', async () => {
    const begun = await ask(odalys, club, `!pier triage for:${tamsin.userId}`);
    expect(begun.isEncrypted).toBe(true);
    expect(text(begun)).toMatch(/\n1\. /u);
    const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: begun.event_id } } };
    const next = await ask(tamsin, club, '1', reply);
    expect(next.isEncrypted).toBe(true);
    expect(text(next)).toMatch(/\n1\. /u);
    expect(text(next)).not.toBe(text(begun));
  });

  test('a log sent as a locked file is read: in the direct room, replied to, and in the thread of a walk', async () => {
    const log = Buffer.from('[ 812.4] usb 1-1: device descriptor read/64, error -71\n');
    const send = async (room: string, more: object = {}): Promise<string> =>
      tamsin.say(room, 'kernel.txt', {
        msgtype: 'm.file',
        file: await lockAttachment(tamsin.plain, server.url, log),
        ...more,
      });
    const own = await direct(tamsin);
    const [answer] = await tamsin.answers(account.userId, own, await send(own));
    expect(text(answer)).toContain('device cannot even say what it is');
    // In the club the file alone is talk; a question that replies to it means it.
    const file = await send(club);
    const named = await ask(tamsin, club, '!pier triage do:new', {
      'm.relates_to': { 'm.in_reply_to': { event_id: file } },
    });
    expect(text(named)).toContain('device cannot even say what it is');
    expect(
      tamsin
        .events(club)
        .filter(
          (event) =>
            JSON.stringify(event.content['m.relates_to'] ?? {}).includes(file) && event.sender === account.userId,
        ),
    ).toHaveLength(0);
  });

  test("words and files in a walk's thread are the member's, to nobody else's talk is anything said", async () => {
    const root = await tamsin.say(club, 'My mount will not connect');
    const inThread = {
      'm.relates_to': {
        rel_type: 'm.thread',
        event_id: root,
        is_falling_back: true,
        'm.in_reply_to': { event_id: root },
      },
    };
    await ask(tamsin, club, '!pier triage do:new', inThread);
    const talk = await ravi.say(club, 'the port is not in the list', inThread);
    const words = await ask(tamsin, club, 'usb 1-1: device descriptor read/64, error -71', inThread);
    expect(text(words)).toContain('device cannot even say what it is');
    expect(words.content['m.relates_to']).toMatchObject({ rel_type: 'm.thread', event_id: root });
    expect(
      JSON.stringify(
        tamsin
          .events(club)
          .filter(({ sender }) => sender === account.userId)
          .map(({ content }) => content['pierhand.answer'] as unknown),
      ),
    ).not.toContain(talk);
  });

  test('after a restart it reads on, and an offer from before can be picked', async () => {
    const offer = await ask(odalys, club, '!pier offer');
    expect(await bot.stop()).toBe(0);
    const asked = await tamsin.say(club, '!pier echo while it was away');
    await bot.start();
    expect(text((await tamsin.answers(account.userId, club, asked))[0])).toContain('while it was away');
    await odalys.react(club, offer.event_id, '2️⃣');
    expect(text((await odalys.answers(account.userId, club, offer.event_id)).at(-1))).toContain('Cold Ridge');
  });

  test('killed in the middle of an answer it answers once, and does what was asked once', async () => {
    const asked: string[] = [];
    for (const name of ['a', 'b', 'c', 'd']) asked.push(await odalys.say(club, `!pier effect ${name}`));
    await odalys.answers(account.userId, club, asked[0] ?? '');
    await bot.kill();
    await bot.start();
    for (const eventId of asked) await odalys.answers(account.userId, club, eventId);
    await ask(odalys, club, '!pier echo that was all');
    for (const eventId of asked) expect(await odalys.answers(account.userId, club, eventId), eventId).toHaveLength(1);
    const done = readFileSync(effects, 'utf8').trim().split('\n');
    // An effect may happen again only where the kill fell between it and its note; the answer never goes out twice.
    expect(new Set(done)).toEqual(new Set(['a', 'b', 'c', 'd']));
    expect(done.length).toBeLessThanOrEqual(5);
  });

  test("a member's new device is read and written to at once", async () => {
    const third = await at(accounts.ravi);
    await third.knows(club, [odalys.userId, tamsin.userId, account.userId]);
    const answer = await ask(third, club, '!pier echo from a new device');
    expect(text(answer)).toContain('from a new device');
    expect(text(await sees(ravi, club, answer.event_id))).toContain('from a new device');
  });

  test('its key changes after a hundred messages', async () => {
    const room = await direct(odalys);
    const sessions = new Map<string, number>();
    for (let i = 0; i < 104; i++) await ask(odalys, room, `echo ${i}`);
    for (const event of await odalys.plain.events(room)) {
      if (event.sender !== account.userId || event.type !== 'm.room.encrypted') continue;
      const id = String(event.content['session_id']);
      sessions.set(id, (sessions.get(id) ?? 0) + 1);
    }
    console.log(`messages under each key: ${[...sessions.values()].join(', ')}`);
    expect(sessions.size).toBe(2);
    // "rotation_period_msgs … 100 is the recommended default" (Matrix specification, m.room.encryption).
    expect(Math.max(...sessions.values())).toBe(100);
  });

  test('what it cannot read it says it cannot read, once, and does not guess', async () => {
    const room = await direct(tamsin);
    await ask(tamsin, room, 'echo this can be read');
    const cipher = {
      algorithm: 'm.megolm.v1.aes-sha2',
      ciphertext: 'AwgAEnAB',
      device_id: 'X',
      sender_key: 'x',
      session_id: 'x',
    };
    const unreadable = await tamsin.plain.send(room, 'm.room.encrypted', cipher);
    await tamsin.plain.send(room, 'm.room.encrypted', cipher);
    const [told] = await tamsin.answers(account.userId, room, unreadable);
    expect(text(told)).toContain('cannot read that message');
    await sleep(6000);
    expect(tamsin.events(room).filter((event) => /cannot read/u.test(text(event)))).toHaveLength(1);
  });

  test('a message from before it came, picked from or replied to, is said to be unreadable', async () => {
    const { room_id: room } = await odalys.client.createRoom({
      preset: 'private_chat' as never,
      initial_state: [ENCRYPTED],
    });
    await odalys.knows(room, []);
    const early = await odalys.say(room, 'Choose: 1. east, 2. west');
    await odalys.client.invite(room, account.userId);
    await bySay(room, /Hello/u, odalys);
    const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: early } } };
    expect(text(await ask(odalys, room, '!pier 2', reply))).toContain('cannot read the message you answered');
  });

  test('with its data folder back from a backup and a new login, as the guide has it, it reads and is read', async () => {
    const room = await direct(tamsin);
    const offer = await ask(tamsin, room, 'offer');
    await bot.stop();
    const kept = path.join(scratch, 'backup');
    cpSync(bot.dataFolder, kept, { recursive: true });
    await bot.start();
    // What the backup does not know: keys for another room, one-time keys used up, messages said.
    await ask(ravi, await direct(ravi), 'echo after the backup');
    await ask(tamsin, room, 'echo after the backup');
    await bot.stop();
    rmSync(bot.dataFolder, { recursive: true });
    cpSync(kept, bot.dataFolder, { recursive: true });
    rmSync(path.join(bot.dataFolder, 'matrix-keys'), { recursive: true });
    const { accessToken } = await logIn(server.url, account);
    restored = botProcess({ ...env, PIERHAND_DATA: bot.dataFolder, MATRIX_ACCESS_TOKEN: accessToken });
    await restored.start();
    // The members' clients have to hear of the new device.
    await sleep(1000);
    expect(text(await ask(tamsin, room, 'echo with the backup'))).toContain('with the backup');
    const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: offer.event_id } } };
    // Of what was said before it has no key, and says so.
    expect(text(await ask(tamsin, room, '1', reply))).toContain('cannot read the message you answered');
    for (const line of ['echo after the backup', 'offer'])
      expect(
        tamsin.events(room).filter(({ content }) => content['body'] === line),
        'nothing from before is answered again',
      ).toHaveLength(1);
  });

  test('nothing of it is in the clear in any encrypted room, and nothing was answered twice', async () => {
    const { joined_rooms: joined } = await watcher.wait(
      'the server to allow it',
      async () => (await watcher.request('GET', '/joined_rooms')) as { joined_rooms: string[] },
    );
    const found = { encrypted: 0, messages: 0 };
    for (const room of joined) {
      const events = await watcher.wait('the server to allow it', () => watcher.events(room));
      if (!events.some(({ type }) => type === 'm.room.encryption')) continue;
      found.encrypted++;
      const own = events.filter(({ sender, state_key: key }) => sender === account.userId && key === undefined);
      found.messages += own.length;
      // A reaction is a number and its message's id, which must be in the clear for the server.
      expect(own.filter(({ type }) => !['m.room.encrypted', 'm.reaction'].includes(type))).toEqual([]);
      // Each with a sign that no ciphertext has: "body" alone may stand in base64 by chance.
      expect(JSON.stringify(own)).not.toMatch(/51\.42|pierhand\.choices|"body"/u);
    }
    console.log(`${found.encrypted} encrypted rooms, ${found.messages} events of the bot's`);
    expect(found.encrypted).toBeGreaterThan(5);
    const questions = odalys
      .events(club)
      .filter(({ sender, type }) => sender !== account.userId && type === 'm.room.message');
    for (const { event_id: eventId } of questions) {
      const texts = odalys
        .events(club)
        .filter(
          (event) =>
            event.sender === account.userId &&
            event.content['msgtype'] === 'm.notice' &&
            JSON.stringify(event.content['pierhand.answer'] ?? {}).includes(eventId) &&
            (event.content['pierhand.answer'] as { part: string }).part === 'text',
        );
      expect(texts.length, eventId).toBeLessThanOrEqual(1);
    }
  });

  test('with the keys of its device lost and the old token, it says what mends it and answers where nothing is encrypted', async () => {
    await restored?.stop();
    rmSync(path.join(bot.dataFolder, 'matrix-keys'), { recursive: true });
    await bot.start();
    expect(bot.output()).toMatch(/encrypted rooms cannot be read; a new token, from a new login, mends it/u);
    const open = await roomBy(tamsin, [], { initial_state: [] });
    expect(text(await ask(tamsin, open, 'echo in the open'))).toContain('in the open');
  });
});
