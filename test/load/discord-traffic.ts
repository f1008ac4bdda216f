/** Many members of many clubs asking through the Discord double at a set rate, whether or not earlier questions are answered. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { DiscordDouble } from '../doubles/discord/discord-double.js';
import { NotAnswered, type Member, type Seen } from '../doubles/discord/members.js';
import type { Channel } from '../doubles/discord/world.js';
import { BUSY_WORDS } from '../../bot/platforms/shared/busy-words.js';
import { ALIKE, FRESH, pick, type Wording } from './wordings.js';
import { labelsOn } from '../discord/labels-on.js';

export interface Crowd {
  readonly members: readonly Member[];
  readonly channels: readonly Channel[];
}

/** Must be called before the bot connects, so that it is told of the servers. */
export const createCrowd = (double: DiscordDouble, clubs: number, membersOfClub: number): Crowd => {
  const channels = Array.from({ length: clubs }, (_, i) => double.addGuild(`Club ${i + 1}`).channel);
  return {
    channels,
    members: Array.from({ length: clubs * membersOfClub }, (_, i) => double.member(`Member ${i + 1}`)),
  };
};

export interface Question {
  readonly share: number;
  readonly name: string;
  readonly ask: (member: Member, run: number, channel: Channel) => Promise<number>;
}

const TIMEOUT_MS = 3000;
const TARGETS = [
  'NGC 7331',
  'Aldebaran',
  'M 97',
  'Saturn',
  'Polaris',
  'M 3',
  'Jupiter',
  'NGC 891',
  'Capella',
  'Moon',
  'IC 342',
  'Deneb',
];
/** What members write when they ask for help; invented. */
const TROUBLES = [
  'It worked last week, since the update the port is gone',
  '[ 812.4] usb 1-1: device descriptor read/64, error -71',
  'the program says it cannot open the port',
  'it connects and then drops after a few minutes',
];
const first = (channel: Channel) => ({ in: channel, until: 'first', timeoutMs: TIMEOUT_MS }) as const;
/** The bot said kindly that it cannot keep up: an answer within the time, but not what was asked for. */
class ToldBusy extends Error {
  constructor(readonly afterMs: number) {
    super('told to ask again');
  }
}

const answered = async (seen: Promise<Seen>): Promise<number> => {
  const { message, totalMs } = await seen;
  if (message.content.startsWith(BUSY_WORDS.slice(0, 20))) throw new ToldBusy(totalMs);
  return totalMs;
};

/** The bot had no time to draw, and its words stood for the picture. */
let withoutPicture = 0;

const answeredWithPicture = async (seen: Promise<Seen>): Promise<number> => {
  const ms = await answered(seen);
  if ((await seen).message.attachments.length === 0) withoutPicture++;
  return ms;
};

/** What a club's evening is taken to look like: mostly typing, then short answers; one in twelve draws a picture, one in 25 is about a connection. Invented. */
const mixOf = ({ partial, place, site }: Wording): readonly Question[] => [
  {
    share: 0.4,
    name: 'suggestion of a target',
    ask: async (m, run, channel) => (await m.complete('up', 'target', partial(run), {}, first(channel))).afterMs,
  },
  {
    share: 0.1,
    name: 'suggestion of a place',
    ask: async (m, run, channel) => (await m.complete('dark', 'site', place(run), {}, first(channel))).afterMs,
  },
  {
    share: 0.16,
    name: 'altitude',
    ask: (m, run, channel) =>
      answered(m.slash('altitude', { target: pick(TARGETS, run), site: site(run) }, first(channel))),
  },
  {
    share: 0.08,
    name: 'sidereal',
    ask: (m, run, channel) => answered(m.slash('sidereal', { site: site(run) }, first(channel))),
  },
  {
    share: 0.08,
    name: 'dark',
    ask: (m, run, channel) => answered(m.slash('dark', { site: site(run) }, first(channel))),
  },
  {
    share: 0.04,
    name: 'tonight',
    ask: (m, run, channel) => answered(m.slash('tonight', { site: site(run) }, first(channel))),
  },
  {
    share: 0.04,
    name: 'up, with a picture',
    ask: (m, run, channel) =>
      answeredWithPicture(m.slash('up', { target: pick(TARGETS, run), site: site(run) }, first(channel))),
  },
  {
    share: 0.04,
    name: 'epoch',
    ask: (m, run, channel) => answered(m.slash('epoch', { target: pick(TARGETS, run) }, first(channel))),
  },
  {
    share: 0.02,
    name: 'triage, a message read',
    ask: (m, run, channel) => answered(m.slash('triage', { text: pick(TROUBLES, run) }, first(channel))),
  },
  {
    share: 0.02,
    name: 'triage, a turn',
    ask: async (m, run) => {
      const where = { in: 'direct', until: 'first', timeoutMs: TIMEOUT_MS } as const;
      const seen = m.slash('triage', { text: pick(TROUBLES, run) }, where);
      await answered(seen);
      const { message } = await seen;
      const [label] = labelsOn(message);
      if (label === undefined) throw new NotAnswered('the walk offers nothing to press');
      return await answered(m.press(message, label, where));
    },
  },
  { share: 0.02, name: 'help', ask: (m, _run, channel) => answered(m.slash('help', {}, first(channel))) },
];

export const EVENING_MIX = mixOf(ALIKE);
/** The same, never the same twice. */
export const FRESH_MIX = mixOf(FRESH);

export interface Traffic {
  /** Milliseconds from asking to what the member can read, of all that was answered. */
  readonly answeredMs: readonly number[];
  readonly byQuestion: ReadonlyMap<string, readonly number[]>;
  /** Milliseconds until members were told kindly to ask again later. */
  readonly toldBusyMs: readonly number[];
  readonly unanswered: number;
  /** Of the answers of "up": words in place of the picture. */
  readonly withoutPicture: number;
  /** What was asked a second, truly. */
  readonly perSecond: number;
}

/** Deterministic order by share: the question whose asked count lags its share most is next. */
const inShares = (mix: readonly Question[]): (() => Question) => {
  const counts = mix.map(() => 0);
  return () => {
    let next = 0;
    mix.forEach(({ share }, i) => {
      if ((counts[i] ?? 0) / share < (counts[next] ?? 0) / (mix[next]?.share ?? 1)) next = i;
    });
    counts[next] = (counts[next] ?? 0) + 1;
    return mix[next] as Question;
  };
};

const UNDER_WAY_WHILE_WARMING = 4;

export interface AskedInTurn {
  /** The number of the first question. */
  readonly from?: number;
  /** So many are under way at a time. */
  readonly underWay?: number;
}

/**
 * Asks `count` questions, a few at a time, each when one is answered: a bot that has run for a while, its code compiled.
 *
 * @returns how many were not answered, or told to ask again
 */
export const warmUp = async (
  crowd: Crowd,
  mix: readonly Question[],
  count: number,
  { from = 0, underWay = UNDER_WAY_WHILE_WARMING }: AskedInTurn = {},
): Promise<number> => {
  const next = inShares(mix);
  let run = from;
  let missed = 0;
  const ask = async (): Promise<void> => {
    while (run < from + count) {
      const member = crowd.members[run % crowd.members.length] as Member;
      const channel = crowd.channels[run % crowd.channels.length] as Channel;
      await next()
        .ask(member, run++, channel)
        .catch((error: unknown) => {
          if (!(error instanceof ToldBusy) && !(error instanceof NotAnswered)) throw error;
          missed++;
        });
    }
  };
  await Promise.all(Array.from({ length: underWay }, ask));
  return missed;
};

/** Asks for `seconds`, then waits for the last answers. `eachSecond` is called as the seconds pass. */
export const drive = async (
  crowd: Crowd,
  mix: readonly Question[],
  perSecond: number,
  seconds: number,
  eachSecond: (second: number) => void | Promise<void> = () => undefined,
): Promise<Traffic> => {
  const next = inShares(mix);
  const byQuestion = new Map<string, number[]>(mix.map(({ name }) => [name, []]));
  const underWay: Promise<void>[] = [];
  const toldBusyMs: number[] = [];
  let unanswered = 0;
  const withoutBefore = withoutPicture;
  let run = 0;
  let second = 0;
  const began = performance.now();
  while (performance.now() - began < seconds * 1000) {
    const due = Math.min(seconds * perSecond, Math.floor(((performance.now() - began) / 1000) * perSecond));
    for (; run < due; run++) {
      const question = next();
      const member = crowd.members[run % crowd.members.length] as Member;
      underWay.push(
        question.ask(member, run, crowd.channels[run % crowd.channels.length] as Channel).then(
          (ms) => {
            byQuestion.get(question.name)?.push(ms);
          },
          (error: unknown) => {
            if (error instanceof ToldBusy) toldBusyMs.push(error.afterMs);
            else if (error instanceof NotAnswered) unanswered++;
            else throw error;
          },
        ),
      );
    }
    const now = Math.floor((performance.now() - began) / 1000);
    if (now > second) {
      second = now;
      await eachSecond(second);
    }
    await sleep(2);
  }
  const tookS = (performance.now() - began) / 1000;
  await Promise.all(underWay);
  return {
    answeredMs: [...byQuestion.values()].flat(),
    byQuestion,
    toldBusyMs,
    unanswered,
    withoutPicture: withoutPicture - withoutBefore,
    perSecond: run / tookS,
  };
};
