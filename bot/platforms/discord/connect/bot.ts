/** What every part of the Discord platform works with, and the figures that tests may change. */
import type { REST } from 'discord.js';
import type { Asker } from '../../../commands/core/command.js';
import type { ErrorSink } from '../../../commands/core/dispatch.js';
import type { Outcome } from '../../../reply/reply.js';
import { renderChart } from '../../../reply/render-chart.js';
import type { PlatformContext } from '../../../app/platform.js';
import type { AnswerOnce } from '../../shared/answer-once.js';
import { BUSY_WORDS, tooManyWords } from '../../shared/busy-words.js';
import { chartOrWords } from '../../shared/chart-or-words.js';
import { chartFaults, commandFaults } from '../../shared/faults.js';
import type { BucketSize, RateLimit } from '../../shared/rate-limit.js';
import type { TakeTurn, Turns } from '../../shared/take-turns.js';
import { writeOutcome, type DiscordMessage } from '../write/write-reply.js';

export interface Tuning {
  /** An answer not ready after this is acknowledged first (Discord gives up at 3 s). */
  readonly deferAfterMs: number;
  /** Where a question would wait longer than this for its turn, it is turned away kindly. */
  readonly busyAfterMs: number;
  /** The same while more is asked than can be answered; half of what the wait may be, as some turns take longer than others. */
  readonly busyAfterMsWhenOverrun: number;
  /** Where others would wait longer than this, an answer goes out with words in place of its picture. */
  readonly pictureWithinMs: number;
  /** The same in a crowd that lasts: there, a picture would keep dozens waiting. */
  readonly pictureWithinMsInCrowd: number;
  /** Suggestions not ready after this are sent empty. */
  readonly completeWithinMs: number;
  readonly perMember: BucketSize;
  readonly perChannel: BucketSize;
  readonly threads: BucketSize;
  /** Suggestions while typing, for one member. */
  readonly completions: BucketSize;
  /** Milliseconds by a clock that never jumps, for the limits. */
  readonly ticksMs: () => number;
  /** Answers under way at a stop are waited for this long. */
  readonly stopWithinMs: number;
  /** Waits between attempts to reach Discord at the start. */
  readonly connectDelaysMs: readonly number[];
  /** The start goes on without Discord after this, while it is still letting the bot in (many shards take minutes). */
  readonly connectPatienceMs: number;
}

export const DEFAULT_TUNING: Tuning = {
  deferAfterMs: 700,
  busyAfterMs: 1500,
  busyAfterMsWhenOverrun: 60,
  pictureWithinMs: 300,
  pictureWithinMsInCrowd: 40,
  completeWithinMs: 1500,
  perMember: { burst: 10, perSecond: 0.5 },
  perChannel: { burst: 40, perSecond: 4 },
  threads: { burst: 3, perSecond: 1 / 600 },
  completions: { burst: 40, perSecond: 8 },
  ticksMs: () => performance.now(),
  stopWithinMs: 10_000,
  connectPatienceMs: 20_000,
  connectDelaysMs: [2000, 5000, 15_000, 60_000, 300_000],
};

export interface Bot {
  /** For all that is sent as the bot. */
  readonly rest: REST;
  /** For what answers an interaction: those addresses carry their own token and do not count towards the bot's requests a second. */
  readonly answers: REST;
  readonly context: PlatformContext;
  readonly tuning: Tuning;
  readonly once: AnswerOnce;
  readonly turns: Pick<Turns, 'waitMs' | 'isCrowded' | 'isOverrun'>;
  readonly takeTurn: TakeTurn;
  /** Told of each question that is turned away for that. */
  readonly onBusy: () => void;
  /** Told of each interaction that came too late to be answered. */
  readonly onLate: () => void;
  /** How long ago an interaction was made, in milliseconds. */
  readonly ageMs: (id: string) => number;
  readonly perMember: RateLimit;
  readonly perChannel: RateLimit;
  /** Threads opened for one member. */
  readonly threads: RateLimit;
  readonly completions: RateLimit;
  /** Messages whose one question has been answered, by message id. */
  readonly settled: Set<string>;
}

/** Told of faults of ours inside commands. */
export const errorSink = ({ context }: Bot): ErrorSink => commandFaults(context, 'discord');

/** The message for an outcome, its chart drawn; a chart that cannot be drawn is told in words instead. */
export const prepare = async (bot: Bot, outcome: Outcome, memberId: string): Promise<DiscordMessage> => {
  const onFault = chartFaults(bot.context, 'discord');
  const png = await chartOrWords(
    outcome,
    async (chart) => {
      // The dearest part of an answer, and the one whose words can stand for it.
      const { pictureWithinMs, pictureWithinMsInCrowd } = bot.tuning;
      if (bot.turns.waitMs() > (bot.turns.isCrowded() ? pictureWithinMsInCrowd : pictureWithinMs)) return null;
      await bot.takeTurn(memberId);
      return (await renderChart(chart)).png;
    },
    (error) => {
      onFault(error);
      return null;
    },
  );
  return writeOutcome(outcome, png);
};

/** The kind refusal when too many questions come at once, or undefined when this one may be answered. */
export const tooMany = (bot: Bot, asker: Asker): string | undefined => {
  const { busyAfterMs, busyAfterMsWhenOverrun } = bot.tuning;
  if (bot.turns.waitMs() > (bot.turns.isOverrun() ? busyAfterMsWhenOverrun : busyAfterMs)) {
    bot.onBusy();
    return BUSY_WORDS;
  }
  // A clock set back must lock nobody out.
  const ticksMs = bot.tuning.ticksMs();
  const member = bot.perMember.take(asker.memberId, ticksMs);
  if (member !== null) {
    bot.context.metrics.limited('discord', 'member');
    return tooManyWords(member.waitSeconds);
  }
  const channel = bot.perChannel.take(asker.channelId, ticksMs);
  if (channel !== null) {
    bot.context.metrics.limited('discord', 'channel');
    return `This channel is busy just now. Ask again in ${channel.waitSeconds} s, or ask me in a direct message.`;
  }
  return undefined;
};
