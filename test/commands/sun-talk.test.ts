/** After a warning of the Sun: what is of it still gets its own point in short, what is not gets its own answer. */
import { describe, expect, it } from 'vitest';
import { cautionText } from '../../bot/cautions/cautions.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const NOON = Date.UTC(2026, 10, 27, 12, 30);
const EVENING = Date.UTC(2026, 10, 27, 20, 30);
const WARNED = 'can i look at the sun with my dob';

const after = async (line: string, nowUtcMs: number, first = WARNED): Promise<readonly [string, string]> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.10' });
  await ask(deps, first, nowUtcMs);
  const outcome = await ask(deps, line, nowUtcMs + 20_000);
  return isProblem(outcome) ? [outcome.problem, outcome.message] : ['', outcome.summary];
};

describe('of the Sun still', () => {
  it.each([
    ['what about sunglasses', /^No: sunglasses neither/u],
    ['two pairs of sunglasses', /^No: sunglasses neither/u],
    ['and through clouds', /^No: cloud/u],
    ['can i look at the sun when its foggy', /^No: cloud/u],
    ['at sunset then', /^No: not while it is low/u],
    ['what about in the evening', /^No: not while it is low/u],
    ['only for a second', /^No: not for a moment/u],
    ['and the finder?', /finder/u],
    ['and with binoculars', /^No: not with binoculars/u],
    ['through my phone', /^No: not with a phone/u],
    ['what if i squint', /^No: not with eyes half closed/u],
    ['i did it before and nothing happened', /^No: that nothing happened/u],
    ['with a cd in front', /^No: nothing of that stands in/u],
    ['why', /^A lens gathers the Sun's light/u],
    ['with my solar filter on', /^Yes, if it is a full-aperture solar filter/u],
  ] as const)('gets its own point, and what makes it safe: %s', async (line, told) => {
    for (const nowUtcMs of [NOON, EVENING]) {
      const [code, words] = await after(line, nowUtcMs);
      expect([code, words]).toEqual(['not-safe', expect.stringMatching(told)]);
      expect(words).toMatch(/full-aperture solar filter/u);
      expect(words.length).toBeLessThan(cautionText('sun-looking').length);
    }
  });

  it('an injury, a fire and totality are told whole', async () => {
    expect((await after('theres a spot in my eye now', NOON))[1]).toBe(cautionText('eyes'));
    expect((await after('the eyepiece is melting', NOON))[1]).toBe(cautionText('sun-now'));
    expect((await after('can i take the filter off in totality', NOON))[1]).toContain(cautionText('sun-totality'));
  });

  it.each(['uncapped', 'what about at a window'])('an open tube in the Sun is of it: %s', async (line) =>
    expect((await after(line, NOON, 'can i leave my scope out in the sun'))[0]).toBe('not-safe'),
  );

  it('is told whole again when the talk is over', async () => {
    const deps = await realDeps({ clubSiteText: '54.97,-2.10' });
    await ask(deps, WARNED, NOON);
    const later = await ask(deps, WARNED, NOON + 11 * 60_000);
    expect(isProblem(later) ? later.message : '').toBe(cautionText('sun-looking'));
  });

  it('along the tube is at the Sun, by day', async () =>
    expect((await after('ok so i just look along the tube', NOON, 'sun venus'))[1]).toBe(cautionText('sun-aim')));
});

describe('not of the Sun any more', () => {
  it.each([
    'ok got it',
    'no i wont',
    'ok i wont look',
    'lol',
    'good to know',
    'whats the time',
    'will i get it before then',
    'where do i buy one',
    'how much is one',
    'the camera is not found',
    'with the usb cable?',
    'how do i collimate it',
    'when does it set',
    'when does it rise tomorrow',
    'nvm its night here',
    'ok what about tonight',
    'and jupiter?',
  ])('is not warned: %s', async (line) => {
    for (const nowUtcMs of [NOON, EVENING]) expect((await after(line, nowUtcMs))[0]).not.toBe('not-safe');
  });

  it('its hours are told', async () =>
    expect((await after('when does it set', NOON))[1]).toMatch(/^The Sun sets at 15:4\d/u));

  it.each(['is it dangerous to unplug while slewing', 'the sun is gone whats up now'])(
    'nor is what only sounds like it: %s',
    async (line) => {
      const deps = await realDeps({ clubSiteText: '54.97,-2.10' });
      const outcome = await ask(deps, line, NOON);
      expect(isProblem(outcome) ? outcome.message : outcome.cautions.join(' ')).not.toMatch(/Sun/u);
    },
  );
});
