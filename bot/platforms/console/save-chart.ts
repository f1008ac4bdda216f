/** Writes a reply's picture to a file the console can name. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Chart } from '../../reply/reply.js';

const slug = (title: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 60) || 'chart';

/** Draws the chart and writes `<folder>/<title>.png`; the drawing library is loaded on first use. Returns the path, relative where that is shorter. */
export const saveChart = async (chart: Chart, folder: string): Promise<string> => {
  const { renderChart } = await import('../../reply/render-chart.js');
  const { png } = await renderChart(chart);
  await mkdir(folder, { recursive: true });
  const file = path.join(folder, `${slug(chart.title)}.png`);
  await writeFile(file, png);
  return path.relative(process.cwd(), file) || file;
};
