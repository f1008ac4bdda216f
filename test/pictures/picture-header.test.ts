import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { pictureHeader } from '../../bot/pictures/picture-header.js';

const FOLDER = path.join(import.meta.dirname, 'screens');

/** Sizes as the maker's image tool prints them (ImageMagick's identify -format "%w %h"). */
const SIZES: Readonly<Record<string, readonly [number, number]>> = {
  'code-10-1.jpg': [1014, 359],
  'disconnects-1.png': [664, 218],
  'code-28-1.webp': [1172, 536],
  'attached-then-denied-2.jpg': [837, 210],
  'over-current-2.webp': [751, 82],
  'ping-silent-2.png': [904, 381],
};

describe('what a file is before any of it is decoded', () => {
  it.each(Object.entries(SIZES))('reads the size of %s as an image tool does', (file, [widthPx, heightPx]) => {
    expect(pictureHeader(readFileSync(path.join(FOLDER, file)))).toMatchObject({ widthPx, heightPx });
  });

  it('holds lossless and extended WebP too (bytes laid out by RFC 9649)', () => {
    const riff = (body: readonly number[]): Uint8Array =>
      Uint8Array.from([
        ...Buffer.from('RIFF'),
        0,
        0,
        0,
        0,
        ...Buffer.from('WEBP'),
        ...body,
        ...Array<number>(20).fill(0),
      ]);
    // VP8L: signature 2f, then 14 bits width − 1, 14 bits height − 1: 386 × 395.
    const bits = 385 | (394 << 14);
    const lossless = riff([
      ...Buffer.from('VP8L'),
      0,
      0,
      0,
      0,
      0x2f,
      bits & 255,
      (bits >> 8) & 255,
      (bits >> 16) & 255,
      bits >>> 24,
    ]);
    expect(pictureHeader(lossless)).toEqual({ kind: 'webp', widthPx: 386, heightPx: 395 });
    const extended = riff([...Buffer.from('VP8X'), 10, 0, 0, 0, 0, 0, 0, 0, 0xff, 0x0f, 0, 0x37, 0x04, 0]);
    expect(pictureHeader(extended)).toEqual({ kind: 'webp', widthPx: 4096, heightPx: 1080 });
  });

  it('takes nothing else for a picture, and stumbles over no bytes', () => {
    for (const text of ['', 'GIF89a', '<svg xmlns="http://www.w3.org/2000/svg"/>', '%PDF-1.7', 'RIFF....WAVE'])
      expect(pictureHeader(Buffer.from(text.padEnd(40)))).toBeNull();
    for (const file of readdirSync(FOLDER).filter((name) => !name.endsWith('.json'))) {
      const whole = readFileSync(path.join(FOLDER, file));
      fc.assert(
        fc.property(fc.nat(60), fc.nat(whole.length), fc.uint8Array({ maxLength: 8 }), (end, at, bytes) => {
          pictureHeader(whole.subarray(0, end));
          const bent = Uint8Array.from(whole.subarray(0, 2000));
          bent.set(bytes.subarray(0, Math.max(0, bent.length - (at % bent.length))), at % bent.length);
          pictureHeader(bent);
        }),
        { numRuns: 50 },
      );
    }
  });
});
