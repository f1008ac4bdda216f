/** The few marks the charts are made of, as data: written as SVG in svg.ts, drawn as pixels in drawing/. Lengths are units of the sheet. */
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

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  /** Lengths of dash and gap. */
  readonly dashes?: Point;
}

/** Colours are "#rrggbb". */
export type Mark =
  | { readonly kind: 'words'; readonly text: string; readonly at: Point; readonly style: WordStyle }
  | {
      readonly kind: 'rectangle';
      readonly at: Point;
      readonly size: Point;
      readonly fill: string;
      readonly opacity: number;
    }
  /** Lines through at least two points each. */
  | { readonly kind: 'lines'; readonly lines: readonly (readonly Point[])[]; readonly style: LineStyle }
  | { readonly kind: 'area'; readonly points: readonly Point[]; readonly fill: string; readonly opacity: number }
  | { readonly kind: 'dot'; readonly at: Point; readonly radius: number; readonly fill: string }
  /** A square on its corner, with a rim two units wide, so that it stands out from a line in its own colour. */
  | {
      readonly kind: 'diamond';
      readonly at: Point;
      readonly reach: number;
      readonly fill: string;
      readonly rim: string;
    };

/** In the order in which they are drawn. */
export type Marks = readonly Mark[];

export const DIAMOND_RIM = 2;
/** Width of the stroke behind words that have a rim; half of it shows. */
export const WORD_RIM = 5;

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

export const words = (text: string, at: Point, style: WordStyle): Marks => [{ kind: 'words', text, at, style }];

export const rectangle = (at: Point, size: Point, fill: string, opacity = 1): Marks => [
  { kind: 'rectangle', at, size, fill, opacity },
];

/** A line through the points; null lifts the pen. Nothing where fewer than two points follow one another. */
export const curve = (points: readonly (Point | null)[], style: LineStyle): Marks => {
  const lines: Point[][] = [[]];
  for (const point of points) {
    if (point === null) lines.push([]);
    else lines.at(-1)?.push(point);
  }
  const drawn = lines.filter(({ length }) => length > 1);
  return drawn.length === 0 ? [] : [{ kind: 'lines', lines: drawn, style }];
};

export const area = (points: readonly Point[], fill: string, opacity: number): Marks => [
  { kind: 'area', points, fill, opacity },
];

export const dot = (at: Point, radius: number, fill: string): Marks => [{ kind: 'dot', at, radius, fill }];

export const diamond = (at: Point, reach: number, fill: string, rim: string): Marks => [
  { kind: 'diamond', at, reach, fill, rim },
];
