/** Letters as small sheets of cover, drawn once for a size and place within a pixel and then laid wherever words stand. */
import { createKept } from '../../ground/kept.js';
import { STEPS, type Sheet } from './canvas.js';
import { createCoverage } from './coverage.js';
import type { Font, Outline } from './outlines.js';

interface Place {
  /** Of the sheet's first pixel from the pixel in which the letter begins. */
  readonly left: number;
  readonly top: number;
}

export interface Letter extends Sheet, Place {}

interface Shape extends Place {
  readonly width: number;
  readonly height: number;
  /** 0 to 1 for each pixel, row by row. */
  readonly cover: Float32Array;
}

export interface LetterStyle {
  readonly sizePx: number;
  readonly isUpright: boolean;
  /** How far the letter is spread on all sides; 0: the letter itself. */
  readonly rimPx: number;
}

/** Places within a pixel that are told apart. */
export const PHASES = 4;
/** Every letter of the usual charts, plain and with a rim, in all phases; some 2 kB each. */
const MOST_KEPT = 600;

type Line = readonly (readonly [x: number, y: number])[];

const placed = (
  { contours }: Outline,
  unitsPerEm: number,
  { sizePx, isUpright }: LetterStyle,
  phase: number,
): readonly Line[] => {
  const scale = sizePx / unitsPerEm;
  const shift = phase / PHASES;
  return contours.map((contour) =>
    contour.map(([x, y]) => (isUpright ? [-y * scale, -x * scale - shift] : [x * scale + shift, -y * scale])),
  );
};

const shapeOf = (lines: readonly Line[]): Shape => {
  const [xs, ys] = [lines.flatMap((line) => line.map(([x]) => x)), lines.flatMap((line) => line.map(([, y]) => y))];
  if (xs.length === 0) return { left: 0, top: 0, width: 0, height: 0, cover: new Float32Array(0) };
  const [left, top] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
  const [width, height] = [Math.ceil(Math.max(...xs)) - left, Math.ceil(Math.max(...ys)) - top];
  const coverage = createCoverage(width, height);
  for (const line of lines)
    line.forEach(([x, y], i) => {
      const [nextX, nextY] = line[(i + 1) % line.length] as readonly [number, number];
      coverage.edge(x - left, y - top, nextX - left, nextY - top);
    });
  const cover = new Float32Array(width * height);
  coverage.paint((at, share) => {
    cover[at] = share;
  });
  return { left, top, width, height, cover };
};

/** The same letter with all its edges moved outwards; one that covers half a pixel ends in the middle of it. */
const spread = (letter: Shape, reachPx: number): Shape => {
  const room = Math.ceil(reachPx + 1);
  const [width, height] = [letter.width + 2 * room, letter.height + 2 * room];
  const cover = new Float32Array(width * height);
  const disc: (readonly [dx: number, dy: number, left: number])[] = [];
  for (let dy = -room; dy <= room; dy++)
    for (let dx = -room; dx <= room; dx++) {
      const left = reachPx - Math.hypot(dx, dy);
      if (left > -1) disc.push([dx, dy, left]);
    }
  for (let y = 0; y < letter.height; y++)
    for (let x = 0; x < letter.width; x++) {
      const own = letter.cover[y * letter.width + x] as number;
      if (own === 0) continue;
      for (const [dx, dy, left] of disc) {
        const at = (y + room + dy) * width + x + room + dx;
        cover[at] = Math.max(cover[at] as number, Math.min(1, own + left));
      }
    }
  return { left: letter.left - room, top: letter.top - room, width, height, cover };
};

const inSteps = ({ cover, ...place }: Shape): Letter => ({
  ...place,
  steps: Uint8Array.from(cover, (share) => Math.round(share * STEPS)),
});

export interface Letters {
  /** Pixels from this letter's beginning to the next one's. */
  readonly advancePx: (letter: string, sizePx: number) => number;
  readonly letter: (letter: string, style: LetterStyle, phase: number) => Letter;
}

const NONE: Outline = { advance: 0, contours: [] };

/** A letter that the font has not takes no room and leaves no mark. */
export const createLetters = (font: Font): Letters => {
  const outlines = createKept<string, Outline>(MOST_KEPT);
  const sheets = createKept<string, Letter>(MOST_KEPT);
  const outlineOf = (letter: string): Outline =>
    outlines(letter, () => font.outlineOf(letter.codePointAt(0) ?? 0) ?? NONE);
  return {
    advancePx: (letter, sizePx) => (outlineOf(letter).advance * sizePx) / font.unitsPerEm,
    letter: (letter, style, phase) =>
      sheets(`${letter}${phase}${style.isUpright ? 'u' : 'l'}${style.rimPx} ${style.sizePx}`, () => {
        const plain = shapeOf(placed(outlineOf(letter), font.unitsPerEm, style, phase));
        return inSteps(style.rimPx === 0 ? plain : spread(plain, style.rimPx));
      }),
  };
};
