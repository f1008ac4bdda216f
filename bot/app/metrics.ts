/** What is counted while the bot runs: answers, errors, completions, reminders; shown on the metrics port, no member named. */
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';
import type { PlatformName } from '../ground/platform-name.js';
import { isProblem } from '../ground/problem.js';
import type { Outcome } from '../reply/reply.js';
import type { HealthPart } from './health-part.js';
import { ownVersion } from './version.js';

/** What may go wrong: in a command, with its picture, in sending, … */
const FAILURES = ['command', 'store', 'chart', 'send', 'expired', 'completion', 'register', 'connect', 'sync'] as const;
const LIMITED = ['member', 'channel', 'all'] as const;
const REMINDER_RESULTS = ['sent', 'gone', 'failed'] as const;
const CONNECTION_EVENTS = ['ready', 'resumed', 'lost', 'closed', 'refused'] as const;

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
  /** A fault of ours or of a server. */
  readonly failed: (platform: PlatformName, kind: (typeof FAILURES)[number]) => void;
  /** A question refused because too many came at once: of a member, in a channel, or of all together. */
  readonly limited: (platform: PlatformName, scope: (typeof LIMITED)[number]) => void;
  /** An event that had been answered before. */
  readonly duplicate: (platform: PlatformName) => void;
  readonly reminder: (platform: PlatformName, result: (typeof REMINDER_RESULTS)[number]) => void;
  /** The connection changed. */
  readonly connection: (platform: PlatformName, event: (typeof CONNECTION_EVENTS)[number]) => void;
  /** From now on also shown, as it stands when it is asked for: which parts are well, as `/health` has them, and the last backup's time. */
  readonly watch: (parts: () => readonly HealthPart[], lastBackupUtcMs: () => number | null) => void;
  /** Everything in the Prometheus text format. */
  readonly expose: () => Promise<{ readonly contentType: string; readonly body: string }>;
}

/** A problem by its code's kind alone: codes are few and fixed. */
export type AnswerOutcome = 'info' | 'good' | 'caution' | 'danger' | 'problem';

export const outcomeLabel = (outcome: Outcome): AnswerOutcome => (isProblem(outcome) ? 'problem' : outcome.level);

/**
 * @param withProcess also memory, processor time and event-loop lag of this process; once a process
 * @param platforms what is counted for these begins at 0: Prometheus sees no step in a figure that begins at 1
 */
export const createMetrics = (withProcess = false, platforms: readonly PlatformName[] = []): Metrics => {
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
  for (const platform of platforms) {
    completionsLate.inc({ platform }, 0);
    duplicates.inc({ platform }, 0);
    for (const kind of FAILURES) failures.inc({ platform, kind }, 0);
    for (const scope of LIMITED) limits.inc({ platform, scope }, 0);
    for (const result of REMINDER_RESULTS) reminders.inc({ platform, result }, 0);
    for (const event of CONNECTION_EVENTS) connections.inc({ platform, event }, 0);
  }
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
    watch: (parts, lastBackupUtcMs) => {
      new Gauge({
        name: 'pierhand_part_well',
        help: '1 while /health calls the part (a platform, or the store) well, else 0.',
        labelNames: ['part'],
        registers,
        collect() {
          for (const { name, health } of parts()) this.set({ part: name }, health().ok ? 1 : 0);
        },
      });
      new Gauge({
        name: 'pierhand_last_backup_timestamp_seconds',
        help: 'When npm run backup last succeeded on this data folder; absent where it never has.',
        registers,
        collect() {
          const utcMs = lastBackupUtcMs();
          this.remove();
          if (utcMs !== null) this.set(utcMs / 1000);
        },
      });
    },
    expose: async () => ({ contentType: register.contentType, body: await register.metrics() }),
  };
};
