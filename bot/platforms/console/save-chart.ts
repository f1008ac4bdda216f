/** Writes a reply's picture to a file the console can name. */
import { createHash } from 'node:crypto';
import { chmod, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Chart } from '../../reply/reply.js';

const slug = (title: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 60) || 'chart';

/** Tells pictures of one title apart: another site, another hour, another horizon. */
const fingerprint = (chart: Chart): string =>
  createHash('sha256').update(JSON.stringify(chart)).digest('hex').slice(0, 6);

/** Draws the chart and writes `<folder>/<title>-<fingerprint>.png`; the drawing library is loaded on first use. Returns the path, relative where that is shorter. */
export const saveChart = async (chart: Chart, folder: string): Promise<string> => {
  const { renderChart } = await import('../../reply/render-chart.js');
  const { png } = await renderChart(chart);
  // It may show a member's own sky: for nobody else on this computer.
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const file = path.join(folder, `${slug(chart.title)}-${fingerprint(chart)}.png`);
  await writeFile(file, png, { mode: 0o600 });
  await chmod(file, 0o600);
  return path.relative(process.cwd(), file) || file;
};
