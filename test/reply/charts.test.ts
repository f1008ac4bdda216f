import { describe, expect, it } from 'vitest';
import { CHART_HEIGHT, CHART_WIDTH, chartSvg, renderChart } from '../../bot/reply/render-chart.js';
import { CHART, LEVEL_COLOUR } from '../../bot/reply/palette.js';
import { textCurve } from '../../bot/reply/text-curve.js';
import type { EveningChart } from '../../bot/reply/reply.js';
import { curve, HOUR, nightChart, start } from './night-chart.js';

const chart = nightChart('M 46 <script> & co, night of Sat 12 Dec 2026');

/** Relative luminance and contrast ratio: W3C, Web Content Accessibility Guidelines 2.1, definitions. */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
};

describe('the night chart', () => {
  it("is a PNG of the size it says, with the member's words as text and not as mark-up", async () => {
    const { png, width, height } = await renderChart(chart);
    // PNG signature and IHDR width and height: W3C, Portable Network Graphics, 3rd ed., sections 5.2 and 11.2.1.
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect([png.readUInt32BE(16), png.readUInt32BE(20), width, height]).toEqual([
      CHART_WIDTH,
      CHART_HEIGHT,
      CHART_WIDTH,
      CHART_HEIGHT,
    ]);
    expect(chartSvg(chart)).not.toContain('<script>');
    expect(chartSvg(chart)).toContain('best 02:00, 60°');
    expect(chartSvg(chart)).toContain('now');
  });

  it('shows no "now" on another night', () =>
    expect(chartSvg({ ...chart, nowUtcMs: start - HOUR })).not.toContain('>now<'));

  // WCAG 2.1 success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (graphics, 3:1).
  it('keeps contrast on its dark ground', () => {
    for (const colour of [CHART.ink, CHART.faint, CHART.best, CHART.now, CHART.limit])
      expect(contrast(colour, CHART.ground)).toBeGreaterThan(4.5);
    for (const colour of [CHART.target, CHART.moon])
      for (const band of Object.values(CHART.bands)) expect(contrast(colour, band)).toBeGreaterThan(3);
    expect(new Set(Object.values(LEVEL_COLOUR)).size).toBe(4);
  });
});

describe('the words in the picture', () => {
  it('cuts a title too long for the picture, and one that fits not', () => {
    expect(chartSvg({ ...chart, title: 'M'.repeat(80) })).toMatch(/>M{20,39}…</u);
    expect(chartSvg(chart)).toContain('>night of Sat 12 Dec 2026. Times in Europe/London<');
  });

  it("draws a site's name in letters that the small font lacks", async () => {
    const horizon = (title: string) => ({
      kind: 'horizon' as const,
      title,
      points: [{ azimuthDeg: 0, altitudeDeg: 5 }],
      altText: 'x',
    });
    const [blank, armenian] = await Promise.all(['', 'Դաշտ'].map((title) => renderChart(horizon(title))));
    expect(armenian?.png.equals(blank?.png ?? Buffer.of())).toBe(false);
    // Two names of as many letters: boxes for missing letters would make the same picture.
    const other = await renderChart(horizon('Քարտ'));
    expect(armenian?.png.equals(other.png)).toBe(false);
  });

  it('names each twilight, says the Moon is dashed only where it is drawn, and the directions along the curve', () => {
    const svg = chartSvg({ ...chart, compass: [{ utcMs: start + 11 * HOUR, altitudeDeg: 42, word: 'SE' }] });
    expect(svg).toContain('nautical twilight');
    expect(svg).toContain('Dashed: the Moon');
    expect(svg).toContain('>SE<');
    expect(chartSvg({ ...chart, moonCurve: [] })).not.toContain('Moon');
  });
});

const BEFORE = new Map<string | undefined, number>([
  ['start', 0],
  ['middle', 0.5],
  ['end', 1],
]);
/** Every word of a picture with the room it takes, by the font's mean advances: 0.6 of the size, upright words turned. */
const wordBoxes = (svg: string) =>
  [
    ...svg.matchAll(
      /<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)"[^>]*text-anchor="(\w+)"( transform)?[^>]*>([^<]*)</gu,
    ),
  ].map(([, x, y, size, anchor, upright, text = '']) => {
    const length = 0.56 * Number(size) * text.length;
    const before = length * (BEFORE.get(anchor) ?? 0);
    const [across, down] = [Number(x), Number(y)];
    return upright === undefined
      ? {
          text,
          size: Number(size),
          x: [across - before, across - before + length],
          y: [down - 0.7 * Number(size), down],
        }
      : {
          text,
          size: Number(size),
          x: [across - 0.7 * Number(size), across],
          y: [down - length + before, down + before],
        };
  });

describe('on a phone', () => {
  // 360 CSS pixels is the commonest width of a phone's screen (common practice, no source); 11 px the smallest type read with ease there.
  const PHONE_WIDTH = 360;
  const LEAST_PX = 11;

  it('no word is smaller than 11 pixels, and none meets another, however high, steep or early the target stands', () => {
    const compass = ['E', 'SE', 'S', 'SW', 'W'].map((word, i) => ({
      utcMs: start + (9 + 2.5 * i) * HOUR,
      altitudeDeg: 20 + 12 * i,
      word,
    }));
    for (const peakHour of [1, 5, 8, 9, 12, 14, 18, 22])
      for (const peakDeg of [6, 30, 60, 75, 89]) {
        const svg = chartSvg({
          ...chart,
          curve: curve(peakHour, peakDeg),
          compass,
          best: { utcMs: start + peakHour * HOUR, altitudeDeg: peakDeg },
        });
        const sheetWidth = Number(/viewBox="0 0 (\d+)/u.exec(svg)?.[1]);
        const boxes = wordBoxes(svg);
        expect(boxes.length).toBeGreaterThan(12);
        expect(svg, `${peakHour} h, ${peakDeg}°`).toContain('>best ');
        for (const { text, size } of boxes)
          expect((size * PHONE_WIDTH) / sheetWidth, text).toBeGreaterThanOrEqual(LEAST_PX);
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1)) {
            const isApart = a.x[1]! <= b.x[0]! || b.x[1]! <= a.x[0]! || a.y[1]! <= b.y[0]! || b.y[1]! <= a.y[0]!;
            expect(isApart, `${a.text} | ${b.text} at ${peakHour} h, ${peakDeg}°`).toBe(true);
          }
        });
      }
  });
});

const evening: EveningChart = {
  kind: 'evening',
  title: 'The evening of Sat 12 Dec 2026',
  zone: 'Europe/London',
  startUtcMs: start + 5 * HOUR,
  endUtcMs: start + 12 * HOUR,
  darkFromUtcMs: start + 6 * HOUR,
  rows: ['M 45 (Pleiades)', 'Saturn'].map((name, i) => ({
    name,
    bestUtcMs: start + (7 + 2 * i) * HOUR,
    leastDeg: 20,
    curve: chart.curve.slice(20, 49),
  })),
  altText: 'x',
};

describe('the evening in one picture', () => {
  it('is a PNG with a bar a target, its name, and the hour it gets dark', async () => {
    const { width, height } = await renderChart(evening);
    expect([width, height]).toEqual([CHART_WIDTH, CHART_HEIGHT]);
    const svg = chartSvg(evening);
    for (const { name } of evening.rows) expect(svg).toContain(name);
    expect(svg).toContain('dark, from 18:00');
  });
});

describe('the curve in characters', () => {
  it('peaks where the target does, and marks day, twilight and dark below', () => {
    const rows = textCurve(chart, 77);
    const [top = ''] = rows;
    const sky = rows.find((row) => row.startsWith('sky')) ?? '';
    const columns = 71;
    const peak = top.slice(5);
    // What it never reaches is not drawn.
    expect(top.startsWith('45°')).toBe(true);
    // 60° fills two thirds of the row from 45° to 67.5°; its highest bar stands at 14/24 of the width.
    expect(Math.abs(peak.indexOf('▅') - (14 / 24) * columns)).toBeLessThan(4);
    // Day for 4 of the 24 hours, twilight for 2, dark for 12, of 71 columns.
    expect(sky.slice(5)).toMatch(/^\.{12}\+{6}#{35,36}\.{17,18}$/u);
  });

  it('has a legend of the signs it uses, when the Moon is up, and where the best stands', () => {
    const rows = textCurve(chart, 77);
    expect(rows.at(-1)).toMatch(/█ height {2}# dark {2}\+ twilight {2}\. day {2}\) Moon up/u);
    expect(rows.find((row) => row.startsWith('Moon'))).toMatch(/\)+/u);
    expect(rows.find((row) => row.includes('^'))).toContain('best 02:00');
    expect(textCurve({ ...chart, moonCurve: [] }, 77).join('\n')).not.toContain('Moon');
  });

  it("shows what stands behind the site's own horizon", () => {
    const behind = { ...chart, horizonCurve: chart.curve.map(({ utcMs }) => ({ utcMs, altitudeDeg: 30 })) };
    expect(textCurve(behind, 77).join('\n')).toContain('░ behind your horizon');
    expect(textCurve(chart, 77).join('\n')).not.toContain('░');
  });

  it('draws no best hour that stands outside the picture, as the Sun’s does', () => {
    const early = { ...chart, best: { utcMs: chart.startUtcMs - 3_600_000, altitudeDeg: 16 } };
    expect(textCurve(early, 77).join('\n')).not.toContain('^');
    expect(chartSvg(chart)).toContain('>best ');
    expect(chartSvg(early)).not.toContain('>best ');
  });

  it('fits the width it is given, its whole legend too', () => {
    const behind = { ...chart, horizonCurve: chart.curve.map(({ utcMs }) => ({ utcMs, altitudeDeg: 30 })) };
    for (const width of [40, 60, 77, 96]) {
      const rows = textCurve(behind, width);
      for (const row of rows) expect(row.length).toBeLessThanOrEqual(width);
      for (const sign of ['█ height', '░ behind your horizon', '# dark', '+ twilight', '. day', ') Moon up'])
        expect(rows.join('\n')).toContain(sign);
    }
  });
});
