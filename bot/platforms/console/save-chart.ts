/** Writes a reply's picture to a file the console can name. */
import { createHash } from 'node:crypto';
import { chmod, mkdir, readdir, stat, unlink, writeFile } from 'node:fs/promises';
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

export const chartFileName = (chart: Chart): string => `${slug(chart.title)}-${fingerprint(chart)}.png`;

/** Newest pictures that stay in the folder: an evening's worth, about 1.5 MB. */
const KEPT_PICTURES = 40;
/** Only what was named here is ever removed. */
const OWN_NAME = /^[a-z0-9-]{1,60}-[0-9a-f]{6}\.png$/u;

/** Removes the oldest beyond those kept; one that cannot be removed stays. */
const removeOldest = async (folder: string): Promise<void> => {
  const names = (await readdir(folder)).filter((name) => OWN_NAME.test(name));
  if (names.length <= KEPT_PICTURES) return;
  const written = await Promise.all(
    names.map(async (name) => {
      const file = path.join(folder, name);
      return { file, atMs: (await stat(file)).mtimeMs };
    }),
  );
  const oldest = written.sort((one, other) => other.atMs - one.atMs).slice(KEPT_PICTURES);
  await Promise.all(oldest.map(({ file }) => unlink(file)));
};

/**
 * Draws the chart and writes `<folder>/<title>-<fingerprint>.png`; the drawing library is loaded on first use. The newest 40 stay.
 * Returns the path, relative where that is shorter.
 */
export const saveChart = async (chart: Chart, folder: string): Promise<string> => {
  const { renderChart } = await import('../../reply/render-chart.js');
  const { png } = await renderChart(chart);
  // It may show a member's own sky: for nobody else on this computer.
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const file = path.join(folder, chartFileName(chart));
  await writeFile(file, png, { mode: 0o600 });
  await chmod(file, 0o600);
  await removeOldest(folder).catch(() => undefined);
  return path.relative(process.cwd(), file) || file;
};
