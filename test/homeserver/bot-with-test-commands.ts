/** The bot with its real settings, store and Matrix side, and a few commands of the tests' own beside the real ones. */
import { appendFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { StartError } from '../../bot/ground/start-error.js';
import { defineCommand, member, text } from '../../bot/commands/core/command.js';
import { openDeps } from '../../bot/app/compose.js';
import { createLog } from '../../bot/app/log.js';
import { startMatrix } from '../../bot/platforms/matrix/index.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import { loadSettings, secretsOf } from '../../bot/app/settings.js';

const choice = (label: string) => ({ label, run: `echo ${label}` });

const testCommands = [
  defineCommand({
    name: 'echo',
    summary: 'Says it back.',
    options: { text: text('What to say') },
    examples: ['echo hello'],
    run: async (_deps, { options, asker }) =>
      reply({
        pointsAt: NOWHERE,
        title: 'Echo',
        summary: options.text,
        facts: [{ label: 'Asked by', value: asker.memberId }],
      }),
  }),
  defineCommand({
    name: 'offer',
    summary: 'Offers three sites.',
    options: {},
    examples: ['offer'],
    run: async () =>
      reply({
        pointsAt: NOWHERE,
        title: 'Which site?',
        summary: 'Three are known.',
        choices: [choice('Fenwold Common'), choice('Cold Ridge'), choice('Quarry Field')],
      }),
  }),
  defineCommand({
    name: 'mine',
    summary: 'A private answer.',
    options: {},
    examples: ['mine'],
    run: async () =>
      reply({
        pointsAt: NOWHERE,
        title: 'Your site',
        summary: 'Kept at 51.42, 3.07.',
        audience: 'asker',
        choices: [choice('Quarry Field')],
      }),
  }),
  defineCommand({
    name: 'rule',
    summary: 'For managers.',
    options: {},
    examples: ['rule'],
    access: 'manager',
    run: async () => reply({ pointsAt: NOWHERE, title: 'Rule', summary: 'Changed.' }),
  }),
  defineCommand({
    name: 'helping',
    summary: 'Names a member.',
    options: { who: member('Whom') },
    examples: ['helping @ravi:example.org'],
    run: async (_deps, { options }) =>
      reply({ pointsAt: NOWHERE, title: 'Helping', summary: `Helping ${options.who}.` }),
  }),
  defineCommand({
    // Its effect is a line in a file, so that a test can count how often it happened.
    name: 'effect',
    summary: 'Has an effect.',
    options: { text: text('Name') },
    examples: ['effect x'],
    run: async (_deps, { options }) => {
      appendFileSync(process.env['EFFECT_FILE'] ?? '/dev/null', `${options.text}\n`);
      return reply({ pointsAt: NOWHERE, title: 'Effect', summary: `Done: ${options.text}.` });
    },
  }),
  defineCommand({
    name: 'ponder',
    summary: 'Takes two seconds.',
    options: {},
    examples: ['ponder'],
    run: async () => {
      await sleep(2000);
      return reply({ pointsAt: NOWHERE, title: 'Pondered', summary: 'It took a while.' });
    },
  }),
];

try {
  const settings = loadSettings(process.env, () => '');
  const { deps, close } = await openDeps(settings);
  const running = await startMatrix(
    {
      deps: { ...deps, commands: [...deps.commands, ...testCommands] },
      settings,
      log: createLog(settings.logLevel, secretsOf(settings)),
      metrics: createMetrics(),
      now: () => Date.now(),
    },
    process.env['LIMIT_MEMBERS'] === 'no' ? { perMember: { burst: 1000, perSecond: 1000 } } : undefined,
  );
  const end = async (): Promise<void> => {
    await running.stop();
    await close();
  };
  process.once('SIGTERM', () => void end());
  // A reminder to deliver comes from the test over standard input, a line of JSON each.
  let input = '';
  process.stdin.unref();
  process.stdin.on('data', (chunk: Buffer) => {
    input += chunk.toString();
    const lines = input.split('\n');
    input = lines.pop() ?? '';
    for (const line of lines) {
      const { reminder, words } = JSON.parse(line) as {
        reminder: Parameters<typeof running.deliver>[0];
        words: string;
      };
      void running.deliver(reminder, words).then(
        (result) => process.stdout.write(`delivered: ${result}\n`),
        (error: unknown) => process.stdout.write(`not delivered: ${String(error)}\n`),
      );
    }
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = error instanceof StartError ? 2 : 1;
}
