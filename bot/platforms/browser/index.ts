/** A page on this machine that shows a club what its members will see: two members side by side, without any account. */
import { readFile } from 'node:fs/promises';
import type { ServerResponse } from 'node:http';
import path from 'node:path';
import type { PlatformContext, RunningPlatform } from '../../app/platform.js';
import { outcomeLabel } from '../../app/metrics.js';
import type { Asker } from '../../commands/core/command.js';
import { projectRoot } from '../../ground/project-root.js';
import { problem } from '../../ground/problem.js';
import { within } from '../../ground/within.js';
import type { Outcome } from '../../reply/reply.js';
import { tooManyWords } from '../shared/busy-words.js';
import { chartOrWords } from '../shared/chart-or-words.js';
import { chartFaults, commandFaults } from '../shared/faults.js';
import { createRateLimit } from '../shared/rate-limit.js';
import { createChannel } from './channel.js';
import { LOOPBACK, plain, startGuardedServer, type Routes, type WebAnswer } from './guarded-server.js';
import { MEMBERS } from './members.js';
import { createPictures } from './pictures.js';
import { readQuestion, type AskedQuestion } from './read-question.js';
import { shownAnswer } from './write-message.js';
import { tableOf } from '../../ground/table-of.js';

const FILES = tableOf({
  '/': { name: 'page.html', contentType: 'text/html; charset=utf-8' },
  '/page.css': { name: 'page.css', contentType: 'text/css; charset=utf-8' },
  '/page.js': { name: 'page.js', contentType: 'text/javascript; charset=utf-8' },
});
const LIMIT = { burst: 20, perSecond: 5 };
const SAYS_SO_AFTER_MS = 1000;
const READING = problem('reading', 'Reading the file … You can ask on meanwhile.');

const json = (body: unknown): WebAnswer => ({
  status: 200,
  contentType: 'application/json; charset=utf-8',
  body: JSON.stringify(body),
});

/**
 * `port` 0: any free one. Answers each member's questions in their order.
 * @throws StartError when the port cannot be had
 */
export const startBrowser = async (
  context: PlatformContext,
  port: number,
): Promise<{ readonly platform: RunningPlatform; readonly address: string }> => {
  const { deps, log, metrics, now } = context;
  const folder = path.join(projectRoot(), 'bot/platforms/browser/page');
  const channel = createChannel();
  const pictures = createPictures();
  const limit = createRateLimit(LIMIT);
  const turns = new Map<string, Promise<void>>();
  const onCommandFault = commandFaults(context, 'browser');
  const onChartFault = chartFaults(context, 'browser');
  const onPageFault = (error: unknown): void => {
    log.error({ err: error }, 'the page failed to answer');
    metrics.failed('browser', 'send');
  };

  const drawn = (outcome: Outcome): Promise<string | null> =>
    chartOrWords(outcome, pictures.draw, (error) => {
      onChartFault(error);
      return null;
    });

  const answer = async (asker: Asker, { text, run }: AskedQuestion): Promise<void> => {
    const startedMs = performance.now();
    const outcome = await run({ asker, nowUtcMs: now(), onError: onCommandFault });
    const isPrivate = outcome.audience === 'asker';
    const others = [...MEMBERS.values()].map(({ memberId }) => memberId).filter((id) => id !== asker.memberId);
    const shown = shownAnswer(outcome, deps.commands, await drawn(outcome));
    // The asker saw the question at once; the others see it only with an answer that is theirs to read.
    if (!isPrivate) channel.say({ kind: 'question', from: asker.displayName, text }, others);
    channel.say(shown, isPrivate ? [asker.memberId] : null);
    const seconds = (performance.now() - startedMs) / 1000;
    metrics.answered({ platform: 'browser', command: 'any', outcome: outcomeLabel(outcome), seconds });
  };

  /** With a word at once where it takes long. */
  const answerFile = async (asker: Asker, question: AskedQuestion): Promise<void> => {
    const answering = answer(asker, question);
    const late = await within(
      answering.then(() => false),
      SAYS_SO_AFTER_MS,
      true,
    );
    if (late) channel.say(shownAnswer(READING, deps.commands, null), [asker.memberId]);
    await answering;
  };

  const say = (asker: Asker, question: AskedQuestion): WebAnswer => {
    const refused = limit.take(asker.memberId, now());
    if (refused !== null) return plain(429, tooManyWords(refused.waitSeconds));
    channel.say({ kind: 'question', from: asker.displayName, text: question.text }, [asker.memberId]);
    const { memberId } = asker;
    // A file waits for what was asked before it, and nothing asked later waits for the file.
    const lane = question.bringsFile ? `${memberId} file` : memberId;
    const before = Promise.all([turns.get(memberId), turns.get(lane)]);
    const answering = question.bringsFile ? answerFile : answer;
    turns.set(lane, before.then(() => answering(asker, question)).catch(onPageFault));
    return json({});
  };

  const get = async ({ pathname }: URL): Promise<WebAnswer> => {
    const file = FILES.get(pathname);
    if (file !== undefined)
      return { status: 200, contentType: file.contentType, body: await readFile(path.join(folder, file.name)) };
    if (pathname === '/favicon.ico') return { status: 204, contentType: 'image/x-icon', body: '' };
    if (pathname === '/commands')
      return json(
        deps.commands.map(({ name, summary, examples }) => ({ name, summary, example: examples[0] ?? name })),
      );
    const png = pictures.at(pathname);
    return png === undefined
      ? plain(404, 'There is nothing here.')
      : { status: 200, contentType: 'image/png', body: png };
  };

  const routes: Routes = {
    get,
    post: async ({ pathname, searchParams }, form) => {
      const asker = MEMBERS.get(searchParams.get('member') ?? '');
      if (pathname !== '/say' || asker === undefined) return plain(404, 'There is nothing here.');
      const question = readQuestion(deps, form, asker);
      return question === null ? plain(400, 'Nothing was asked.') : say(asker, question);
    },
    events: ({ pathname, searchParams }, response) => {
      const asker = MEMBERS.get(searchParams.get('member') ?? '');
      if (pathname !== '/events' || asker === undefined) return false;
      followAsEvents(asker, response);
      return true;
    },
  };

  const followAsEvents = ({ memberId }: Asker, response: ServerResponse): void => {
    response.writeHead(200, { 'content-type': 'text/event-stream; charset=utf-8' });
    response.write(':\n\n');
    const leave = channel.follow(memberId, ({ id, readers, shown }) => {
      const isPrivate = shown.kind === 'answer' && readers !== null;
      response.write(`id: ${id}\ndata: ${JSON.stringify({ ...shown, isPrivate })}\n\n`);
    });
    response.on('close', leave);
  };

  const server = await startGuardedServer(port, routes, onPageFault);
  return {
    address: `http://${LOOPBACK}:${server.port}/`,
    platform: {
      name: 'browser',
      deliver: async ({ memberId, to }, text) => {
        const shown = shownAnswer({ problem: 'reminder', message: text }, deps.commands, null);
        channel.say({ ...shown, level: 'info', title: 'Reminder' }, to === 'member' ? [memberId] : null);
        return 'sent';
      },
      health: () => ({ ok: true, detail: `page on ${LOOPBACK}:${server.port}` }),
      stop: async () => {
        await Promise.allSettled(turns.values());
        await server.stop();
      },
    },
  };
};
