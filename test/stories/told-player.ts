/** Plays one walk through the real `triage` command as a member would: words first, then the choices shown, by their lines. */
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { isProblem } from '../../bot/ground/problem.js';
import { type Reply } from '../../bot/reply/reply.js';

/** Who answers: by step id, never by wording, except where a step has no id known. */
export interface Speaker {
  /** Said after `triage`; '' opens without words. */
  readonly opening: string;
  /** Answers path, system or client. */
  readonly context: (field: string) => string;
  readonly answers: (check: string, offered: readonly string[]) => string;
  readonly tries: (fault: string) => 'works' | 'same' | 'changed' | 'could-not';
  /** The numbers of a miss in one line, where they are asked for and the member has them. */
  readonly numbers?: () => string | null;
  /** Lets the cure be counted for the club. */
  readonly counts?: boolean;
}

export interface Turn {
  readonly kind: string;
  readonly id: string;
  readonly answer: string;
  readonly shown: string;
}

export interface Played {
  readonly end: 'cured' | 'handed on' | 'lost';
  /** Questions about the trouble and remedies tried; the three about the set-up are counted apart. */
  readonly steps: number;
  readonly contextQuestions: number;
  readonly turns: readonly Turn[];
  /** What stood at the end, likeliest first. */
  readonly standing: readonly { readonly faultId: string; readonly probability: number }[];
  /** The last reply, as text. */
  readonly lastShown: string;
}

const CONTEXT: ReadonlySet<string> = new Set(['path', 'system', 'client']);
const MOST_TURNS = 40;
const NOW_UTC_MS = Date.UTC(2026, 10, 25, 21, 0);

export const textOf = ({ summary, facts, notes }: Reply): string =>
  [summary, ...(facts ?? []).map(({ label, value }) => `${label}: ${value}`), ...(notes ?? [])].join('\n');

const runFor = (
  reply: Reply,
  step: string,
  wanted: string,
): { readonly run: string; readonly answer: string } | null => {
  const offered = (reply.choices ?? []).flatMap(({ run }) => {
    const found = / answer:([a-z0-9-]+)\.([a-z0-9-]+)/u.exec(run);
    return found === null || found[1] !== step ? [] : [{ run, answer: found[2] ?? '' }];
  });
  return (
    offered.find(({ answer }) => answer === wanted) ??
    offered.find(({ answer }) => answer === 'unsure') ??
    offered[0] ??
    null
  );
};

const offeredIn = (reply: Reply, step: string): string[] =>
  (reply.choices ?? []).flatMap(({ run }) => {
    const found = / answer:([a-z0-9-]+)\.([a-z0-9-]+)/u.exec(run);
    return found === null || found[1] !== step ? [] : [found[2] ?? ''];
  });

interface StepData {
  readonly kind: string;
  readonly id: string;
}

/** What the speaker says to a step. */
const wantedFor = (speaker: Speaker, { kind, id }: StepData, offered: readonly string[]): string => {
  if (kind === 'try') return speaker.tries(id);
  return CONTEXT.has(id) ? speaker.context(id) : speaker.answers(id, offered);
};

const ENDS: ReadonlyMap<string, Played['end']> = new Map([
  ['done', 'cured'],
  ['handOn', 'handed on'],
]);

const stepIn = (reply: Reply): StepData => reply.data['step'] as unknown as StepData;

/** Told of each line how many milliseconds its answer took. */
export interface Stopwatch {
  readonly nowMs: () => number;
  readonly took: (ms: number) => void;
}

type Ask = (line: string) => Promise<Reply>;

/** One turn: what was said, and the reply to it; null where there was no way on. */
const takeTurn = async (
  ask: Ask,
  speaker: Speaker,
  before: Reply,
  mayGiveNumbers: boolean,
): Promise<{ readonly turn: Turn; readonly reply: Reply | null; readonly shown: Reply }> => {
  const { kind, id } = stepIn(before);
  const numbers = id === 'numbers' && mayGiveNumbers ? (speaker.numbers?.() ?? null) : null;
  if (numbers !== null) {
    const turn = { kind: 'ask', id: 'numbers', answer: numbers, shown: textOf(before) };
    return { turn, reply: await ask(`triage ${numbers}`), shown: before };
  }
  const wanted = wantedFor(speaker, { kind, id }, offeredIn(before, id));
  const more = (before.choices ?? []).find(({ run }) => run.endsWith(' do:more'));
  // A press, not a step: the question stays the same.
  const shown = more !== undefined && !offeredIn(before, id).includes(wanted) ? await ask(more.run) : before;
  const chosen = runFor(shown, id, wanted);
  const turn = { kind, id, answer: chosen?.answer ?? '(no way on)', shown: textOf(shown) };
  return { turn, reply: chosen === null ? null : await ask(chosen.run), shown };
};

/** The asker must be new to the club: a walk under way would go on instead. @throws where the command answers a choice of its own with a problem: that is a fault of the bot's. */
export const playWalk = async (deps: Deps, asker: Asker, speaker: Speaker, stopwatch?: Stopwatch): Promise<Played> => {
  const ask: Ask = async (line) => {
    const began = stopwatch?.nowMs() ?? 0;
    const outcome = await runLine(deps, line, {
      asker,
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error instanceof Error ? error : new Error(String(error));
      },
    });
    stopwatch?.took(stopwatch.nowMs() - began);
    if (isProblem(outcome)) throw new Error(`${line}: ${outcome.problem}: ${outcome.message}`);
    return outcome;
  };
  let reply = await ask(`triage ${speaker.opening.replace(/\s*\n\s*/gu, ' ')}`.trim());
  const turns: Turn[] = [];
  while (turns.length < MOST_TURNS && !ENDS.has(stepIn(reply).kind)) {
    const taken = await takeTurn(ask, speaker, reply, !turns.some(({ id }) => id === 'numbers'));
    turns.push(taken.turn);
    reply = taken.reply ?? taken.shown;
    if (taken.reply === null) break;
  }
  const last = stepIn(reply);
  const count = last.kind === 'done' && speaker.counts === true ? runFor(reply, 'count', 'yes') : null;
  if (count !== null) await ask(count.run);
  const contextQuestions = turns.filter(({ kind, id }) => kind === 'ask' && CONTEXT.has(id)).length;
  return {
    end: ENDS.get(last.kind) ?? 'lost',
    steps: turns.length - contextQuestions,
    contextQuestions,
    turns,
    standing: (reply.data['standing'] ?? []) as unknown as Played['standing'],
    lastShown: textOf(reply),
  };
};
