import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { saveChart } from '../../bot/platforms/console/save-chart.js';
import { NOW, openClub, TAMSIN } from '../club/club-bench.js';

it("a picture of a member's own sky is readable by nobody else on the computer, one from an earlier day too", async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pierhand-'));
  const club = await openClub({ clubSiteText: '52.71,0.12' });
  const { chart } = await club.says('up NGC 7331', TAMSIN, NOW);
  if (chart === undefined) throw new Error('no chart');
  const file = await saveChart(chart, join(folder, 'charts'));
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(statSync(join(folder, 'charts')).mode & 0o777).toBe(0o700);
  rmSync(file);
  writeFileSync(file, '', { mode: 0o644 });
  await saveChart(chart, join(folder, 'charts'));
  expect(statSync(file).mode & 0o777).toBe(0o600);
  rmSync(folder, { recursive: true });
});

it('the newest forty pictures stay, and nothing else in the folder is touched', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pierhand-'));
  const charts = join(folder, 'charts');
  mkdirSync(charts);
  const older = Array.from({ length: 60 }, (_, at) => `up-m-${at}-${String(at).padStart(6, '0')}.png`);
  for (const [at, name] of [...older, 'my-own-picture.png', 'notes.txt'].entries()) {
    writeFileSync(join(charts, name), '');
    utimesSync(join(charts, name), 1000 + at, 1000 + at);
  }
  const club = await openClub({ clubSiteText: '52.71,0.12' });
  const { chart } = await club.says('up NGC 7331', TAMSIN, NOW);
  if (chart === undefined) throw new Error('no chart');
  const file = await saveChart(chart, charts);
  const left = readdirSync(charts);
  expect(left).toEqual(expect.arrayContaining(['my-own-picture.png', 'notes.txt', ...older.slice(21)]));
  expect(left).toHaveLength(2 + 40);
  expect(statSync(file).size).toBeGreaterThan(1000);
  rmSync(folder, { recursive: true });
});
