/** Letters to a club's box, answered by letter: a whole platform in one file, as the contributors' guide walks through it. */
import type { PlatformContext, RunningPlatform } from '../../../bot/app/platform.js';
import { outcomeLabel } from '../../../bot/app/metrics.js';
import type { Asker } from '../../../bot/commands/core/command.js';
import { runLine } from '../../../bot/commands/core/dispatch.js';
import { isProblem } from '../../../bot/ground/problem.js';
import { tidy } from '../../../bot/ground/tidy.js';
import type { Outcome } from '../../../bot/reply/reply.js';
import { commandFaults } from '../../../bot/platforms/shared/faults.js';

export interface LetterBox {
  /** Calls `take` for each letter that comes, until what it gave back is called. */
  readonly open: (take: (from: string, words: string) => void) => () => void;
  /** To one member, or on the board that the whole club reads. */
  readonly post: (to: string, words: string) => Promise<void>;
}

const NAME = 'letters';
const BOARD = 'board';
const PAGE_LIMIT = 4000;

const askerOf = (from: string): Asker => ({
  platform: NAME,
  memberId: `${NAME}:${from}`,
  displayName: tidy(from, 40),
  clubId: `${NAME}:club`,
  channelId: BOARD,
  isManager: false,
  isPrivate: false,
});

const written = (outcome: Outcome): string => {
  const choices = (outcome.choices ?? []).map(({ label, run }) => `${label}: write "${run}"`);
  if (isProblem(outcome)) return [outcome.message, ...choices].join('\n').slice(0, PAGE_LIMIT);
  const { title, cautions, summary, facts, notes } = outcome;
  const said = facts.map(({ label, value }) => `${label}: ${value}`);
  return [title, ...cautions, summary, ...said, ...notes, ...choices].join('\n').slice(0, PAGE_LIMIT);
};

export const startLetters = async (
  { deps, log, metrics, now }: PlatformContext,
  box: LetterBox,
): Promise<RunningPlatform> => {
  const underWay = new Set<Promise<void>>();
  const onError = commandFaults({ log, metrics }, NAME);

  const answer = async (from: string, words: string): Promise<void> => {
    const startedMs = performance.now();
    const outcome = await runLine(deps, words, { asker: askerOf(from), nowUtcMs: now(), onError });
    await box.post(outcome.audience === 'asker' ? from : BOARD, written(outcome));
    const seconds = (performance.now() - startedMs) / 1000;
    metrics.answered({ platform: NAME, command: 'any', outcome: outcomeLabel(outcome), seconds });
  };

  const close = box.open((from, words) => {
    const answering: Promise<void> = answer(from, words)
      .catch((error: unknown) => onError(error, 'any'))
      .finally(() => underWay.delete(answering));
    underWay.add(answering);
  });

  return {
    name: NAME,
    deliver: async ({ memberId, to }, text) => {
      await box.post(to === 'member' ? memberId.slice(NAME.length + 1) : BOARD, text);
      return 'sent';
    },
    health: () => ({ ok: true, detail: 'the letter box is open' }),
    stop: async () => {
      close();
      await Promise.all(underWay);
    },
  };
};
