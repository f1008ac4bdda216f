/** A yes or a no that is asked for begins the answer. */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from './real-deps.js';

// Thursday 26 November 2026, 19:42 UTC, two days after full Moon.
const NOW = Date.UTC(2026, 10, 26, 19, 42);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const summary = async (line: string, nowUtcMs = NOW): Promise<string> => (await answer(deps, line, nowUtcMs)).summary;

// All times and heights by pip's ephem 4.2.1 for 52.71° N, 0.12° E: Saturn sets 02:17:22, 19.7° at 00:00, 27.3° in azimuth 229° at 23:00,
// 35.5° at 21:30, through 20° at 23:57:45 and 10° at 01:07:58; Jupiter rises 22:15:39, through 10° at 23:27:41; Vega 34.4° now, through 20°
// at 21:31:55; M 33 through 60° at 23:04:13; Rigel through 20° at 22:09:00, 24.7° at 23:00; Venus rises 03:58:30.
describe('of a target', () => {
  it.each([
    ['does saturn set before midnight', /^No, it sets at 02:17 GMT; 20° high in the west-south-west at 00:00/u],
    ['will saturn be gone by 3am', /^Yes, it sets at 02:17 GMT\./u],
    ['has saturn set', /^No, it sets at 02:17 GMT/u],
    ['have we missed saturn', /^No, it is high enough until 01:0[78] GMT/u],
    ['is saturn in the west at 11', /^Yes, 27° high in the south-west at 23:00 GMT/u],
    ['is saturn in the east at 11', /^No, not in the east: 27° high in the south-west/u],
    ['will saturn still be above 20 at 21:30', /^Yes, 36° at 21:30 GMT: above 20° until 23:5[78] GMT/u],
    ['is jupiter up yet', /^No, not yet: it rises at 22:1[56] GMT/u],
    ['is it too early for jupiter', /^Yes: from 23:2[78] GMT on \(it rises at 22:1[56] GMT\)/u],
    ['can i see jupiter from my balcony facing east', /^From 23:2[78] GMT on .* in the east/u],
    ['can we see jupiter from a west-facing window', /^No, it is not high enough in the west/u],
    ['is vega up', /^Yes, 34° high in the west-north-west now\.$/u],
    ['can i still see vega', /^Only until 21:3[12] GMT/u],
    ['does m 33 get above 60', /^Yes, above 60° until 23:04 GMT/u],
    ['does m 33 get above 80', /^No, never above 80°/u],
    ['is it too late for orion', /^No, it is still to come: from 22:09 GMT on/u],
    ['does orion clear the trees before 11', /^Yes, 25° high in the south-south-east at 23:00/u],
    ['is venus visible tonight', /^From 05:1\d GMT on \(it rises at 03:5[89] GMT\)/u],
    ['can i see m 31 with binoculars', /^Yes, with binoculars/u],
    ['can i see neptune without a telescope', /^No, not with the naked eye: mag 7\.\d/u],
    ['is jupiter bright', /^Yes, very: mag −2\.\d/u],
    ['is uranus bright', /^No: mag 5\.\d/u],
    // By hand: 52.71° + 38.8° − 90°, and 58° high at its lower culmination for δ = +57.1°: Castor, δ = +31.8°, sets.
    ['is vega circumpolar', /^Yes, it never sets here: at its lowest 2° high/u],
    ['does castor ever set', /^Yes, it rises 17:2\d GMT and sets 12:5\d GMT/u],
    ['will the moon be up at ten', /^Yes, 3[67]° high in the east at 22:00/u],
    ['is the moon in the way of the pleiades', /^Yes, it takes much of it/u],
    ['can i see omega centauri tonight', /^No: not up from here, ever/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  it('is told of a night to come from when to when', async () => {
    expect(await summary('can i see saturn tomorrow')).toMatch(/^Yes, from 16:\d\d GMT to 01:0\d GMT/u);
  });

  it('is of this minute by day too', async () => {
    expect(await summary('is saturn up', Date.UTC(2026, 10, 26, 15))).toMatch(/^Yes, but by day|^Yes, from/u);
  });

  // Sunrise on the 27th is at 07:42; Venus then stands 39° from the Sun: the usual caution, and no word of its hours by night.
  it.each([
    'could i look at venus after sunrise',
    'when does the sun rise today, and could i look at venus safely in the telescope after that?',
    'is it safe to look at venus once the sun comes up',
  ])('%s', async (line) => {
    const { level, cautions } = await answer(deps, line, NOW);
    expect(level).toBe('danger');
    expect(cautions.join(' ')).toMatch(/The Sun is up, 39° from Venus/u);
  });
});
