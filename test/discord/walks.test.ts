import { afterEach, describe, expect, it } from 'vitest';
import { allCommands } from '../../bot/commands/all-commands.js';
import { triage } from '../../bot/commands/triage/triage.js';
import type { DiscordDouble } from '../doubles/discord/discord-double.js';
import type { Channel } from '../doubles/discord/world.js';
import { labelsOn } from './labels-on.js';
import { start, startBot, type BotOptions, type Started } from './start-bot.js';

const HELP = 'Help with connection';
const CREATE_PUBLIC_THREADS = 1n << 35n;
const commands = allCommands.includes(triage) ? allCommands : [...allCommands, triage];

let at: Started | undefined;
const begin = async (options: BotOptions = {}): Promise<Started> => (at = await start({ commands, ...options }));
afterEach(async () => {
  const violations = at?.double.rest.violations ?? ['nothing was started'];
  await at?.stop();
  at = undefined;
  expect(violations).toEqual([]);
});

const threadsIn = ({ world }: DiscordDouble): readonly Channel[] =>
  [...world.channels.values()].filter(({ type }) => type === 11);

describe("a helper starts a walk from a member's menu", () => {
  it('in a thread of its own, which the member is added to once they have answered, and both may answer step by step', async () => {
    const { double } = await begin();
    const [odalys, tamsin, ravi] = [double.member('Odalys'), double.member('Tamsin'), double.member('Ravi')];
    const { message } = await odalys.menu(HELP, tamsin);
    expect(message.content).toContain('Connection help for Tamsin');
    expect(message.onlyFor).toBeNull();
    const [thread] = threadsIn(double);
    if (thread === undefined) throw new Error('no thread');
    expect(thread.name).toBe('Connection help: Tamsin');
    expect([...thread.threadMembers]).toEqual([odalys.person.id]);
    const [first] = tamsin.sees(thread);
    if (first === undefined) throw new Error('no step in the thread');
    expect(labelsOn(first).length).toBeGreaterThan(1);

    const chosen = labelsOn(first)[0] ?? '';
    const second = await tamsin.press(first, chosen);
    expect(second.message.channelId).toBe(thread.id);
    await double.waitFor(() => thread.threadMembers.size === 2, 'the member in the thread');
    expect(second.message.embeds[0]?.description).not.toBe(first.embeds[0]?.description);
    // The answered question keeps what was chosen and loses its buttons.
    expect(first).toMatchObject({ components: [], content: expect.stringContaining('Chosen: ') as string });
    const third = await odalys.press(second.message, 'Not sure');
    expect(third.message.embeds).toHaveLength(1);

    const stranger = await ravi.press(third.message, 'Not sure');
    expect(stranger.message.onlyFor).toBe(ravi.person.id);
    expect(labelsOn(third.message).length).toBeGreaterThan(0);
    expect((await tamsin.press(third.message, 'Not sure')).message.embeds).toHaveLength(1);
  });

  it('opens no threads in a flood, and none for who may open none themselves', async () => {
    const { double } = await begin();
    const ravi = double.member('Ravi');
    for (let i = 0; i < 6; i++) await ravi.menu(HELP, double.member(`Subject ${i}`));
    expect(threadsIn(double)).toHaveLength(3);
    expect(threadsIn(double).flatMap(({ threadMembers }) => [...threadMembers])).toEqual(Array(3).fill(ravi.person.id));
    const plain = double.member('Mbali', { mayNotOpenThreads: true });
    expect(labelsOn((await plain.menu(HELP, double.member('Tamsin'))).message).length).toBeGreaterThan(1);
    expect(threadsIn(double)).toHaveLength(3);
  });

  it('after a reply that Discord did not take the buttons work again', async () => {
    const { double } = (at = await start({ commands }, { firstResponseMs: 5000 }));
    const tamsin = double.member('Tamsin');
    const step = (await tamsin.slash('triage', {}, { in: 'direct' })).message;
    double.misbehave.rest({ status: 400, code: 50035, on: /POST \/interactions\/.*\/callback/u });
    const [label = ''] = labelsOn(step);
    await tamsin.press(step, label, { timeoutMs: 500 }).catch(() => undefined);
    const again = await tamsin.press(step, label);
    expect(again.message.content).not.toContain('just been answered');
    expect(again.message.embeds).toHaveLength(1);
  });

  it('pressing twice in a hurry answers once', async () => {
    const { double } = await begin();
    const tamsin = double.member('Tamsin');
    await tamsin.slash('triage');
    const [thread] = threadsIn(double);
    const [first] = thread === undefined ? [] : tamsin.sees(thread);
    if (thread === undefined || first === undefined) throw new Error('no step');
    const [label = ''] = labelsOn(first);
    const presses = await Promise.all([tamsin.press(first, label), tamsin.press(first, label)]);
    const said = presses.map(({ message }) => message.content);
    expect(said.filter((content) => content.includes('just been answered'))).toHaveLength(1);
    expect(tamsin.sees(thread).filter(({ embeds }) => embeds.length === 1)).toHaveLength(2);
  });

  it('"Why this?" leaves the question standing', async () => {
    const { double } = await begin();
    const tamsin = double.member('Tamsin');
    await tamsin.slash('triage');
    const [thread] = threadsIn(double);
    let step = thread === undefined ? undefined : tamsin.sees(thread)[0];
    for (let i = 0; i < 4 && step !== undefined && !labelsOn(step).includes('Why this?'); i++)
      step = (await tamsin.press(step, labelsOn(step)[0] ?? '')).message;
    if (step === undefined) throw new Error('no step');
    const why = await tamsin.press(step, 'Why this?');
    expect(labelsOn(why.message)).toContain('Go on');
    expect(labelsOn(step)).toContain('Why this?');
  });

  it('from a message: what the member wrote is read at once', async () => {
    const { double, store } = await begin();
    const tamsin = double.member('Tamsin');
    const plea = tamsin.write('usb 1-1: device descriptor read/64, error -71', double.channel);
    await double.member('Odalys').menu(HELP, plea);
    const [thread] = threadsIn(double);
    const [step] = thread === undefined ? [] : tamsin.sees(thread);
    expect(step?.embeds[0]?.description).toContain('I take it');
    const club = `discord:${double.guild.id}`;
    expect(await store.walks.active(club, `discord:${tamsin.person.id}`)).toBeNull();
    expect(await store.walks.active(club, `discord:${double.member('Odalys').person.id}`)).toMatchObject({
      memberId: `discord:${tamsin.person.id}`,
      helperId: `discord:${double.member('Odalys').person.id}`,
    });
  });

  it('in place, where the bot may not open threads; in a thread that is there already; and in a direct message', async () => {
    const { double } = await begin();
    const [odalys, tamsin] = [double.member('Odalys'), double.member('Tamsin')];
    const closed = double.addChannel('quiet');
    closed.appPermissions &= ~CREATE_PUBLIC_THREADS;
    expect(labelsOn((await odalys.menu(HELP, tamsin, { in: closed })).message).length).toBeGreaterThan(1);
    const old = double.addChannel('an older thread', { type: 11, parentId: double.channel.id });
    expect(labelsOn((await double.member('Ravi').slash('triage', {}, { in: old })).message).length).toBeGreaterThan(1);
    expect(
      labelsOn((await double.member('Mbali').slash('triage', {}, { in: 'direct' })).message).length,
    ).toBeGreaterThan(1);
    expect(threadsIn(double)).toEqual([old]);
  });

  it('in place of the notice, when Discord will not open the thread after all', async () => {
    const { double, logged } = await begin();
    double.misbehave.rest({ status: 403, code: 50013, on: /POST \/channels\/\d+\/messages\/\d+\/threads/u });
    const { message } = await double.member('Odalys').menu(HELP, double.member('Tamsin'));
    expect(labelsOn(message).length).toBeGreaterThan(1);
    expect(message.content).toBe('');
    expect(logged()).toContain('no thread could be opened');
  });

  it('one thread a walk, after a restart as well', async () => {
    const started = await begin();
    const { double, store } = started;
    await double.member('Tamsin').slash('triage');
    await started.bot.stop();
    const second = await startBot(double, { commands, store });
    await double.waitFor(() => second.bot.health().ok, 'the second bot');
    expect(labelsOn((await double.member('Tamsin').slash('triage')).message).length).toBeGreaterThan(1);
    expect(threadsIn(double)).toHaveLength(1);
    await second.bot.stop();
  });

  it('not for a bot', async () => {
    const { double } = await begin();
    const { message } = await double.member('Odalys').menu(HELP, double.member('A bot', { isBot: true }));
    expect(message).toMatchObject({
      content: 'That is a bot; choose a member, or a message of theirs.',
      onlyFor: double.member('Odalys').person.id,
    });
  });
});
