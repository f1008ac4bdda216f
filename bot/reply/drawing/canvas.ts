/** A sheet of pixels in at most 256 colours, as a PNG with a palette holds them: a quarter of the room, and packed in a quarter of the time. */

export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** The cover of each pixel in {@link STEPS}, row by row. */
  readonly steps: Uint8Array;
}

export interface Canvas {
  /** A number into the palette for each pixel, row by row. */
  readonly pixels: Uint8Array;
  /** Red, green and blue of each colour. */
  readonly palette: () => Uint8Array;
  /** Begins anew; the colours (0xRRGGBB) that are sure to be wanted, the ground first, so that the palette has them whole. */
  readonly clear: (colours: readonly number[]) => void;
  /** Lays a colour over a pixel; cover 0 to 1. */
  readonly blend: (at: number, colour: number, cover: number) => void;
  /** The same for a small sheet of covers, its first pixel at (x, y); what lies beyond the canvas is left out. */
  readonly lay: (sheet: Sheet, x: number, y: number, colour: number) => void;
  /** The same for a stretch of pixels. */
  readonly blendRow: (from: number, to: number, colour: number, cover: number) => void;
}

const MOST_COLOURS = 256;
/** Steps of cover at an edge, and of each channel there: finer ones are not told apart by eye, and would fill the palette. */
export const STEPS = 12;
const CHANNEL_STEP = 8;

export const rgbOf = (colour: string): number => Number.parseInt(colour.slice(1), 16);

const mixed = (under: number, over: number, cover: number, step: number): number => {
  let rgb = 0;
  for (const shift of [16, 8, 0]) {
    const [from, to] = [(under >> shift) & 0xff, (over >> shift) & 0xff];
    rgb |= Math.min(0xff, Math.round((from + (to - from) * cover) / step) * step) << shift;
  }
  return rgb;
};

export const createCanvas = (width: number, height: number): Canvas => {
  const pixels = new Uint8Array(width * height);
  const colours = new Int32Array(MOST_COLOURS);
  let count = 0;
  const indices = new Map<number, number>();
  /** For a colour laid over: what becomes of each colour of the palette at each step of cover; −1: not asked yet. */
  const mixes = new Map<number, Int16Array>();

  const nearest = (rgb: number): number => {
    let best = 0;
    let least = Infinity;
    for (let i = 0; i < count; i++) {
      const other = colours[i] as number;
      const [r, g, b] = [
        (other >> 16) - (rgb >> 16),
        ((other >> 8) & 0xff) - ((rgb >> 8) & 0xff),
        (other & 0xff) - (rgb & 0xff),
      ];
      const apart = r * r + g * g + b * b;
      if (apart < least) [best, least] = [i, apart];
    }
    return best;
  };
  /** Where the palette is full, the nearest that is in it. */
  const indexOf = (rgb: number): number => {
    const known = indices.get(rgb);
    if (known !== undefined) return known;
    const isFull = count === MOST_COLOURS;
    const index = isFull ? nearest(rgb) : count++;
    if (!isFull) colours[index] = rgb;
    indices.set(rgb, index);
    return index;
  };

  let lastColour = -1;
  let table: Int16Array = new Int16Array(0);
  const tableOf = (colour: number): Int16Array => {
    if (colour !== lastColour) {
      table = mixes.get(colour) ?? new Int16Array((STEPS + 1) * MOST_COLOURS).fill(-1);
      mixes.set(colour, table);
      lastColour = colour;
    }
    return table;
  };

  /** @param steps of the colour: {@link tableOf} */
  const over = (at: number, colour: number, steps: Int16Array, step: number): void => {
    const place = step * MOST_COLOURS + (pixels[at] as number);
    const known = steps[place] as number;
    if (known >= 0) {
      pixels[at] = known;
      return;
    }
    const under = colours[pixels[at] as number] as number;
    const index = indexOf(step === STEPS ? colour : mixed(under, colour, step / STEPS, CHANNEL_STEP));
    steps[place] = index;
    pixels[at] = index;
  };

  return {
    pixels,
    palette: () => {
      const bytes = new Uint8Array(3 * count);
      for (let i = 0; i < count; i++) {
        const rgb = colours[i] as number;
        bytes.set([rgb >> 16, (rgb >> 8) & 0xff, rgb & 0xff], 3 * i);
      }
      return bytes;
    },
    clear: (wanted) => {
      count = 0;
      indices.clear();
      for (const steps of mixes.values()) steps.fill(-1);
      wanted.forEach(indexOf);
      pixels.fill(0);
    },
    blend: (at, colour, cover) => {
      const step = Math.round(cover * STEPS);
      if (step > 0) over(at, colour, tableOf(colour), step);
    },
    lay: (sheet, x, y, colour) => {
      const steps = tableOf(colour);
      const [left, right] = [Math.max(0, -x), Math.min(sheet.width, width - x)];
      const bottom = Math.min(sheet.height, height - y);
      for (let row = Math.max(0, -y); row < bottom; row++) {
        const from = row * sheet.width;
        const to = (y + row) * width + x;
        for (let column = left; column < right; column++) {
          const step = sheet.steps[from + column] as number;
          if (step > 0) over(to + column, colour, steps, step);
        }
      }
    },
    blendRow: (from, to, colour, cover) => {
      if (cover === 1) {
        pixels.fill(indexOf(colour), from, to);
        return;
      }
      let under = -1;
      let index = 0;
      for (let at = from; at < to; at++) {
        if (pixels[at] !== under) {
          under = pixels[at] as number;
          index = indexOf(mixed(colours[under] as number, colour, cover, 1));
        }
        pixels[at] = index;
      }
    },
  };
};
