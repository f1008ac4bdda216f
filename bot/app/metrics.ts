/** What is counted while the bot runs: answers, errors, completions, reminders; shown on the metrics port, no member named. */
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';
import type { PlatformName } from '../ground/platform-name.js';
import { isProblem } from '../ground/problem.js';
import type { Outcome } from '../reply/reply.js';
import { ownVersion } from './version.js';

export interface Metrics {
  /** One answer given; seconds from the question's arrival to the answer's acceptance. */
  readonly answered: (answer: {
    readonly platform: PlatformName;
    readonly command: string;
    readonly outcome: AnswerOutcome;
    readonly seconds: number;
  }) => void;
  /** One list of suggestions; `late`: not ready in time, an empty list was sent. */
  readonly completed: (completion: {
    readonly platform: PlatformName;
    readonly seconds: number;
    readonly late: boolean;
  }) => void;
  /** A fault of ours or of a server; `kind` is a short fixed word ("command", "send", "expired", "store"). */
  readonly failed: (platform: PlatformName, kind: string) => void;
  /** A question refused because too many came at once: of a member, in a channel, or of all together. */
  readonly limited: (platform: PlatformName, scope: 'member' | 'channel' | 'all') => void;
  /** An event that had been answered before. */
  readonly duplicate: (platform: PlatformName) => void;
  readonly reminder: (platform: PlatformName, result: 'sent' | 'gone' | 'failed') => void;
  /** The connection changed; `event` is a short fixed word ("ready", "lost", "resumed"). */
  readonly connection: (platform: PlatformName, event: string) => void;
  /** Everything in the Prometheus text format. */
  readonly expose: () => Promise<{ readonly contentType: string; readonly body: string }>;
}

/** A problem by its code's kind alone: codes are few and fixed. */
export type AnswerOutcome = 'info' | 'good' | 'caution' | 'danger' | 'problem';

export const outcomeLabel = (outcome: Outcome): AnswerOutcome => (isProblem(outcome) ? 'problem' : outcome.level);

/** @param withProcess also memory, processor time and event-loop lag of this process; once a process */
export const createMetrics = (withProcess = false): Metrics => {
  const register = new Registry();
  if (withProcess) collectDefaultMetrics({ register });
  const registers = [register];
  new Gauge({
    name: 'pierhand_build_info',
    help: 'Always 1; the version stands in the label.',
    labelNames: ['version'],
    registers,
  }).set({ version: ownVersion() }, 1);
  const answers = new Counter({
    name: 'pierhand_answers_total',
    help: 'Answers given.',
    labelNames: ['platform', 'command', 'outcome'],
    registers,
  });
  const answerSeconds = new Histogram({
    name: 'pierhand_answer_seconds',
    help: 'From question to accepted answer.',
    labelNames: ['platform', 'command'],
    buckets: [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2, 3, 5, 10],
    registers,
  });
  const completionSeconds = new Histogram({
    name: 'pierhand_completion_seconds',
    help: 'From keystroke to suggestions.',
    labelNames: ['platform'],
    buckets: [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 2, 3],
    registers,
  });
  const completionsLate = new Counter({
    name: 'pierhand_completions_late_total',
    help: 'Suggestions not ready in time.',
    labelNames: ['platform'],
    registers,
  });
  const failures = new Counter({
    name: 'pierhand_failures_total',
    help: 'Faults of the bot or of a server.',
    labelNames: ['platform', 'kind'],
    registers,
  });
  const limits = new Counter({
    name: 'pierhand_limited_total',
    help: 'Questions refused because too many came at once.',
    labelNames: ['platform', 'scope'],
    registers,
  });
  const duplicates = new Counter({
    name: 'pierhand_duplicates_total',
    help: 'Events that had been answered before.',
    labelNames: ['platform'],
    registers,
  });
  const reminders = new Counter({
    name: 'pierhand_reminders_total',
    help: 'Reminders by result.',
    labelNames: ['platform', 'result'],
    registers,
  });
  const connections = new Counter({
    name: 'pierhand_connection_events_total',
    help: 'Connections made, lost and resumed.',
    labelNames: ['platform', 'event'],
    registers,
  });
  return {
    answered: ({ platform, command, outcome, seconds }) => {
      answers.inc({ platform, command, outcome });
      answerSeconds.observe({ platform, command }, seconds);
    },
    completed: ({ platform, seconds, late }) => {
      completionSeconds.observe({ platform }, seconds);
      if (late) completionsLate.inc({ platform });
    },
    failed: (platform, kind) => failures.inc({ platform, kind }),
    limited: (platform, scope) => limits.inc({ platform, scope }),
    duplicate: (platform) => duplicates.inc({ platform }),
    reminder: (platform, result) => reminders.inc({ platform, result }),
    connection: (platform, event) => connections.inc({ platform, event }),
    expose: async () => ({ contentType: register.contentType, body: await register.metrics() }),
  };
};
