/** Draws a Chart as SVG and PNG, off screen, with the fonts that ship beside this file. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createKept } from '../ground/kept.js';
import { createInTurn } from '../ground/in-turn.js';
import { CHART_HEIGHT, CHART_WIDTH, SHEET_HEIGHT, SHEET_WIDTH } from './chart-frame.js';
import { createCanvas, rgbOf } from './drawing/canvas.js';
import { createPen } from './drawing/draw-marks.js';
import { createLetters } from './drawing/letters.js';
import { readFont } from './drawing/outlines.js';
import { eveningChartMarks } from './evening-chart.js';
import { horizonChartMarks } from './horizon-chart.js';
import { missChartMarks } from './miss-chart.js';
import { nightChartMarks } from './night-chart.js';
import { CHART } from './palette.js';
import { pngFromPalette, pngFromPixels } from './png.js';
import type { Chart } from './reply.js';
import type { Marks } from './marks.js';
import { marksSvg } from './svg.js';

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
const FEW_LETTERS = 'DejaVuSans-latin-greek.ttf';
const ALL_LETTERS = font('DejaVuSans.ttf');
/** What the small font holds: scripts/pictures/make-small-font.sh. */
const BEYOND_FEW = /[^\n\u0020-\u007E\u00A0-\u017F\u0370-\u03FF\u2010-\u2044\u2190-\u2193\u2212\u25C6]/u;

const marksOf = (chart: Chart): Marks => {
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
export const chartSvg = (chart: Chart): string => sheetSvg(marksOf(chart));

const sheetSvg = (marks: Marks): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${CHART_WIDTH}" height="${CHART_HEIGHT}" viewBox="0 0 ${SHEET_WIDTH} ${SHEET_HEIGHT}" font-family="DejaVu Sans"><rect width="${SHEET_WIDTH}" height="${SHEET_HEIGHT}" fill="${CHART.ground}"/>${marksSvg(marks)}</svg>`;

/** Pictures are drawn one after the other: each has a sheet of pixels while it is made. */
const inTurn = createInTurn();
const DRAWING = 'a picture';

/** Words beyond the few letters (an Armenian site's name, joined or right-to-left letters): the drawing library sets those. */
const withLibrary = async (svg: string): Promise<Buffer> => {
  const { renderAsync } = await import('@resvg/resvg-js');
  const image = await renderAsync(svg, { font: ALL_LETTERS });
  return pngFromPixels(image.pixels, image.width, image.height);
};

/** What is made once for all charts. */
const tools = () => ({
  draw: createPen(
    CHART_WIDTH,
    CHART_HEIGHT,
    createLetters(readFont(readFileSync(fontFile(FEW_LETTERS)))),
    CHART_WIDTH / SHEET_WIDTH,
  ),
  canvas: createCanvas(CHART_WIDTH, CHART_HEIGHT),
});
let kept: ReturnType<typeof tools> | null = null;

/** All that are laid on whole. */
const coloursOf = (marks: Marks): readonly string[] =>
  marks.flatMap((mark) => {
    if (mark.kind === 'words' || mark.kind === 'lines') return mark.style.colour;
    return mark.kind === 'rectangle' && mark.opacity !== 1 ? [] : mark.fill;
  });

const withOwnPen = (marks: Marks): Promise<Buffer> => {
  kept ??= tools();
  const { draw, canvas } = kept;
  canvas.clear([CHART.ground, ...coloursOf(marks)].map(rgbOf));
  draw(canvas, marks);
  return pngFromPalette(canvas.pixels, canvas.palette(), CHART_WIDTH, CHART_HEIGHT);
};

const isBeyondFew = (marks: Marks): boolean =>
  marks.some((mark) => mark.kind === 'words' && BEYOND_FEW.test(mark.text));

/** The last pictures, some 30 kB each, by all that is drawn: a crowd at one site asks for the same one again and again. */
const pictures = createKept<string, { png: Buffer | null }>(12);
/** The whole of a chart, in a few bytes. */
const nameOf = (marks: Marks): string => createHash('sha256').update(JSON.stringify(marks)).digest('base64');

/** The chart as a PNG, 960 × 720, legible at a phone's width. Rejects only if the drawing library fails. Packed beside the event loop. */
export const renderChart = async (
  chart: Chart,
): Promise<{ readonly png: Buffer; readonly width: number; readonly height: number }> => {
  const marks = marksOf(chart);
  const picture = pictures(nameOf(marks), () => ({ png: null }));
  const png =
    picture.png ??
    (await inTurn(DRAWING, async () => {
      picture.png ??= await (isBeyondFew(marks) ? withLibrary(sheetSvg(marks)) : withOwnPen(marks));
      return picture.png;
    }));
  return { png, width: CHART_WIDTH, height: CHART_HEIGHT };
};
