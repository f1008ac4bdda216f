/** The charts drawn lately, by an address that cannot be guessed. */
import { randomUUID } from 'node:crypto';
import type { Chart } from '../../reply/reply.js';
import { putNewest } from '../../ground/remember.js';

export interface DrawnPictures {
  /** Draws; the drawing library is loaded on first use. */
  readonly draw: (chart: Chart) => Promise<string>;
  readonly at: (address: string) => Buffer | undefined;
}

const KEPT_PICTURES = 60;

export const createPictures = (): DrawnPictures => {
  const kept = new Map<string, Buffer>();
  return {
    draw: async (chart) => {
      const { renderChart } = await import('../../reply/render-chart.js');
      const { png } = await renderChart(chart);
      const address = `/picture/${randomUUID()}.png`;
      putNewest(kept, address, png, KEPT_PICTURES);
      return address;
    },
    at: (address) => kept.get(address),
  };
};
