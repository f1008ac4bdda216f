import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
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
