/**
 * A process of its own that reads the text in pictures: whatever a picture does to the decoder or the recogniser, the bot
 * goes on. Gets bytes over its channel and sends text back, one picture at a time; ends when the channel closes.
 */
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Worker } from 'tesseract.js';
import { pictureHeader } from './picture-header.js';
import { preparePicture } from './prepare-picture.js';

export type PictureAnswer =
  { readonly text: string; readonly confidencePercent: number } | { readonly problem: string };

const require = createRequire(import.meta.url);
let recogniser: Promise<Worker> | undefined;

/** The trained data lie in a package of their own; nothing is fetched and nothing is written. */
const open = async (): Promise<Worker> => {
  const { createWorker, OEM, PSM } = await import('tesseract.js');
  const data = path.join(path.dirname(require.resolve('@tesseract.js-data/eng/package.json')), '4.0.0_best_int');
  const worker = await createWorker('eng', OEM.LSTM_ONLY, { langPath: data, gzip: true, cacheMethod: 'none' });
  await worker.setParameters({ tessedit_pageseg_mode: PSM.SINGLE_BLOCK, preserve_interword_spaces: '1' });
  return worker;
};

type Read = Exclude<PictureAnswer, { readonly problem: string }>;

const recognised = async (worker: Worker, bytes: Buffer): Promise<Read> => {
  const { data } = await worker.recognize(bytes);
  return { text: data.text, confidencePercent: data.confidence };
};

/** From here up a second look at an enlarged copy gained nothing on the test screenshots. */
const SURE_PERCENT = 92;

/** The drawing library does not know WebP; the recogniser does, and gives back a PNG of what it saw, which can be enlarged. */
const readWebp = async (worker: Worker, bytes: Uint8Array): Promise<Read> => {
  const { data } = await worker.recognize(Buffer.from(bytes), {}, { text: true, imageColor: true });
  const first = { text: data.text, confidencePercent: data.confidence };
  if (first.confidencePercent >= SURE_PERCENT || data.imageColor === null) return first;
  const png = Buffer.from(data.imageColor.slice(data.imageColor.indexOf(',') + 1), 'base64');
  const header = pictureHeader(png);
  if (header === null) return first;
  const second = await recognised(worker, await preparePicture(png, header));
  return second.confidencePercent > first.confidencePercent ? second : first;
};

const read = async (bytes: Uint8Array): Promise<PictureAnswer> => {
  const header = pictureHeader(bytes);
  if (header === null) return { problem: 'no picture' };
  recogniser ??= open();
  if (header.kind === 'webp') return await readWebp(await recogniser, bytes);
  const [worker, prepared] = await Promise.all([recogniser, preparePicture(bytes, header)]);
  return await recognised(worker, prepared);
};

process.on('message', (bytes: Uint8Array) => {
  read(bytes)
    .catch((error: unknown): PictureAnswer => ({ problem: error instanceof Error ? error.message : String(error) }))
    .then((answer) => process.send?.(answer))
    .catch(() => process.exit(1));
});
process.on('disconnect', () => process.exit(0));
