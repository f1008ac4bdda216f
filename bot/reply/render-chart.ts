/** Draws a Chart as SVG and PNG, off screen, with the fonts that ship beside this file. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createInTurn } from '../ground/in-turn.js';
import { CHART_HEIGHT, CHART_WIDTH, SHEET_HEIGHT, SHEET_WIDTH } from './chart-frame.js';
import { eveningChartMarks } from './evening-chart.js';
import { horizonChartMarks } from './horizon-chart.js';
import { missChartMarks } from './miss-chart.js';
import { nightChartMarks } from './night-chart.js';
import { CHART } from './palette.js';
import { pngFromPixels } from './png.js';
import type { Chart } from './reply.js';
import { rectangle } from './svg.js';

export { CHART_HEIGHT, CHART_WIDTH } from './chart-frame.js';

// From source the fonts lie beside this file; from dist/ they lie in the source tree it was built from.
const fontFile = (name: string): string => {
  const beside = fileURLToPath(new URL(`fonts/${name}`, import.meta.url));
  return existsSync(beside) ? beside : fileURLToPath(new URL(`../../../bot/reply/fonts/${name}`, import.meta.url));
};
const font = (name: string) => ({
  fontFiles: [fontFile(name)],
  defaultFontFamily: 'DejaVu Sans',
  loadSystemFonts: false,
});
/** The font is read anew for each word drawn: with the few letters that nearly all charts use, a chart is ready in half the time. */
const FEW_LETTERS = font('DejaVuSans-latin-greek.ttf');
const ALL_LETTERS = font('DejaVuSans.ttf');
/** What the small font holds: scripts/pictures/make-small-font.sh. */
const BEYOND_FEW = /[^\n\u0020-\u007E\u00A0-\u017F\u0370-\u03FF\u2010-\u2044\u2190-\u2193\u2212\u25C6]/u;

const marksOf = (chart: Chart): string => {
  switch (chart.kind) {
    case 'night':
      return nightChartMarks(chart);
    case 'evening':
      return eveningChartMarks(chart);
    case 'horizon':
      return horizonChartMarks(chart);
    case 'misses':
      return missChartMarks(chart);
  }
};

/** The chart as SVG text. Pure. */
export const chartSvg = (chart: Chart): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${CHART_WIDTH}" height="${CHART_HEIGHT}" viewBox="0 0 ${SHEET_WIDTH} ${SHEET_HEIGHT}" font-family="DejaVu Sans">${rectangle([0, 0], [SHEET_WIDTH, SHEET_HEIGHT], CHART.ground)}${marksOf(chart)}</svg>`;

/** Pictures are drawn one after the other: each takes some 10 MB outside the heap while it is made. */
const inTurn = createInTurn();
const DRAWING = 'a picture';

/** The chart as a PNG, 960 × 720, legible at a phone's width. Rejects only if the drawing library fails. The pixels are made beside the event loop. */
export const renderChart = async (
  chart: Chart,
): Promise<{ readonly png: Buffer; readonly width: number; readonly height: number }> => {
  const { renderAsync } = await import('@resvg/resvg-js');
  const svg = chartSvg(chart);
  return await inTurn(DRAWING, async () => {
    // Off the main thread: the drawing is half the work, and others are waiting for answers.
    const image = await renderAsync(svg, { font: BEYOND_FEW.test(svg) ? ALL_LETTERS : FEW_LETTERS });
    const { width, height } = image;
    return { png: await pngFromPixels(image.pixels, width, height), width, height };
  });
};
