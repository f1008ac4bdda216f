import { describe, expect, it, type TestContext } from 'vitest';
import { StoreError, type Store } from '../../bot/store/store.js';
import { openStore } from '../../bot/store/open-store.js';
import { startDiscordDouble, type DiscordDouble, type DoubleOptions } from '../doubles/discord/discord-double.js';
import { NotAnswered } from '../doubles/discord/members.js';
import { sampleCommands } from './sample-commands.js';
import { start, startBot, type BotOptions, type Started } from './start-bot.js';

const CALLBACK = /\/callback$/u;
const EDIT = /^PATCH \/webhooks\//u;

// Most of these wait for a library's own patience, so they run side by side: each has its own double, and ends it.
const endsWith = ({ onTestFinished }: TestContext, started: Started): Started => {
  onTestFinished(async () => {
    await started.stop();
    expect(started.double.rest.violations).toEqual([]);
  });
  return started;
};
const begin = async (
  context: TestContext,
  options: BotOptions = {},
  doubleOptions: DoubleOptions = {},
): Promise<Started> =>
  endsWith(
    context,
    await start(
      { commands: sampleCommands, ...options, tuning: { deferAfterMs: 150, ...options.tuning } },
      doubleOptions,
    ),
  );
/** One bot, the test's own, on a double that misbehaved before it came. */
const beginOn = async (context: TestContext, double: DiscordDouble, options: BotOptions = {}): Promise<Started> => {
  const one = await startBot(double, { commands: sampleCommands, ...options });
  return endsWith(context, {
    double,
    ...one,
    stop: async () => {
      await one.bot.stop();
      await double.close();
      await one.store.close();
    },
  });
};
const isWell = async ({ double, bot }: Started, name = 'Mbali'): Promise<void> => {
  await double.waitFor(() => bot.health().ok, 'the bot to be well again');
  expect((await double.member(name).slash('echo', { words: 'still here' })).message.embeds[0]?.title).toBe(
    'still here',
  );
};
/** How many answers with this title there are, anywhere. */
const answersTitled = ({ double }: Started, title: string): number =>
  [...double.world.messages.values()].filter(({ embeds, isDeleted }) => !isDeleted && embeds[0]?.title === title)
    .length;

describe.concurrent("Discord's servers misbehave", () => {
  it.for([
    ['429 with Retry-After', { status: 429, retryAfterSeconds: 0.3 }],
    ['500', { status: 500 }],
    ['502, twice', { status: 502, times: 2 }],
  ] as const)('%s at the first response: answered all the same, once', async ([, fault], context) => {
    const started = await begin(context);
    started.double.misbehave.rest({ ...fault, on: CALLBACK });
    await started.double.member('Odalys').slash('echo', { words: 'hello' });
    expect(answersTitled(started, 'hello')).toBe(1);
  });

  it.for([
    ['429 with Retry-After', { status: 429, retryAfterSeconds: 0.3 }],
    ['500, twice', { status: 500, times: 2 }],
  ] as const)('%s while a late answer is filled in: it comes, once', async ([, fault], context) => {
    const started = await begin(context);
    started.double.misbehave.rest({ ...fault, on: EDIT });
    await started.double.member('Odalys').slash('slowly', { words: 'hello' });
    expect(answersTitled(started, 'hello')).toBe(1);
  });

  it.for(['echo', 'slowly'])(
    'a lost response to the first response of %s: the answer is there, once',
    async (command, context) => {
      const started = await begin(context);
      started.double.misbehave.rest({ status: 502, on: CALLBACK, afterProcessing: true });
      await started.double.member('Odalys').slash(command, { words: 'hello' });
      expect(answersTitled(started, 'hello')).toBe(1);
    },
  );

  it('nothing but 500: not answered, logged with the reason, and the bot lives', async (context) => {
    const started = await begin(context);
    started.double.misbehave.rest({ status: 500, on: CALLBACK, times: 5 });
    await expect(
      started.double.member('Odalys').slash('echo', { words: 'hello' }, { timeoutMs: 2500 }),
    ).rejects.toThrow(NotAnswered);
    expect(started.logged()).toContain('an interaction could not be answered');
    expect((await started.metrics.expose()).body).toContain(
      'pierhand_failures_total{platform="discord",kind="send"} 1',
    );
    await isWell(started);
  });

  it.for(['echo', 'slowly'])(
    'an expired interaction (404) to %s is logged and left; the next is answered',
    async (command, context) => {
      const started = await begin(context);
      started.double.misbehave.rest({ status: 404, code: 10062, on: CALLBACK });
      await expect(
        started.double.member('Odalys').slash(command, { words: 'hello' }, { timeoutMs: 700 }),
      ).rejects.toThrow(NotAnswered);
      await started.double.waitFor(() => started.logged().includes('expired'), 'the log');
      expect(started.double.rest.requests.filter(({ path }) => CALLBACK.test(path))).toHaveLength(1);
      expect((await started.metrics.expose()).body).toContain(
        'pierhand_failures_total{platform="discord",kind="expired"} 1',
      );
      await isWell(started);
    },
  );

  it('suggestions that come too late for Discord harm nothing', async (context) => {
    const started = await begin(context);
    started.double.misbehave.rest({ status: 404, code: 10062, on: CALLBACK });
    await expect(
      started.double.member('Odalys').complete('echo', 'words', 'm', {}, { timeoutMs: 500 }),
    ).rejects.toThrow(NotAnswered);
    await isWell(started);
  });

  it('registration that fails at first is sent again', async (context) => {
    const double = await startDiscordDouble();
    double.misbehave.rest({ status: 500, on: /^PUT/u, times: 2 });
    const one = await beginOn(context, double);
    await double.ready();
    await isWell(one);
  });

  it('commands that are refused: not well, with what Discord answered, until they are taken', async (context) => {
    const double = await startDiscordDouble();
    // Discord's documentation, "HTTP response codes": 400, the request was malformed. It mends by no waiting.
    double.misbehave.rest({ status: 400, on: /^PUT/u, times: 1 });
    const one = await beginOn(context, double);
    await double.waitFor(() => !one.bot.health().ok, 'the refusal to be seen');
    expect(one.bot.health()).toEqual({ ok: false, detail: 'commands not registered: Discord answered 400' });
    await double.ready();
    await double.waitFor(() => one.bot.health().ok, 'the bot to be well');
  });

  it('out of reach at the start: the bot keeps trying, is not well meanwhile, and answers when Discord is back', async (context) => {
    const double = await startDiscordDouble();
    double.misbehave.rest({ status: 502, on: /gateway\/bot/u, times: 6 });
    const one = await beginOn(context, double);
    expect(one.bot.health()).toEqual({ ok: false, detail: 'Discord cannot be reached' });
    await double.ready();
    await isWell(one);
  });
});

describe.concurrent('the gateway misbehaves', () => {
  it('does not let the bot in for a while: the start goes on, and the bot answers once it is in', async (context) => {
    const double = await startDiscordDouble();
    double.misbehave.closeIdentify = 4000;
    const one = await beginOn(context, double, { tuning: { connectPatienceMs: 200 } });
    expect(one.bot.health().ok).toBe(false);
    double.misbehave.closeIdentify = null;
    await double.ready();
    await isWell(one);
  });

  it('says an event twice: answered once, and logged', async (context) => {
    const started = await begin(context);
    started.double.misbehave.duplicateDispatches = 1;
    await started.double.member('Odalys').slash('echo', { words: 'hello' });
    await started.double.waitFor(() => started.logged().includes('came again'), 'the log');
    expect(started.double.rest.requests.filter(({ path }) => CALLBACK.test(path))).toHaveLength(1);
    expect(answersTitled(started, 'hello')).toBe(1);
    expect((await started.metrics.expose()).body).toContain('pierhand_duplicates_total{platform="discord"} 1');
  });

  it('says an event to two processes that share the store: answered once', async (context) => {
    const started = await begin(context);
    const second = await startBot(started.double, { commands: sampleCommands, store: started.store });
    await started.double.ready(2);
    await started.double.member('Odalys').slash('echo', { words: 'hello' });
    expect(started.double.rest.requests.filter(({ path }) => CALLBACK.test(path))).toHaveLength(1);
    await second.bot.stop();
  });

  it('drops the socket in mid-answer: the answer still comes, and the session is resumed', async (context) => {
    const started = await begin(context);
    const { double } = started;
    const asked = double.member('Odalys').slash('slowly', { words: 'hello', wait: 400 });
    await double.waitFor(() => double.rest.requests.some(({ path }) => CALLBACK.test(path)), 'the acknowledgement');
    double.gateway.dropSockets();
    expect((await asked).message.embeds[0]?.title).toBe('hello');
    await isWell(started);
    expect(double.gateway.log.resumes).toBe(1);
    expect(double.gateway.log.identifies).toHaveLength(1);
  });

  it('a question asked while the socket was down is answered after the resume, once', async (context) => {
    const started = await begin(context);
    const { double } = started;
    double.gateway.dropSockets();
    await double.waitFor(() => double.gateway.liveSessions() === 0, 'the socket to close');
    expect((await double.member('Odalys').slash('echo', { words: 'meanwhile' })).message.embeds[0]?.title).toBe(
      'meanwhile',
    );
    expect(answersTitled(started, 'meanwhile')).toBe(1);
    expect((await started.metrics.expose()).body).toMatch(
      /connection_events_total\{platform="discord",event="resumed"\} 1/u,
    );
  });

  it('leaves heartbeats unanswered: the bot gives the connection up and makes a new one', async (context) => {
    const started = await begin(context, {}, { heartbeatMs: 250 });
    const { double } = started;
    await double.waitFor(() => double.gateway.log.heartbeats >= 2, 'heartbeats');
    double.misbehave.withholdHeartbeatAcks = true;
    await double.waitFor(() => started.logged().includes('connection lost'), 'the bot to notice');
    double.misbehave.withholdHeartbeatAcks = false;
    await isWell(started);
    expect(double.gateway.log.resumes + double.gateway.log.identifies.length).toBeGreaterThan(1);
  });

  it('refuses the resume: the bot identifies afresh', async (context) => {
    const started = await begin(context);
    const { double } = started;
    double.misbehave.refuseResumes = 1;
    double.gateway.dropSockets();
    await double.waitFor(() => double.gateway.log.identifies.length === 2, 'a new identify');
    await isWell(started);
    expect(double.gateway.log.resumes).toBe(0);
  });

  it.for([
    ['asks to reconnect', (started: Started) => started.double.gateway.askToReconnect(), 'resumes'],
    [
      'calls the session invalid but resumable',
      (started: Started) => started.double.gateway.invalidateSessions(true),
      'resumes',
    ],
    ['calls the session invalid', (started: Started) => started.double.gateway.invalidateSessions(false), 'identifies'],
  ] as const)('%s: the bot comes back', async ([, misbehave, by], context) => {
    const started = await begin(context);
    const { log } = started.double.gateway;
    misbehave(started);
    await started.double.waitFor(() => (by === 'resumes' ? log.resumes === 1 : log.identifies.length === 2), by);
    await isWell(started);
  });
});

describe.concurrent('the store misbehaves', () => {
  it('questions are answered while it is away', async (context) => {
    const store = await openStore({ memory: true });
    const away = async (): Promise<never> => {
      throw new StoreError('store-unavailable', 'The store is away.');
    };
    let isAway = false;
    const shaky: Store = {
      ...store,
      events: {
        ...store.events,
        claim: (key, now) => (isAway ? away() : store.events.claim(key, now)),
        answered: (key) => (isAway ? away() : store.events.answered(key)),
      },
    };
    const started = await begin(context, { store: shaky });
    isAway = true;
    started.double.misbehave.duplicateDispatches = 1;
    await started.double.member('Odalys').slash('echo', { words: 'hello' });
    expect(answersTitled(started, 'hello')).toBe(1);
    expect(started.logged()).toContain('could not say whether this was answered');
  });

  it('questions are answered while it dawdles, within three seconds', async (context) => {
    const store = await openStore({ memory: true });
    const never = new Promise<boolean>(() => undefined);
    const dawdling: Store = { ...store, events: { ...store.events, claim: () => never } };
    const started = await begin(context, { store: dawdling });
    // The double refuses a first response after three seconds, as Discord does.
    expect((await started.double.member('Odalys').slash('echo', { words: 'hello' })).message.embeds[0]?.title).toBe(
      'hello',
    );
  });
});
