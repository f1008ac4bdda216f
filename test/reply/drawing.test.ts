/** Our own drawing of the charts against the same marks as another program (the SVG renderer resvg) draws them. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { createCanvas } from '../../bot/reply/drawing/canvas.js';
import { createPen } from '../../bot/reply/drawing/draw-marks.js';
import { createLetters } from '../../bot/reply/drawing/letters.js';
import { readFont } from '../../bot/reply/drawing/outlines.js';
import { area, curve, diamond, dot, rectangle, words, type Marks } from '../../bot/reply/marks.js';
import { chartSvg, renderChart } from '../../bot/reply/render-chart.js';
import type { Chart } from '../../bot/reply/reply.js';
import { marksSvg } from '../../bot/reply/svg.js';
import { nightChart } from './night-chart.js';

const FONT = path.join(projectRoot(), 'bot/reply/fonts/DejaVuSans-latin-greek.ttf');
const font = { fontFiles: [FONT], defaultFontFamily: 'DejaVu Sans', loadSystemFonts: false };
const letters = createLetters(readFont(readFileSync(FONT)));
const SIDE = 120;

/** Brightness (green) of each pixel of a small sheet on black. */
const ownDrawing = (marks: Marks, scale: number): number[] => {
  const canvas = createCanvas(SIDE, SIDE);
  canvas.clear([0]);
  createPen(SIDE, SIDE, letters, scale)(canvas, marks);
  const palette = canvas.palette();
  return [...canvas.pixels].map((index) => palette[3 * index + 1] ?? 0);
};
const otherDrawing = (marks: Marks, scale: number): number[] => {
  const units = SIDE / scale;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}" height="${SIDE}" viewBox="0 0 ${units} ${units}" font-family="DejaVu Sans"><rect width="${units}" height="${units}" fill="#000000"/>${marksSvg(marks)}</svg>`;
  const { pixels } = new Resvg(svg, { font }).render();
  return Array.from({ length: SIDE * SIDE }, (_, i) => pixels[4 * i + 1] ?? 0);
};

const GREY = '#c8c8c8';
const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
/** Brightness that lies elsewhere, as a share of what the other program laid on. */
const unlike = (marks: Marks, scale = 4 / 3): number => {
  const [own, other] = [ownDrawing(marks, scale), otherDrawing(marks, scale)];
  return sum(own.map((value, i) => Math.abs(value - (other[i] ?? 0)))) / sum(other);
};

const hump = Array.from({ length: 30 }, (_, i) => [5 + i * 2.7, 80 - 60 * Math.sin((i / 29) * Math.PI)] as const);

describe('a mark of our own drawing', () => {
  it.each<[string, Marks, number]>([
    ['a rectangle between pixels', rectangle([10.3, 12.7], [40.4, 30.9], GREY), 0.01],
    ['a shade', rectangle([10, 12], [40, 30], GREY, 0.37), 0.01],
    [
      'a level line',
      curve(
        [
          [5, 40],
          [80, 40],
        ],
        { colour: GREY, width: 2 },
      ),
      0.04,
    ],
    ['a curve', curve(hump, { colour: GREY, width: 4 }), 0.05],
    ['a curve that is lifted', curve([...hump.slice(0, 9), null, ...hump.slice(15)], { colour: GREY, width: 3 }), 0.05],
    [
      'sharp bends',
      curve(
        [
          [10, 70],
          [30, 20],
          [50, 70],
          [80, 30],
        ],
        { colour: GREY, width: 5 },
      ),
      0.06,
    ],
    ['dashes', curve(hump, { colour: GREY, width: 2.5, dashes: [9, 5] }), 0.08],
    [
      'dots of a line',
      curve(
        [
          [5, 40],
          [80, 40],
        ],
        { colour: GREY, width: 2, dashes: [2, 3] },
      ),
      0.08,
    ],
    ['an area', area([...hump, [83, 85], [5, 85]], GREY, 0.75), 0.03],
    ['a dot', dot([40, 41], 9, GREY), 0.04],
    ['a diamond', diamond([41.3, 40.2], 11, GREY, '#505050'), 0.05],
  ])('%s stands where another program has it', (_, marks, most) => {
    expect(unlike(marks)).toBeLessThan(most);
  });

  it.each<[string, Marks]>([
    ['words', words('night, αβγ é', [4, 40], { size: 14, colour: GREY })],
    ['their middle', words('best 02:00', [45, 40], { size: 15, colour: GREY, anchor: 'middle' })],
    ['their end', words('useful', [85, 60], { size: 22, colour: GREY, anchor: 'end' })],
    ['upright', words('twilight', [40, 45], { size: 20, colour: GREY, anchor: 'middle', isUpright: true })],
    ['with a rim', words('SW 53°', [8, 50], { size: 20, colour: GREY, rim: '#404040' })],
  ])('%s stand where another program has them, to within a quarter of a pixel and the height of a line', (_, marks) => {
    // Letters begin at a quarter of a pixel and stand on a whole one: edges differ, the amount of ink and its middle do not.
    const [own, other] = [ownDrawing(marks, 4 / 3), otherDrawing(marks, 4 / 3)];
    const middle = (values: readonly number[], along: (at: number) => number): number =>
      sum(values.map((value, at) => value * along(at))) / sum(values);
    expect(sum(own) / sum(other)).toBeGreaterThan(0.96);
    expect(sum(own) / sum(other)).toBeLessThan(1.04);
    for (const along of [(at: number) => at % SIDE, (at: number) => Math.floor(at / SIDE)])
      expect(Math.abs(middle(own, along) - middle(other, along))).toBeLessThan(0.7);
    expect(unlike(marks)).toBeLessThan(0.5);
  });

  it('keeps each colour that is laid on whole, however many the edges make', () => {
    const canvas = createCanvas(64, 64);
    const wanted = [0, 0xffb454, 0x8fb8d9];
    canvas.clear(wanted);
    for (let i = 0; i < 4000; i++) canvas.blend(i, (i * 99_991) % 0x1000000, ((i % 9) + 1) / 10);
    for (const [i, colour] of wanted.entries()) canvas.blendRow(i, i + 1, colour, 1);
    const palette = canvas.palette();
    expect(palette.length).toBeLessThanOrEqual(3 * 256);
    expect(wanted.map((_, i) => Buffer.from(palette).readUIntBE(3 * (canvas.pixels[i] ?? 0), 3))).toEqual(wanted);
  });
});

const night = nightChart('M 46 (Tamsin’s), night of Sat 12 Dec 2026');
const horizon: Chart = {
  kind: 'horizon',
  title: 'Fenwold Common',
  points: [0, 60, 130, 200, 310].map((azimuthDeg, i) => ({ azimuthDeg, altitudeDeg: 4 + ((i * 7) % 19) })),
  altText: 'x',
};

/** Pixels as another program reads them from the file, or draws them. */
const pixelsOf = (svg: string): Buffer => new Resvg(svg, { font }).render().pixels;
const readBack = (png: Buffer): Buffer =>
  pixelsOf(
    `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="720"><image width="960" height="720" image-rendering="optimizeSpeed" href="data:image/png;base64,${png.toString('base64')}"/></svg>`,
  );

describe('a whole chart of our own drawing', () => {
  it.each<[string, Chart]>([
    ['of a night', night],
    ['of a horizon', horizon],
  ])('%s is the picture that another program makes of its SVG', async (_, chart) => {
    const [own, other] = [readBack((await renderChart(chart)).png), pixelsOf(chartSvg(chart))];
    let differing = 0;
    for (let at = 0; at < own.length; at += 4)
      if ([0, 1, 2].some((k) => Math.abs((own[at + k] ?? 0) - (other[at + k] ?? 0)) > 70)) differing++;
    // The edges of letters.
    expect(differing / (960 * 720)).toBeLessThan(0.01);
  });

  it('is drawn once for all who ask for the same, and never given for another', async () => {
    const asked = await Promise.all([night, night, { ...night, nowUtcMs: null }, night].map(renderChart));
    expect(asked[1]?.png).toBe(asked[0]?.png);
    expect(asked[3]?.png).toBe(asked[0]?.png);
    expect(asked[2]?.png.equals(asked[0]?.png ?? Buffer.of())).toBe(false);
  });

  it('is not changed by one drawn before it', async () => {
    const first = await renderChart(night);
    // So many others between that none of the last ones kept is the first.
    for (let i = 0; i < 30; i++) await renderChart({ ...horizon, title: `Fenwold Common, ${i}` });
    const again = await renderChart(night);
    expect(again.png).not.toBe(first.png);
    expect(again.png.equals(first.png)).toBe(true);
  });
});
