import { afterEach, describe, expect, it } from 'vitest';
import { allCommands } from '../../bot/commands/all-commands.js';
import { openStore } from '../../bot/store/open-store.js';
import { NotAnswered } from '../doubles/discord/members.js';
import { sampleCommands } from './sample-commands.js';
import { NOW_UTC_MS, start, startBot, type BotOptions, type Started } from './start-bot.js';

let at: Started | undefined;
const begin = async (options: BotOptions = {}): Promise<Started> => {
  at = await start({
    commands: sampleCommands,
    ...options,
    tuning: { deferAfterMs: 150, completeWithinMs: 200, ...options.tuning },
  });
  return at;
};
afterEach(async () => {
  const { violations, requests } = at?.double.rest ?? { violations: ['nothing was started'], requests: [] };
  await at?.stop();
  at = undefined;
  expect(violations).toEqual([]);
  expect(requests.filter(({ status }) => status >= 400)).toEqual([]);
});

describe("answers within Discord's three seconds", () => {
  it('a ready answer comes at once; one that takes longer is acknowledged first and filled in', async () => {
    const { double } = await begin({ tuning: { deferAfterMs: 1500 } });
    const quick = await double.member('Odalys').slash('echo', { words: 'hello' });
    expect(quick).toMatchObject({ firstResponseType: 4, messages: [{ edits: 0 }] });
    const long = await double.member('Odalys').slash('echo', { words: 'hello', wait: 2500 });
    expect(long).toMatchObject({
      firstResponseType: 5,
      messages: [{ edits: 1, onlyFor: null, embeds: [{ title: 'hello' }] }],
    });
  });

  it.each(['private news', 'a problem'])(
    'a late answer for the asker alone (%s) is never shown to others, not even for a moment',
    async (words) => {
      const { double } = await begin();
      const odalys = double.member('Odalys');
      const seen = await odalys.slash('slowly', { words, wait: 50 });
      expect(seen.messages).toHaveLength(1);
      expect(seen.message.onlyFor).toBe(odalys.person.id);
      expect(JSON.stringify([seen.message.content, seen.message.embeds])).toContain(words);
      const told = double.rest.requests.filter(({ path }) => path.startsWith('/webhooks/'));
      // Everything sent where all can read, in order: a plain line, and its removal.
      expect(
        told.filter(({ body }) => (body as { flags?: number } | undefined)?.flags !== 64).map(({ method }) => method),
      ).toEqual(['PATCH', 'DELETE']);
      expect(JSON.stringify(told.filter(({ method }) => method === 'PATCH'))).not.toContain(words);
      expect(double.member('Tamsin').sees(double.channel)).toEqual([]);
    },
  );

  it("forty members at once, each wanting a chart: all hear first that it is coming, not after the others' charts are drawn", async () => {
    const { double } = await begin({
      commands: allCommands,
      tuning: { deferAfterMs: 50, perChannel: { burst: 100, perSecond: 100 } },
    });
    const seen = await Promise.all(
      Array.from({ length: 40 }, (_, i) =>
        double.member(`Visitor ${i}`).slash('up', { target: `M${i + 1}` }, { until: 'first', timeoutMs: 80_000 }),
      ),
    );
    expect(
      seen.filter(({ message }, i) => new RegExp(`\\bM ?${i + 1}\\b`, 'u').test(message.embeds[0]?.title ?? '')),
    ).toHaveLength(40);
    // Were they drawn in one go, the last acknowledgement would come only with the last chart. A ratio, so that the machine's speed is no matter.
    expect(Math.max(...seen.map(({ firstResponseMs }) => firstResponseMs))).toBeLessThan(
      0.7 * Math.max(...seen.map(({ totalMs }) => totalMs)),
    );
  });

  it('suggestions are never late, at most 25 of 100 characters, and a fault gives none', async () => {
    const { double, metrics, logged } = await begin();
    const odalys = double.member('Odalys');
    const some = await odalys.complete('echo', 'words', 'm');
    expect(some.choices).toHaveLength(25);
    expect(some.choices.every(({ name }) => name.length === 100 && name.endsWith('…'))).toBe(true);
    expect((await odalys.complete('echo', 'words', 'late')).choices).toEqual([]);
    expect((await odalys.complete('echo', 'words', 'broken')).choices).toEqual([]);
    await double.waitFor(() => logged().includes('completion broke'), 'the log');
    expect((await metrics.expose()).body).toContain('pierhand_completions_late_total{platform="discord"} 1');
  });
});

describe('choices', () => {
  it('are buttons up to five and a menu beyond, and run what they carry', async () => {
    const { double } = await begin();
    const odalys = double.member('Odalys');
    const five = await odalys.slash('offers', { count: 5 });
    expect(five.message.components[0]?.components).toHaveLength(5);
    expect((await odalys.press(five.message, 'Say 4')).message.embeds[0]?.title).toBe('number 4');
    const many = await odalys.slash('offers', { count: 25 });
    expect(many.message.components[0]?.components).toHaveLength(1);
    expect((await odalys.press(many.message, 'Say 24')).message.embeds[0]?.title).toBe('number 24');
  });

  it('still work after a restart, and one from an older version is turned away kindly', async () => {
    const started = await begin();
    const { double, store } = started;
    const offered = await double.member('Odalys').slash('offers', { count: 2 });
    await started.bot.stop();
    const second = await startBot(double, { commands: sampleCommands, store });
    await double.waitFor(() => second.bot.health().ok, 'the second bot');
    expect((await double.member('Odalys').press(offered.message, 'Say 1')).message.embeds[0]?.title).toBe('number 1');
    offered.message.components = [
      { type: 1, components: [{ type: 2, style: 1, label: 'Old', custom_id: 'from-before' }] },
    ];
    expect((await double.member('Odalys').press(offered.message, 'Old')).message).toMatchObject({
      content: expect.stringContaining('older version') as string,
      onlyFor: double.member('Odalys').person.id,
    });
    await second.bot.stop();
  });
});

describe('kindness and safety', () => {
  it('a fault of ours is an apology without inner detail, private, and logged', async () => {
    const { double, logged } = await begin();
    const { message } = await double.member('Odalys').slash('broken');
    expect(message.content).toContain('Sorry');
    expect(message.content).not.toMatch(/secret inner|Error|at /u);
    expect(message.onlyFor).toBe(double.member('Odalys').person.id);
    expect(logged()).toContain('secret inner detail');
  });

  it('what a member types is shown literally and pings nobody', async () => {
    const { double } = await begin();
    const words = '@everyone <@123> https://example.org **b** # h';
    const { message } = await double.member('Ingo').slash('echo', { words });
    expect(message.embeds[0]?.title).toBe('\\@everyone \\<\\@123\\> https\\://example.org \\*\\*b\\*\\* # h');
    // Every request's allowed_mentions is checked by the double (request-rules.ts).
  });

  it('too many questions from one member are refused kindly and privately; others are still answered', async () => {
    let ticksMs = 0;
    let clock = NOW_UTC_MS;
    const { double, metrics } = await begin({
      now: () => clock,
      tuning: { perMember: { burst: 3, perSecond: 0.5 }, ticksMs: () => ticksMs },
    });
    const [odalys, tamsin] = [double.member('Odalys'), double.member('Tamsin')];
    for (let i = 0; i < 3; i++)
      expect((await odalys.slash('echo', { words: 'x' }, { until: 'first' })).message.embeds).toHaveLength(1);
    const refused = await odalys.slash('echo', { words: 'x' });
    expect(refused.message).toMatchObject({
      content: 'One moment, please: that was a lot of questions at once. Ask again in 2 s.',
      onlyFor: odalys.person.id,
    });
    expect((await tamsin.slash('echo', { words: 'x' })).message.embeds).toHaveLength(1);
    // The computer's clock is set back by a day meanwhile: that locks nobody out.
    clock -= 86_400_000;
    ticksMs += 2000;
    expect((await odalys.slash('echo', { words: 'x' })).message.embeds).toHaveLength(1);
    expect((await metrics.expose()).body).toContain('pierhand_limited_total{platform="discord",scope="member"} 1');
  });

  it('a channel flooded by many members is given a rest; another channel is not', async () => {
    const { double } = await begin({ tuning: { perChannel: { burst: 4, perSecond: 1 } } });
    for (const name of ['Odalys', 'Tamsin', 'Ravi', 'Ingo'])
      await double.member(name).slash('echo', { words: 'x' }, { until: 'first' });
    expect((await double.member('Mbali').slash('echo', { words: 'x' })).message.content).toContain(
      'This channel is busy',
    );
    expect(
      (await double.member('Mbali').slash('echo', { words: 'x' }, { in: double.addChannel('beginners') })).message
        .embeds,
    ).toHaveLength(1);
  });

  it('a command for managers is offered to them alone, and checked again when it comes', async () => {
    const { double } = await begin();
    const manager = double.member('Odalys', { isManager: true });
    expect((await manager.slash('clubonly')).message.embeds[0]?.title).toBe('Done');
    await expect(double.member('Ingo').slash('clubonly')).rejects.toThrow('not offered to Ingo');
    // A server may offer it to others; the bot still asks for Manage Server.
    const offered =
      double.world.commands.get('everywhere')?.map(({ default_member_permissions: _taken, ...rest }) => rest) ?? [];
    double.world.commands.set('everywhere', offered);
    expect((await double.member('Ingo').slash('clubonly')).message).toMatchObject({
      content: expect.stringContaining('for those who may change') as string,
      onlyFor: double.member('Ingo').person.id,
    });
  });
});

describe('registration', () => {
  const puts = ({ double }: Started) => double.rest.requests.filter(({ method }) => method === 'PUT');

  it('is sent once, and again only when a command has changed', async () => {
    const started = await begin();
    const { double, store } = started;
    expect(puts(started)).toHaveLength(1);
    await started.bot.stop();
    const same = await startBot(double, { commands: sampleCommands, store });
    await double.waitFor(() => same.logged().includes('commands unchanged'), 'the second start');
    await same.bot.stop();
    expect(puts(started)).toHaveLength(1);
    const changed = await startBot(double, { commands: sampleCommands.slice(1), store });
    await double.waitFor(() => puts(started).length === 2, 'registration');
    expect(double.world.commands.get('everywhere')?.map(({ name }) => name)).toEqual([
      'slowly',
      'broken',
      'offers',
      'clubonly',
    ]);
    await changed.bot.stop();
  });

  it('goes to one server alone while developing', async () => {
    const { double } = (at = await start({ commands: sampleCommands }));
    const guildBot = await startBot(double, { commands: sampleCommands, env: { DISCORD_GUILD_ID: double.guild.id } });
    await double.waitFor(() => double.world.commands.has(double.guild.id), 'registration in the server');
    expect(double.rest.requests.filter(({ method }) => method === 'PUT').map(({ path }) => path)).toContain(
      `/applications/${double.world.applicationId}/guilds/${double.guild.id}/commands`,
    );
    await guildBot.bot.stop();
  });
});

describe('the end', () => {
  it('a stop lets an answer under way finish and turns new questions away kindly', async () => {
    const started = await begin({ store: await openStore({ memory: true }) });
    const { double } = started;
    const slow = double.member('Odalys').slash('slowly', { words: 'nearly done', wait: 500 });
    await double.waitFor(
      () => double.rest.requests.some(({ path }) => path.includes('/callback')),
      'the acknowledgement',
    );
    const stopped = started.bot.stop();
    expect((await double.member('Tamsin').slash('echo', { words: 'x' }, { until: 'first' })).message.content).toContain(
      'restarted',
    );
    expect((await slow).message.embeds[0]?.title).toBe('nearly done');
    await stopped;
    await expect(double.member('Tamsin').slash('echo', { words: 'x' }, { timeoutMs: 300 })).rejects.toThrow(
      NotAnswered,
    );
  });
});
