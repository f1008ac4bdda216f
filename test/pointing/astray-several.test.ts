/**
 * Landings on six stars, made with pyerfa and no code of ours: alt-azimuth directions of date at 52.71° N, 0.12° E, 2026-11-25
 * 19:30 UTC, the pole end of the base lowered by 45′ and the base turned east by 72′ (or neither: 0.6′ and 1.2′), 2′ of noise,
 * back to J2000.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { chartSvg } from '../../bot/reply/render-chart.js';
import { answer, realDeps } from '../commands/real-deps.js';

const OFF = {
  landed: '18:31:12.8 +39:38:20',
  also: 'Capella = 05:16:25.9 +45:23:11; Altair = 19:46:53.0 +09:51:12; Aldebaran = 04:33:28.7 +16:03:17; Deneb = 20:37:31.5 +46:20:51; Mirfak = 03:25:31.7 +49:43:36',
};
const NEARLY_RIGHT = {
  landed: '18:37:00.7 +38:45:16',
  also: 'Capella = 05:16:47.0 +46:01:21; Altair = 19:50:55.3 +08:49:28; Aldebaran = 04:36:13.0 +16:31:32; Deneb = 20:41:34.9 +45:16:56; Mirfak = 03:24:23.8 +49:53:18',
};
const NOW = Date.UTC(2026, 10, 25, 19, 30);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});
const asked = ({ landed, also }: typeof OFF) =>
  answer(deps, `astray Vega landed:"${landed}" also:"${also}" within:0.05 site:52.71,0.12 at:2026-11-25T19:30Z`, NOW);
interface Several {
  readonly raisedArcmin: number;
  readonly turnedArcmin: number;
  readonly raisedSigmaArcmin: number;
}

describe('several stars', () => {
  it('give the polar axis within a tenth, in the mount’s own words, with what is left in words and drawn', async () => {
    const reply = await asked(OFF);
    const fit = reply.data['severalStars'] as unknown as Several;
    expect(fit.raisedArcmin / -45).toBeCloseTo(1, 1);
    expect(fit.turnedArcmin / 72).toBeCloseTo(1, 1);
    expect((reply.data['causes'] as { id?: string }[])[0]?.id).toBe('polar-axis');
    const words = reply.facts.map(({ value }) => value).join(' ');
    expect(words).toMatch(
      /4\d′ ± \d′ too low: turn it up by that; azimuth 7\d′ ± \d′ too far east: turn its upper end west/u,
    );
    expect(reply.chart?.kind).toBe('misses');
    expect(reply.chart?.altText).toContain('Left over: Vega');
    const svg = chartSvg(reply.chart!);
    for (const name of ['Vega', 'Capella', 'Altair', 'Aldebaran', 'Deneb', 'Mirfak'])
      expect(svg).toContain(`>${name}<`);
    expect(svg).toContain('drawn 20 times as large');
  });

  it('within the noise are said to be, and no screw is turned for them', async () => {
    const reply = await asked(NEARLY_RIGHT);
    expect(reply.summary).toContain('No miss to speak of');
    const axis = reply.facts.find(({ label }) => label.startsWith('Polar axis'))!.value;
    expect(axis).toMatch(/^height \d+′, within the noise \(±\d+′\): leave it/u);
  });

  it('are all read as sharply as within: says, so that landings that fit nothing are told as such', async () => {
    const reply = await answer(
      deps,
      'astray Vega landed:"1.2 degrees west of it" also:"Capella = 40 arcminutes east of it; Deneb = 1.1 degrees south of it; Mirfak = 0.6 degrees north of it; Aldebaran = 0.9 degrees east of it; Altair = 1.3 degrees west of it" within:0.05 site:52.71,0.12 at:2026-11-25T19:30Z',
      NOW,
    );
    expect(reply.summary).toContain('fits none of the mistakes I know');
    expect(reply.facts.find(({ label }) => label.startsWith('Polar axis'))!.value).toContain('within the noise');
  });
});
