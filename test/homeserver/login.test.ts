/** The real program: each way to log in, each thing an operator can get wrong, and its own commands in a club's room. */
import { existsSync, statSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { botProcess } from './bot-process.js';
import { createDendrite, dendriteFolder, freePort, type Account, type Dendrite } from './dendrite.js';
import { answersTo, memberOf, type Member } from './member.js';

const folder = dendriteFolder();
if (folder === null)
  console.log(
    'NO HOMESERVER: no Dendrite binaries found, nothing was tested here. Run scripts/install-dendrite.sh, or set DENDRITE_BIN.',
  );

describe.skipIf(folder === null)('starting with a real homeserver', () => {
  let server: Dendrite;
  let account: Account;
  let odalys: Member;

  beforeAll(async () => {
    server = await createDendrite(folder ?? '', ['odalys']);
    await server.start();
    account = await server.register('pier');
    odalys = memberOf(server.url, await server.register('odalys'));
  });
  afterAll(async () => {
    await server?.remove();
  });

  /** The last line that a failed start prints, and its exit code. */
  const failedStart = async (env: Record<string, string>): Promise<string> => {
    const bot = botProcess({ MATRIX_HOMESERVER_URL: server.url, LOG_LEVEL: 'silent', ...env }, 'bot/main');
    try {
      const message = await bot.start().then(
        () => 'started',
        (error: unknown) => (error as Error).message,
      );
      expect(bot.output().trim().split('\n')).toHaveLength(1);
      return message.trim();
    } finally {
      await bot.remove();
    }
  };
  const devices = async (): Promise<number> =>
    ((await memberOf(server.url, account).request('GET', '/devices')) as { devices: unknown[] }).devices.length;

  test('a wrong token is one clear line', async () => {
    expect(await failedStart({ MATRIX_ACCESS_TOKEN: 'not-a-token' })).toMatch(
      /^the bot ended with 2: MATRIX_ACCESS_TOKEN: .*does not accept this token/u,
    );
  });

  test('a wrong password is one clear line, which does not repeat it', async () => {
    const line = await failedStart({ MATRIX_USER: 'pier', MATRIX_PASSWORD: 'opensesame-wrong' });
    expect(line).toMatch(/^the bot ended with 2: MATRIX_PASSWORD: .*refuses pier/u);
    expect(line).not.toContain('opensesame-wrong');
  });

  test('something else than a homeserver is one clear line', async () => {
    const port = await freePort();
    const other = createServer((_request, response) => {
      response.writeHead(404, { 'Content-Type': 'text/html' }).end('<h1>Not here</h1>');
    });
    await new Promise<void>((resolve) => other.listen(port, '127.0.0.1', resolve));
    try {
      expect(
        await failedStart({ MATRIX_HOMESERVER_URL: `http://127.0.0.1:${port}`, MATRIX_ACCESS_TOKEN: 'x' }),
      ).toMatch(/with 2: MATRIX_HOMESERVER_URL: .*does not answer as a Matrix homeserver/u);
    } finally {
      other.close();
    }
  });

  test('a password is used once; the session is kept for the owner alone and works at the next start', async () => {
    const before = await devices();
    const bot = botProcess(
      { MATRIX_HOMESERVER_URL: server.url, MATRIX_USER: 'pier', MATRIX_PASSWORD: account.password },
      'bot/main',
    );
    try {
      await bot.start();
      const file = path.join(bot.dataFolder, 'matrix-session.json');
      expect(existsSync(file)).toBe(true);
      expect((statSync(file).mode & 0o777).toString(8)).toBe('600');
      const { accessToken } = JSON.parse(readFileSync(file, 'utf8')) as { accessToken: string };
      expect(bot.output()).not.toContain(accessToken);

      const room = await odalys.createRoom({ preset: 'private_chat', invite: [account.userId] });
      await odalys.wait('the bot', async () => (await odalys.membership(room, account.userId)) === 'join');
      const asked = await odalys.say(room, 'help');
      await odalys.wait('help', async () => answersTo(await odalys.events(room), account.userId, asked).length === 1);

      expect(await bot.stop()).toBe(0);
      await bot.start();
      expect(await devices()).toBe(before + 1);
      const again = await odalys.say(room, 'up M37');
      await odalys.wait(
        'an answer',
        async () => answersTo(await odalys.events(room), account.userId, again).length === 2,
      );

      // Revoked elsewhere: the next start logs in again.
      await bot.stop();
      await memberOf(server.url, { ...account, accessToken }).request('POST', '/logout');
      await bot.start();
      expect((JSON.parse(readFileSync(file, 'utf8')) as { accessToken: string }).accessToken).not.toBe(accessToken);
    } finally {
      await bot.remove();
    }
  });

  test("its own commands: a walk by number, a helper at a member's side, and a saved site that stays private", async () => {
    const tamsin = memberOf(server.url, await server.register('tamsin'));
    const clubAccount = await server.register('clubpier');
    const bot = botProcess(
      { MATRIX_HOMESERVER_URL: server.url, MATRIX_ACCESS_TOKEN: clubAccount.accessToken },
      'bot/main',
    );
    try {
      await bot.start();
      const room = await odalys.createRoom({ preset: 'private_chat', invite: [tamsin.userId, clubAccount.userId] });
      await tamsin.join(room);
      const answer = async (member: Member, where: string, eventId: string): Promise<string> => {
        const [first] = await member.wait('an answer', async () => {
          const found = answersTo(await member.events(where), clubAccount.userId, eventId);
          return found.length > 0 ? found : null;
        });
        return String(first?.content['body']);
      };
      await odalys.wait('the bot', async () => (await odalys.membership(room, clubAccount.userId)) === 'join');

      const question = await answer(odalys, room, await odalys.say(room, '!pier triage for:tamsin'));
      expect(question).toMatch(/^\s*1\. /mu);
      const next = await answer(odalys, room, await odalys.say(room, '1'));
      expect(next).toMatch(/^\s*1\. /mu);
      expect(next).not.toBe(question);

      await tamsin.say(room, '!pier site add name:"Cold Ridge" position:51.4321,3.0765');
      const [direct = ''] = await tamsin.wait('a direct room', async () => {
        const found = await tamsin.invitations();
        return found.length > 0 ? found : null;
      });
      await tamsin.join(direct);
      const told = await answer(tamsin, room, await tamsin.say(room, '!pier up M38'));
      expect(told).toContain('direct room');
      await tamsin.wait('the private answer with its chart', async () =>
        (await tamsin.events(direct)).some(
          ({ content }) => content['msgtype'] === 'm.image' && /M ?38/u.test(String(content['body'])),
        ),
      );
      const public_ = (await odalys.events(room))
        .filter(({ sender }) => sender === clubAccount.userId)
        .map(({ content }) => JSON.stringify(content))
        .join('\n');
      expect(public_).not.toMatch(/51\.4|3\.07|3\.08|Cold Ridge/u);
    } finally {
      await bot.remove();
    }
  });
});
