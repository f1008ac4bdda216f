/**
 * Outlines of letters from a TrueType font file: ISO/IEC 14496-22 (Open Font Format), tables head, hhea, maxp, hmtx, cmap
 * (format 4), loca and glyf. Neither hinting nor kerning.
 */

/** A closed line of straight pieces; x to the right, y up, in font units. */
export type Contour = readonly (readonly [x: number, y: number])[];

export interface Outline {
  /** How far the next letter begins, in font units. */
  readonly advance: number;
  readonly contours: readonly Contour[];
}

export interface Font {
  readonly unitsPerEm: number;
  /** Null where the font has no such letter. */
  readonly outlineOf: (codePoint: number) => Outline | null;
}

interface RawPoint {
  readonly x: number;
  readonly y: number;
  readonly isOn: boolean;
}

/** Straight pieces a curve is drawn with: at the charts' sizes none is off by a tenth of a pixel. */
const PIECES = 5;

const middle = (a: RawPoint, b: RawPoint): RawPoint => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, isOn: true });

/** Quadratic curves taken apart; between two points off the line stands one on it that the file leaves out. */
const flattened = (points: readonly RawPoint[]): Contour => {
  const whole = points.flatMap((point, i): RawPoint[] => {
    const next = points[(i + 1) % points.length] as RawPoint;
    return point.isOn || next.isOn ? [point] : [point, middle(point, next)];
  });
  const first = whole.findIndex(({ isOn }) => isOn);
  if (first < 0) return [];
  const turned = [...whole.slice(first), ...whole.slice(0, first)];
  const line: [number, number][] = [];
  turned.forEach((point, i) => {
    if (point.isOn) {
      line.push([point.x, point.y]);
      return;
    }
    const from = turned[i - 1] as RawPoint;
    const to = turned[(i + 1) % turned.length] as RawPoint;
    for (let piece = 1; piece < PIECES; piece++) {
      const t = piece / PIECES;
      const [a, b, c] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
      line.push([a * from.x + b * point.x + c * to.x, a * from.y + b * point.y + c * to.y]);
    }
  });
  return line;
};

const FLAG = { on: 1, shortX: 2, shortY: 4, repeat: 8, sameX: 16, sameY: 32 } as const;
const PART = { words: 1, offsets: 2, scale: 8, more: 32, scales: 64, matrix: 128 } as const;
const MOST_DEEP = 5;

const tablesOf = (file: DataView): ReadonlyMap<string, number> => {
  const tables = new Map<string, number>();
  for (let i = 0; i < file.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const name = String.fromCharCode(...[0, 1, 2, 3].map((k) => file.getUint8(at + k)));
    tables.set(name, file.getUint32(at + 8));
  }
  return tables;
};

/** Offset of the table for Unicode's first plane. */
const letterTable = (file: DataView, cmap: number): number => {
  for (let i = 0; i < file.getUint16(cmap + 2); i++) {
    const at = cmap + file.getUint32(cmap + 4 + 8 * i + 4);
    if (file.getUint16(at) === 4) return at;
  }
  throw new Error('the font has no table of letters that can be read');
};

/** Throws where a table is missing. */
export const readFont = (bytes: Uint8Array): Font => {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = tablesOf(file);
  const table = (name: string): number => {
    const at = tables.get(name);
    if (at === undefined) throw new Error(`the font has no table ${name}`);
    return at;
  };
  const [head, hmtx, loca, glyf] = [table('head'), table('hmtx'), table('loca'), table('glyf')];
  const letters = letterTable(file, table('cmap'));
  const measured = file.getUint16(table('hhea') + 34);
  const isLong = file.getInt16(head + 50) === 1;

  const glyphOf = (codePoint: number): number => {
    const doubled = file.getUint16(letters + 6);
    for (let i = 0; i < doubled; i += 2) {
      if (file.getUint16(letters + 14 + i) < codePoint) continue;
      const starts = letters + 16 + doubled;
      const start = file.getUint16(starts + i);
      if (start > codePoint) return 0;
      const delta = file.getUint16(starts + doubled + i);
      const rangeAt = starts + 2 * doubled + i;
      const range = file.getUint16(rangeAt);
      if (range === 0) return (codePoint + delta) & 0xffff;
      const glyph = file.getUint16(rangeAt + range + 2 * (codePoint - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };

  const placeOf = (glyph: number): number =>
    isLong ? file.getUint32(loca + 4 * glyph) : 2 * file.getUint16(loca + 2 * glyph);

  const simple = (at: number, contours: number): Contour[] => {
    const ends = Array.from({ length: contours }, (_, i) => file.getUint16(at + 10 + 2 * i));
    const count = (ends.at(-1) ?? -1) + 1;
    let cursor = at + 10 + 2 * contours;
    cursor += 2 + file.getUint16(cursor);
    const flags: number[] = [];
    while (flags.length < count) {
      const flag = file.getUint8(cursor++);
      flags.push(flag);
      if ((flag & FLAG.repeat) !== 0) for (let again = file.getUint8(cursor++); again > 0; again--) flags.push(flag);
    }
    const along = (short: number, same: number): number[] => {
      let value = 0;
      return flags.slice(0, count).map((flag) => {
        if ((flag & short) !== 0) value += (flag & same) === 0 ? -file.getUint8(cursor++) : file.getUint8(cursor++);
        else if ((flag & same) === 0) {
          value += file.getInt16(cursor);
          cursor += 2;
        }
        return value;
      });
    };
    const xs = along(FLAG.shortX, FLAG.sameX);
    const ys = along(FLAG.shortY, FLAG.sameY);
    const points = xs.map((x, i) => ({ x, y: ys[i] ?? 0, isOn: ((flags[i] ?? 0) & FLAG.on) !== 0 }));
    return ends.map((end, i) => flattened(points.slice((ends[i - 1] ?? -1) + 1, end + 1)));
  };

  /** Put together of other glyphs, each moved and perhaps scaled. */
  const composed = (at: number, depth: number): Contour[] => {
    const found: Contour[] = [];
    let cursor = at + 10;
    let flags: number = PART.more;
    const scaleAt = (offset: number): number => file.getInt16(cursor + offset) / 16_384;
    while ((flags & PART.more) !== 0) {
      flags = file.getUint16(cursor);
      const glyph = file.getUint16(cursor + 2);
      const isWide = (flags & PART.words) !== 0;
      const isMoved = (flags & PART.offsets) !== 0;
      const dx = isWide ? file.getInt16(cursor + 4) : file.getInt8(cursor + 4);
      const dy = isWide ? file.getInt16(cursor + 6) : file.getInt8(cursor + 5);
      cursor += isWide ? 8 : 6;
      let [xx, xy, yx, yy] = [1, 0, 0, 1];
      if ((flags & PART.scale) !== 0) {
        xx = yy = scaleAt(0);
        cursor += 2;
      } else if ((flags & PART.scales) !== 0) {
        [xx, yy] = [scaleAt(0), scaleAt(2)];
        cursor += 4;
      } else if ((flags & PART.matrix) !== 0) {
        [xx, xy, yx, yy] = [scaleAt(0), scaleAt(2), scaleAt(4), scaleAt(6)];
        cursor += 8;
      }
      const [left, up] = isMoved ? [dx, dy] : [0, 0];
      for (const contour of contoursOf(glyph, depth + 1))
        found.push(contour.map(([x, y]) => [xx * x + yx * y + left, xy * x + yy * y + up] as const));
    }
    return found;
  };

  const contoursOf = (glyph: number, depth: number): Contour[] => {
    const [from, to] = [placeOf(glyph), placeOf(glyph + 1)];
    if (from === to || depth > MOST_DEEP) return [];
    const contours = file.getInt16(glyf + from);
    return contours >= 0 ? simple(glyf + from, contours) : composed(glyf + from, depth);
  };

  return {
    unitsPerEm: file.getUint16(head + 18),
    outlineOf: (codePoint) => {
      const glyph = codePoint > 0xffff ? 0 : glyphOf(codePoint);
      if (glyph === 0) return null;
      const advance = file.getUint16(hmtx + 4 * Math.min(glyph, measured - 1));
      return { advance, contours: contoursOf(glyph, 0) };
    },
  };
};
