/**
 * Reads the text in members' pictures: one at a time, in a process of its own that starts with the first picture and ends
 * when idle. Bounded in bytes, pixels, waiting pictures and seconds. Recognition is an optional package: where it is not
 * installed, the member is asked for the text itself.
 */
import { fork, type ChildProcess } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { projectRoot } from '../ground/project-root.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { pictureHeader } from './picture-header.js';
import type { PictureAnswer } from './picture-process.js';

export const MOST_PICTURE_BYTES = 10 * 1024 * 1024;
export const MOST_PICTURE_PIXELS = 40_000_000;

export interface PictureText {
  readonly text: string;
  /** The recogniser's own opinion of its reading, 0 to 100. */
  readonly confidencePercent: number;
}

export interface PictureReader {
  /** Never rejects: what cannot be read is a Problem that asks for the text instead. */
  readonly read: (bytes: Uint8Array) => Promise<PictureText | Problem>;
  readonly close: () => void;
}

export interface PictureReaderTuning {
  /** Pictures that may wait; one more is turned away. */
  readonly mostWaiting: number;
  /** From when a picture's turn comes, not from when it was sent; a busy machine takes ten times as long as an idle one. */
  readonly readWithinMs: number;
  readonly endAfterIdleMs: number;
}

const TUNING: PictureReaderTuning = { mostWaiting: 8, readWithinMs: 45_000, endAfterIdleMs: 60_000 };
/** Below this the recogniser mostly guesses (measured on the test screenshots and on photographs without text). */
const LEAST_CONFIDENCE_PERCENT = 35;
const TEXT_LIMIT = 20_000;

const PASTE_INSTEAD = 'Please copy the text itself and paste it here.';

const tooLarge = (bytes: Uint8Array): Problem | null => {
  if (bytes.length > MOST_PICTURE_BYTES) {
    return problem('picture-too-large', `That picture has more than 10 MB. Send a smaller one, or paste the text.`);
  }
  const header = pictureHeader(bytes);
  if (header === null) return problem('no-picture', `I can read PNG, JPEG and WebP pictures. ${PASTE_INSTEAD}`);
  const { widthPx, heightPx } = header;
  if (widthPx === 0 || heightPx === 0) return problem('no-picture', `That picture is empty. ${PASTE_INSTEAD}`);
  return widthPx * heightPx > MOST_PICTURE_PIXELS
    ? problem('picture-too-large', 'That picture has more than 40 million pixels. Cut out the part with the text.')
    : null;
};

const isInstalled = (): boolean => {
  const require = createRequire(import.meta.url);
  try {
    require.resolve('tesseract.js');
    require.resolve('@tesseract.js-data/eng/package.json');
    return true;
  } catch {
    return false;
  }
};

/** From source the process is TypeScript too; the bundle has it as an entry of its own. */
const startProcess = (): ChildProcess => {
  const isSource = import.meta.url.endsWith('.ts');
  const file = isSource
    ? fileURLToPath(new URL('picture-process.ts', import.meta.url))
    : path.join(projectRoot(), 'dist/bot/pictures/picture-process.js');
  return fork(file, [], {
    serialization: 'advanced',
    execArgv: isSource ? ['--import', 'tsx'] : [],
    // Nothing of the operator's settings, tokens among them, is a picture's business.
    env: {},
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
};

const answerOf = (child: ChildProcess, bytes: Uint8Array, withinMs: number): Promise<PictureAnswer> =>
  new Promise((resolve) => {
    const timer = setTimeout(() => finish({ problem: 'too slow' }), withinMs);
    const gone = (): void => finish({ problem: 'the reader ended' });
    const finish = (answer: PictureAnswer): void => {
      clearTimeout(timer);
      child.off('message', finish);
      child.off('exit', gone);
      resolve(answer);
    };
    child.on('message', finish);
    child.on('exit', gone);
    child.send(bytes, (error) => {
      if (error !== null) gone();
    });
  });

const readable = (answer: PictureAnswer): PictureText | Problem => {
  if (isProblem(answer)) {
    return answer.problem === 'too slow'
      ? problem('picture-too-slow', `Reading that picture took too long. ${PASTE_INSTEAD}`)
      : problem('picture-unreadable', `That picture could not be opened. ${PASTE_INSTEAD}`);
  }
  const text = answer.text.trim().slice(0, TEXT_LIMIT);
  return text.length < 4 || answer.confidencePercent < LEAST_CONFIDENCE_PERCENT
    ? problem('picture-unreadable', `I cannot make out words in that picture. ${PASTE_INSTEAD}`)
    : { text, confidencePercent: answer.confidencePercent };
};

export const createPictureReader = (changes: Partial<PictureReaderTuning> = {}): PictureReader => {
  const tuning = { ...TUNING, ...changes };
  let child: ChildProcess | undefined;
  let idle: NodeJS.Timeout | undefined;
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();

  const end = (): void => {
    clearTimeout(idle);
    child?.removeAllListeners('error');
    child?.on('error', () => {});
    child?.kill('SIGKILL');
    child = undefined;
  };

  const readNext = async (bytes: Uint8Array): Promise<PictureText | Problem> => {
    clearTimeout(idle);
    if (child === undefined || child.exitCode !== null || child.signalCode !== null || !child.connected) {
      end();
      child = startProcess();
      child.on('error', () => {});
    }
    child.ref();
    child.channel?.ref();
    const answer = await answerOf(child, bytes, tuning.readWithinMs);
    // After a failure nothing is known of what the process still does or holds.
    if (isProblem(answer)) end();
    else {
      idle = setTimeout(end, tuning.endAfterIdleMs);
      idle.unref();
      // An idle reader keeps no program from ending.
      child.unref();
      child.channel?.unref();
    }
    return readable(answer);
  };

  return {
    read: async (bytes) => {
      const refused = tooLarge(bytes);
      if (refused !== null) return refused;
      if (!isInstalled()) return problem('no-picture-reading', `Pictures cannot be read here. ${PASTE_INSTEAD}`);
      if (waiting > tuning.mostWaiting) {
        return problem('busy', `Several pictures are waiting to be read. Try again in a minute. ${PASTE_INSTEAD}`);
      }
      waiting++;
      const reading = last.then(() => readNext(bytes));
      last = reading.catch(() => undefined);
      return await reading.finally(() => waiting--);
    },
    close: end,
  };
};
