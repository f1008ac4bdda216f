import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { pngFromPalette, pngFromPixels } from '../../bot/reply/png.js';

/** What another program's PNG reader (the one inside resvg) sees in the file. */
const readBack = (png: Buffer, width: number, height: number): Buffer =>
  new Resvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" image-rendering="optimizeSpeed" href="data:image/png;base64,${png.toString('base64')}"/></svg>`,
    { font: { loadSystemFonts: false } },
  ).render().pixels;

describe('a PNG of our own packing', () => {
  it.each([
    [3, 2],
    [1, 1],
    [257, 31],
  ])('of %i × %i pixels is read by another program as it was drawn', async (width, height) => {
    const pixels = Buffer.from(
      Array.from({ length: width * height }, (_, i) => [(i * 7) % 256, (i * 13) % 256, (i * 29) % 256, 255]).flat(),
    );
    expect(readBack(await pngFromPixels(pixels, width, height), width, height).equals(pixels)).toBe(true);
  });

  it.each([
    [3, 2, 2],
    [257, 31, 256],
  ])(
    'of %i × %i pixels with a palette of %i is read by another program as it was drawn',
    async (width, height, colours) => {
      const palette = Uint8Array.from(
        Array.from({ length: colours }, (_, i) => [i, (i * 13) % 256, (i * 29) % 256]).flat(),
      );
      const pixels = Uint8Array.from({ length: width * height }, (_, i) => (i * 7) % colours);
      const expected = Buffer.from([...pixels].flatMap((i) => [...palette.subarray(3 * i, 3 * i + 3), 255]));
      expect(readBack(await pngFromPalette(pixels, palette, width, height), width, height).equals(expected)).toBe(true);
    },
  );

  it('is not mixed with others packed at the same time, or after it', async () => {
    const [width, height] = [64, 40];
    const grey = (level: number): Buffer =>
      Buffer.from(Array.from({ length: width * height }, () => [level, level, level, 255]).flat());
    const levels = [10, 120, 230];
    const together = await Promise.all(levels.map((level) => pngFromPixels(grey(level), width, height)));
    const after = await pngFromPixels(grey(77), width, height);
    for (const [i, png] of [...together, after].entries())
      expect(readBack(png, width, height).equals(grey([...levels, 77][i] ?? 0))).toBe(true);
  });
});
