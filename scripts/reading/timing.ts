/** How long reading takes, in processor time, over texts at the limit that members paste and texts made to be slow. */
import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { TEXT_LIMIT, type Vocabulary } from '../../bot/reading/index.js';
import { readAnew } from '../../bot/reading/read-text.js';

export interface TimedText {
  readonly name: string;
  readonly text: string;
}

/** The `text`s or `opening`s of a corpus file, from the given one on, joined and cut to just the limit. */
const joined = (texts: readonly string[], from: number): string => {
  let text = '';
  for (let i = from; text.length < TEXT_LIMIT; i++) text += `${texts[i % texts.length] ?? ''}\n`;
  return text.slice(0, TEXT_LIMIT);
};

const again = (unit: string): string => unit.repeat(Math.ceil(TEXT_LIMIT / unit.length)).slice(0, TEXT_LIMIT);

const NASTY: readonly TimedText[] = [
  { name: 'one letter', text: again('a') },
  { name: 'digits', text: again('1') },
  { name: 'brackets', text: again('([{<') },
  { name: 'denials', text: again('not connect ') },
  { name: 'words that begin many phrases', text: again('it does not connect the mount drops usb ') },
  { name: 'ports', text: again('COM3 /dev/ttyUSB0 could not open port ') },
  { name: 'numbers beside nothing', text: again('error (10 code [errno 13 ') },
  { name: 'kernel lines', text: again('[ 12.3] usb 1-2: USB disconnect, device number 5\n') },
  { name: 'half a message', text: again('claimed by while sets config error code status device ') },
  { name: 'commas', text: again('usb, ') },
  { name: 'a word of jest and no full stop', text: again('the battery is flat and it lost the link, ') },
  {
    name: 'unknown words',
    text: Array.from({ length: 1200 }, (_, i) => `conect${(i * 7919).toString(26)}`)
      .join(' ')
      .slice(0, TEXT_LIMIT),
  },
  { name: 'signs of no script', text: again('\u{10FFFF}\u200d\ufeff') },
];

const readTexts = (folder: string, name: string): readonly string[] =>
  (JSON.parse(readFileSync(`${folder}/${name}.json`, 'utf8')) as { text?: string; opening?: string }[]).map(
    ({ text, opening }) => text ?? opening ?? '',
  );

/** Twenty logs, twenty openings and twenty of both mixed, made of a corpus's own texts, and the nasty ones. */
export const timedTexts = (folder: string): readonly TimedText[] => {
  const logs = readTexts(folder, 'logs');
  const openings = readTexts(folder, 'openings');
  const mixed = logs.flatMap((log, i) => [openings[i % openings.length] ?? '', log]);
  const some = (name: string, texts: readonly string[]): readonly TimedText[] =>
    Array.from({ length: 20 }, (_, i) => ({
      name: `${name} ${i}`,
      text: joined(texts, Math.floor((i * texts.length) / 20)),
    }));
  return [...some('logs', logs), ...some('openings', openings), ...some('mixed', mixed), ...NASTY];
};

export interface Timing {
  /** Milliseconds of processor time for one reading, the collector's and the compiler's that fell into it among them. */
  readonly medianMs: number;
  readonly p99Ms: number;
  /** The same of the texts by their own times, a text's own being the median of its rounds: what hangs on the text. */
  readonly ownP99Ms: number;
  readonly slowest: readonly { readonly name: string; readonly ms: number }[];
}

const cpuMs = (since?: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
};

/** What loading the model left behind is not the readings' to clear up; a bot has done so before the first member asks. */
const clearUp = (): void => {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
};

/** Read so often beforehand that the engine compiles little more, as in a bot that has been up for an evening. */
const WARM_ROUNDS = 3;

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;

/** @param rounds how often each text is read, one after the other in each round: as members come, and not the same again and again */
export const timeReading = (vocabulary: Vocabulary, texts: readonly TimedText[], rounds: number): Timing => {
  // As the bot does at its start, while nobody waits.
  for (const text of vocabulary.examples) readAnew(vocabulary, text);
  for (let round = 0; round < WARM_ROUNDS; round++) for (const { text } of texts) readAnew(vocabulary, text);
  clearUp();
  const times = texts.map((): number[] => []);
  for (let round = 0; round < rounds; round++)
    for (const [i, { text }] of texts.entries()) {
      const before = process.cpuUsage();
      readAnew(vocabulary, text);
      times[i]?.push(cpuMs(before));
    }
  const inOrder = (some: readonly number[]): readonly number[] => [...some].sort((a, b) => a - b);
  const all = inOrder(times.flat());
  const each = texts.map(({ name }, i) => ({ name, ms: at(inOrder(times[i] ?? []), 0.5) }));
  return {
    medianMs: at(all, 0.5),
    p99Ms: at(all, 0.99),
    ownP99Ms: at(inOrder(each.map(({ ms }) => ms)), 0.99),
    slowest: each.sort((a, b) => b.ms - a.ms).slice(0, 5),
  };
};
