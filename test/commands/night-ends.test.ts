/** What is asked of the night's two ends, of totality and of the Moon's distance: answered for that, and not for now. */
import { describe, expect, it } from 'vitest';
import { answer, ask, realDeps } from './real-deps.js';
import { isProblem } from '../../bot/ground/problem.js';

const EVENING = Date.UTC(2026, 10, 27, 19, 5);
const york = await realDeps({ clubSiteText: '53.96,-1.08' });
const laSerena = await realDeps({ clubSiteText: '-29.9,-71.25' });
const summary = async (deps: typeof york, line: string): Promise<string> => (await answer(deps, line, EVENING)).summary;

describe('an inner planet before the Sun', () => {
  // astropy 8.0 (its built-in ephemeris): at York Venus rises 28 Nov 04:03.7 UTC, the Sun 07:54.9; at La Serena Mercury 08:41.9 UTC, the Sun 09:36.8.
  it.each([
    'how long before the sun does venus come up',
    'whens venus rise before the sun',
    'when does venus rise before sunrise',
  ])('%s', async (line) =>
    expect(await summary(york, line)).toMatch(/Venus rises at 04:04 GMT.*3 h 51 min before the Sun/u),
  );

  it('from its rise to the Sun’s', async () =>
    expect(await summary(laSerena, "mercury before sunrise tomorrow, how long between its rise and sun's")).toMatch(
      /Mercury rises at 05:42.*55 min before the Sun/u,
    ));

  it('is not told to stop at a setting that is past', async () => {
    const { cautions } = await answer(york, 'can i see venus in the morning', EVENING);
    expect(cautions.join(' ')).not.toMatch(/as it sets/u);
    expect(cautions.join(' ')).toMatch(/park the mount before it rises/u);
  });

  it('with the Sun coming up comes the word to stop', async () =>
    expect(await summary(york, 'sun is just coming up is it ok to keep looking at jupiter')).toMatch(/^Stop before/u));

  it.each(['i want to see venus while sun is rising, bino', 'puedo mirar mercurio a mediodia con prismaticos'])(
    'no sweep with the Sun up: %s',
    async (line) => {
      const outcome = await ask(york, line, EVENING);
      expect(isProblem(outcome) ? outcome.message : '').toMatch(/^No, never sweep/u);
    },
  );
});

describe('the filter in totality', () => {
  // 2 Aug 2027 covers about a third of the Sun at York: astronomical almanacs, from memory; the path runs through southern Spain.
  it('says before and after, and what the next one is at this site', async () => {
    const outcome = await ask(york, 'filters needed during totality', EVENING);
    expect(isProblem(outcome) ? outcome.message : '').toMatch(
      /^Yes, before and after totality.*none is needed;.*Mon 2 Aug 2027\) covers 3\d % there: the filter stays on throughout\.$/u,
    );
  });

  it.each(['is it total here on 2 august 2027', 'will the august 2027 eclipse be total here'])('%s', async (line) =>
    expect(await summary(york, line)).toMatch(/^(?:None that is total here|Not total here: Partial)/u),
  );
});

describe('how far the Moon is', () => {
  // astropy 8.0, geocentric: 362,417 km on 27 Nov 19:18 UTC; apogee 11 Dec 07 h UTC 406,434 km, perigee 24 Dec 09 h UTC 356,649 km.
  it.each(['when is moon closest', 'next perigee', 'when is the moon furthest away from us'])('%s', async (line) =>
    expect(await summary(york, line)).toMatch(
      /^Moon is 362,000 km .*\(apogee\) Fri 11 Dec 2026, 07:00 UTC, 406,000 km; nearest \(perigee\) Thu 24 Dec 2026, 09:00 UTC, 357,000 km/u,
    ),
  );

  it('which full Moon is a supermoon', async () =>
    expect(await summary(york, 'is there a supermoon this year')).toMatch(
      /24 Dec, is 33\.5′: what is called a supermoon/u,
    ));
});
