/**
 * How much of each pixel a shape covers, exactly by area. Each edge leaves in a pixel how much of its height it passes there
 * and to the right of it; summed along a row that is the cover.
 */

export interface Coverage {
  /** A straight edge of a closed shape. Shapes whose edges run the same way round may overlap. */
  readonly edge: (x0: number, y0: number, x1: number, y1: number) => void;
  /** Tells every pixel that is covered, 0 to 1, and forgets the shape. `at` counts row by row. */
  readonly paint: (pixel: (at: number, cover: number) => void) => void;
}

const LEAST_COVER = 1 / 512;

export const createCoverage = (width: number, height: number): Coverage => {
  const stride = width + 2;
  const sums = new Float32Array(stride * height);
  const firstOf = new Int32Array(height).fill(stride);
  const lastOf = new Int32Array(height).fill(-1);

  /** A piece of an edge within one row. */
  const inRow = (row: number, x0: number, x1: number, tall: number): void => {
    const [left, right] = x0 < x1 ? [x0, x1] : [x1, x0];
    const first = Math.max(0, Math.floor(left));
    if (first > width) return;
    const last = Math.min(width, Math.max(0, Math.floor(right)));
    if (first < (firstOf[row] as number)) firstOf[row] = first;
    if (last + 1 > (lastOf[row] as number)) lastOf[row] = last + 1;
    const base = row * stride;
    if (last <= first) {
      const share = Math.min(1, Math.max(0, (left + right) / 2 - first));
      sums[base + first] = (sums[base + first] as number) + tall * (1 - share);
      sums[base + first + 1] = (sums[base + first + 1] as number) + tall * share;
      return;
    }
    const perPixel = tall / (right - left);
    let from = left;
    for (let x = first; x <= last; x++) {
      const to = x === last ? right : x + 1;
      const part = (to - from) * perPixel;
      const share = Math.min(1, Math.max(0, (from + to) / 2 - x));
      sums[base + x] = (sums[base + x] as number) + part * (1 - share);
      sums[base + x + 1] = (sums[base + x + 1] as number) + part * share;
      from = to;
    }
  };

  return {
    edge: (x0, y0, x1, y1) => {
      if (y0 === y1) return;
      const way = y1 > y0 ? 1 : -1;
      const [topX, topY, endX, endY] = way > 0 ? [x0, y0, x1, y1] : [x1, y1, x0, y0];
      const slope = (endX - topX) / (endY - topY);
      let y = Math.max(0, topY);
      let x = topX + slope * (y - topY);
      const end = Math.min(height, endY);
      while (y < end) {
        const row = Math.floor(y);
        const next = Math.min(row + 1, end);
        const nextX = topX + slope * (next - topY);
        inRow(row, x, nextX, (next - y) * way);
        y = next;
        x = nextX;
      }
    },
    paint: (pixel) => {
      for (let row = 0; row < height; row++) {
        const last = lastOf[row] as number;
        if (last < 0) continue;
        const base = row * stride;
        let sum = 0;
        for (let x = firstOf[row] as number; x <= last; x++) {
          sum += sums[base + x] as number;
          sums[base + x] = 0;
          const cover = Math.min(1, Math.abs(sum));
          if (cover > LEAST_COVER && x < width) pixel(row * width + x, cover);
        }
        firstOf[row] = stride;
        lastOf[row] = -1;
      }
    },
  };
};
