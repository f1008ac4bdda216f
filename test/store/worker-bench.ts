/* eslint-disable complexity -- each kind of write is held against the rows in the same breath */
/** Starts and kills worker processes, is their chat server, and holds them to what they acknowledged. */
import { fork, type ChildProcess } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { openStore, type StorePlace } from '../../bot/store/open-store.js';
import {
  CLUB_OF_WORKERS,
  filledMember,
  laneOf,
  LANES,
  remindedMember,
  SITES_FILLED,
  type Told,
  type WorkerTask,
  type Write,
} from './worker-task.js';

/** Compiled once, so that a process is up in a fraction of a second; under node_modules, so that packages are found from there. */
const compiled = fileURLToPath(new URL('../../node_modules/.cache/pierhand/worker-process.mjs', import.meta.url));
const compileNow = async (): Promise<void> => {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('worker-process.ts', import.meta.url))],
    write: false,
    bundle: true,
    external: ['@photostructure/sqlite', 'pg-native'],
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
    // Packages of the older kind call require, which a module has not.
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
  });
  // Two suites run at once: a worker of one must never start from what the other has half written.
  mkdirSync(dirname(compiled), { recursive: true });
  const written = `${compiled}.${randomUUID()}`;
  writeFileSync(written, outputFiles[0]!.contents);
  renameSync(written, compiled);
};
let compiling: Promise<void> | undefined;
const compile = (): Promise<void> => (compiling ??= compileNow());

/** The chat server: takes every send, and shows each key once. */
export interface ChatServer {
  readonly takenByKey: Map<string, number>;
  readonly takenByWorker: Map<number, number>;
}
export const chatServer = (): ChatServer => ({ takenByKey: new Map(), takenByWorker: new Map() });

const plusOne = <K>(counts: Map<K, number>, key: K): void => {
  counts.set(key, (counts.get(key) ?? 0) + 1);
};

export interface Worker {
  readonly child: ChildProcess;
  /** Resolves when the store is open; rejects when the process ended before. */
  readonly open: Promise<void>;
  /** Resolves when the process is gone and everything it told was read. */
  readonly gone: Promise<void>;
}

export const startWorker = async (
  task: WorkerTask,
  server: ChatServer,
  onTold: (told: Told) => void,
): Promise<Worker> => {
  await compile();
  const child = fork(compiled, [JSON.stringify(task)], { stdio: ['ignore', 'pipe', 'inherit', 'ipc'], execArgv: [] });
  child.on('message', ({ key }: { key: string }) => {
    plusOne(server.takenByKey, key);
    plusOne(server.takenByWorker, child.pid ?? 0);
    if (child.connected) child.send(key, () => undefined);
  });
  let opened: () => void = () => undefined;
  const open = new Promise<void>((resolve, reject) => {
    opened = resolve;
    child.once('exit', () => reject(new Error('the worker ended before its store was open')));
  });
  open.catch(() => undefined);
  const lines = createInterface({ input: child.stdout! });
  lines.on('line', (line) => {
    const told = JSON.parse(line) as Told;
    if (told.told === 'open') opened();
    onTold(told);
  });
  const gone = Promise.all([once(child, 'exit'), once(lines, 'close')]).then(() => undefined);
  return { child, open, gone };
};

/** All that was told, kept so that it can be held against the store. */
export interface Ledger {
  readonly begun: Map<string, Write>;
  readonly done: Map<string, Write>;
}
export const ledger = (): Ledger => ({ begun: new Map(), done: new Map() });
export const enter = ({ begun, done }: Ledger, told: Told): void => {
  if (told.told !== 'open')
    (told.told === 'begins' ? begun : done).set(`${told.write.kind} ${told.write.number}`, told.write);
};

const ofKind = <K extends Write['kind']>(writes: Map<string, Write>, kind: K): readonly Extract<Write, { kind: K }>[] =>
  [...writes.values()].filter((write): write is Extract<Write, { kind: K }> => write.kind === kind);

/** Everything the store has lost or half-done, in words; empty when all is well. Reminders are held against the chat server. */
export const losses = async (place: StorePlace, { begun, done }: Ledger): Promise<readonly string[]> => {
  const found: string[] = [];
  const store = await openStore(place);
  try {
    const outcomes = (await store.outcomes.counts(CLUB_OF_WORKERS))['cable'] ?? 0;
    const [least, most] = [ofKind(done, 'outcome').length, ofKind(begun, 'outcome').length];
    if (outcomes < least || outcomes > most) found.push(`${outcomes} outcomes, ${least} acknowledged, ${most} begun`);

    for (const { number, won } of ofKind(done, 'event')) {
      if (won !== true) found.push(`event ${number} was won by nobody`);
      if (await store.events.claim(`e${number}`, Date.now())) found.push(`event ${number} could be claimed twice`);
    }
    for (let lane = 0; lane < LANES; lane++) {
      const note = await store.notes.get(`sync-${lane}`);
      const walk = (await store.walks.get(`w-${lane}`))?.state as { readonly number: number } | undefined;
      for (const [kind, value] of [
        ['note', note],
        ['walk', walk?.number],
      ] as const) {
        const last = Math.max(
          -1,
          ...ofKind(done, kind)
            .map(({ number }) => number)
            .filter((number) => laneOf(number) === lane),
        );
        if (Number(value ?? -1) < last) found.push(`${kind} ${value} is older than ${last}, which was acknowledged`);
      }
    }
    for (const { number } of ofKind(begun, 'fill')) {
      const sites = (await store.sites.list({ kind: 'member', id: filledMember(number) })).length;
      const hasGear = (await store.gear.get(filledMember(number))) !== null;
      const key = String(number);
      const [isFilled, forgetBegun, isForgotten] = [
        done.has(`fill ${key}`),
        begun.has(`forget ${key}`),
        done.has(`forget ${key}`),
      ];
      if (isForgotten && (sites > 0 || hasGear)) found.push(`member ${key} was not forgotten`);
      if (isFilled && !forgetBegun && (sites !== SITES_FILLED || !hasGear)) found.push(`member ${key} lost a row`);
      if (isFilled && forgetBegun && !((sites === 0 && !hasGear) || (sites === SITES_FILLED && hasGear)))
        found.push(`member ${key} was half forgotten`);
    }
  } finally {
    await store.close();
  }
  return found;
};

/** Waits until every reminder that was begun is said and written off; gives those that are not in time. */
export const untilAllSaid = async (
  place: StorePlace,
  { begun }: Ledger,
  withinMs = 60_000,
): Promise<readonly string[]> => {
  const store = await openStore(place);
  const waiting = new Set(ofKind(begun, 'reminder').map(({ number }) => remindedMember(number)));
  const until = performance.now() + withinMs;
  try {
    while (waiting.size > 0 && performance.now() < until) {
      for (const member of waiting) {
        if ((await store.reminders.list(member)).length > 0) break;
        waiting.delete(member);
      }
      await sleep(20);
    }
    return [...waiting];
  } finally {
    await store.close();
  }
};
