/** Draws marks on a canvas. */
import { DIAMOND_RIM, WORD_RIM, type Mark, type Marks, type Point } from '../marks.js';
import { rgbOf, type Canvas } from './canvas.js';
import { createCoverage } from './coverage.js';
import { PHASES, type Letters } from './letters.js';
import { dashesOf, strokeOutline } from './stroke.js';

type Of<Kind extends Mark['kind']> = Extract<Mark, { kind: Kind }>;

const CIRCLE_CORNERS = 32;
const SHARE_BEFORE = { start: 0, middle: 0.5, end: 1 } as const;

/** @param scale pixels to a unit of the sheet */
export const createPen = (width: number, height: number, letters: Letters, scale: number) => {
  const coverage = createCoverage(width, height);

  const fillShapes = (canvas: Canvas, shapes: readonly (readonly Point[])[], fill: string, opacity = 1): void => {
    for (const shape of shapes)
      shape.forEach(([x, y], i) => {
        const [nextX, nextY] = shape[(i + 1) % shape.length] as Point;
        coverage.edge(x * scale, y * scale, nextX * scale, nextY * scale);
      });
    const colour = rgbOf(fill);
    coverage.paint((at, cover) => canvas.blend(at, colour, cover * opacity));
  };

  /** Upright edges may lie within a pixel, and so may level ones. */
  const rectangle = (canvas: Canvas, { at, size, fill, opacity }: Of<'rectangle'>): void => {
    const [left, top] = [Math.max(0, at[0] * scale), Math.max(0, at[1] * scale)];
    const right = Math.min(width, (at[0] + size[0]) * scale);
    const bottom = Math.min(height, (at[1] + size[1]) * scale);
    const colour = rgbOf(fill);
    const [first, last] = [Math.ceil(left - 1e-6), Math.floor(right + 1e-6)];
    for (let y = Math.floor(top); y < Math.ceil(bottom - 1e-6); y++) {
      const tall = Math.min(1, bottom - y, y + 1 - top);
      const row = y * width;
      if (first > left + 1e-6) canvas.blend(row + first - 1, colour, opacity * tall * (Math.min(first, right) - left));
      if (last > first) canvas.blendRow(row + first, row + last, colour, opacity * tall);
      if (last >= first && right > last + 1e-6) canvas.blend(row + last, colour, opacity * tall * (right - last));
    }
  };

  const words = (canvas: Canvas, { text, at, style }: Of<'words'>): void => {
    const { size, colour, anchor = 'start', isUpright = false, rim } = style;
    const sizePx = size * scale;
    const all = Array.from(text);
    const begins: number[] = [0];
    for (const letter of all) begins.push((begins.at(-1) ?? 0) + letters.advancePx(letter, sizePx));
    const before = (begins.at(-1) ?? 0) * SHARE_BEFORE[anchor];
    const [x, y] = [at[0] * scale, at[1] * scale];
    const layAll = (rimPx: number, rgb: number): void => {
      for (const [i, letter] of all.entries()) {
        const along = (begins[i] ?? 0) - before;
        const place = Math.round((isUpright ? y - along : x + along) * PHASES);
        // Upright words run towards smaller y, and so does what is left of the pixel.
        const whole = isUpright ? Math.ceil(place / PHASES) : Math.floor(place / PHASES);
        const sheet = letters.letter(letter, { sizePx, isUpright, rimPx }, Math.abs(place - whole * PHASES));
        const [across, down] = isUpright ? [Math.round(x), whole] : [whole, Math.round(y)];
        canvas.lay(sheet, across + sheet.left, down + sheet.top, rgb);
      }
    };
    if (rim !== undefined) layAll((WORD_RIM / 2) * scale, rgbOf(rim));
    layAll(0, rgbOf(colour));
  };

  const lines = (canvas: Canvas, { lines: all, style: { colour, width: lineWidth, dashes } }: Of<'lines'>): void => {
    const pieces = dashes === undefined ? all : all.flatMap((line) => dashesOf(line, dashes));
    fillShapes(
      canvas,
      pieces.map((piece) => strokeOutline(piece, lineWidth)),
      colour,
    );
  };

  const dot = (canvas: Canvas, { at: [x, y], radius, fill }: Of<'dot'>): void => {
    const corners = Array.from({ length: CIRCLE_CORNERS }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / CIRCLE_CORNERS;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    fillShapes(canvas, [corners], fill);
  };

  const diamond = (canvas: Canvas, { at: [x, y], reach, fill, rim }: Of<'diamond'>): void => {
    const corners = (far: number): Point[] => [
      [x, y - far],
      [x + far, y],
      [x, y + far],
      [x - far, y],
    ];
    const half = (DIAMOND_RIM / 2) * Math.SQRT2;
    fillShapes(canvas, [corners(reach + half)], rim);
    fillShapes(canvas, [corners(reach - half)], fill);
  };

  const draw = (canvas: Canvas, mark: Mark): void => {
    switch (mark.kind) {
      case 'words':
        words(canvas, mark);
        break;
      case 'rectangle':
        rectangle(canvas, mark);
        break;
      case 'lines':
        lines(canvas, mark);
        break;
      case 'area':
        fillShapes(canvas, [mark.points], mark.fill, mark.opacity);
        break;
      case 'dot':
        dot(canvas, mark);
        break;
      case 'diamond':
        diamond(canvas, mark);
        break;
    }
  };

  return (canvas: Canvas, marks: Marks): void => {
    for (const mark of marks) draw(canvas, mark);
  };
};
