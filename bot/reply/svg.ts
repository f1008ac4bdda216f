/**
 * The few marks the charts are drawn with, as SVG text. Lengths are pixels. Words are escaped here and nowhere else. Neither clips
 * nor groups with an opacity of their own: each would cost the renderer a whole picture's worth of pixels.
 */
import { tableOf } from '../ground/table-of.js';
export type Point = readonly [x: number, y: number];

export interface WordStyle {
  readonly size: number;
  readonly colour: string;
  /** Which part of the words stands at the point; the start where it is left out. */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Read upwards, turned about the point. */
  readonly isUpright?: boolean;
  /** A rim of this colour, so that the words stay legible over lines. */
  readonly rim?: string;
}

const ENTITY = tableOf({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' });
/** XML 1.0, section 2.2: what no document may hold, escaped or not. */
// eslint-disable-next-line no-control-regex -- those very characters are meant
const FORBIDDEN = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/gu, (character) => ENTITY.get(character) ?? '');

const px = (value: number): string => String(Math.round(value * 100) / 100);

/** Share of the type size that a character takes in the charts' font; measured on it, by kinds of letter. */
const advance = (character: string): number => {
  if (/[ijlI.,:;'|!()[\] ]/u.test(character)) return 0.35;
  if (/[mwMW@%—]/u.test(character)) return 0.93;
  return /[A-Z]/u.test(character) ? 0.7 : 0.62;
};

/** About how many pixels the words take at this type size. */
export const textWidth = (text: string, size: number): number =>
  Array.from(text).reduce((sum, character) => sum + advance(character) * size, 0);

/** The words, cut with an ellipsis where they would take more than `width` at this type size. */
export const fitted = (text: string, size: number, width: number): string => {
  let taken = 0;
  const characters = Array.from(text);
  const end = characters.findIndex((character) => (taken += advance(character) * size) > width);
  return end === -1
    ? text
    : `${characters
        .slice(0, Math.max(0, end - 1))
        .join('')
        .trimEnd()}…`;
};

export const words = (text: string, [x, y]: Point, style: WordStyle): string => {
  const { size, colour, anchor = 'start', isUpright = false, rim } = style;
  const turn = isUpright ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : '';
  const halo =
    rim === undefined ? '' : ` stroke="${rim}" stroke-width="5" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${px(x)}" y="${px(y)}" font-size="${size}" fill="${colour}" text-anchor="${anchor}"${turn}${halo}>${escaped(text)}</text>`;
};

export const rectangle = ([x, y]: Point, [width, height]: Point, fill: string, opacity = 1): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" fill="${fill}"${opacity === 1 ? '' : ` fill-opacity="${opacity.toFixed(2)}"`}/>`;

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  /** Lengths of dash and gap. */
  readonly dashes?: Point;
}

/** A line through the points; null lifts the pen. Nothing where fewer than two points follow one another. */
export const curve = (points: readonly (Point | null)[], { colour, width, dashes }: LineStyle): string => {
  let isDown = false;
  let d = '';
  for (const point of points) {
    if (point !== null) d += `${isDown ? 'L' : 'M'}${px(point[0])} ${px(point[1])}`;
    isDown = point !== null;
  }
  if (!d.includes('L')) return '';
  const dashed = dashes === undefined ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  return `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="round"${dashed}/>`;
};

export const area = (points: readonly Point[], fill: string, opacity: number): string =>
  `<polygon points="${points.map(([x, y]) => `${px(x)},${px(y)}`).join(' ')}" fill="${fill}" fill-opacity="${opacity}"/>`;

export const dot = ([x, y]: Point, radius: number, fill: string): string =>
  `<circle cx="${px(x)}" cy="${px(y)}" r="${radius}" fill="${fill}"/>`;

/** A square on its corner, with a rim so that it stands out from a line in its own colour. */
export const diamond = ([x, y]: Point, reach: number, fill: string, rim: string): string =>
  `<path d="M${px(x)} ${px(y - reach)}l${reach} ${reach}l${-reach} ${reach}l${-reach} ${-reach}z" fill="${fill}" stroke="${rim}" stroke-width="2"/>`;
