/** What members of a club ask of a night, as they type it: answered as the best observer among them would. */
import { describe, expect, it } from 'vitest';
import { at, EVENING, said, wordsOf } from './an-evening-in-york.js';
import { answer, ask, realDeps, refusal } from './real-deps.js';

const MIDDAY = Date.parse('2026-11-27T12:00Z');
const YORK = await at('"York, England"');

describe('a first telescope', () => {
  it.each([
    ['just got my first scope its a 114mm what should i look at first tonite', '114 mm'],
    ['i have a 130 mm scope', '130 mm'],
    ['got a new 70mm refractor', '70 mm'],
  ])('is a question of the sky and no trouble: %s', async (line, aperture) => {
    const told = await answer(await at('"York, England"'), line, EVENING);
    expect(told.title).toMatch(/^Worth seeing/u);
    expect(said(told)).toContain(`${aperture} telescope`);
  });

  it('is kept for what is asked next', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'i have a 130 mm scope', EVENING);
    expect(await wordsOf(deps, 'is m57 good', EVENING + 60_000)).toContain('130 mm telescope');
  });

  it('is the place of a site and not its name', async () => {
    const deps = await realDeps();
    expect((await answer(deps, 'my telescope is in quito', EVENING)).title).toBe('Site saved: my site');
  });
});

describe('a filter for the Sun, asked of something else', () => {
  it.each(['is a solar filter needed for jupiter', 'do i need a solar filter for the moon'])(
    'is not needed by night: %s',
    async (line) => {
      const told = await answer(YORK, line, EVENING);
      expect(told.summary).toMatch(/^No[;,:]/u);
      expect(told.notes.join(' ')).toContain('A solar filter is for the Sun alone');
    },
  );

  it('by day comes with the way there past the Sun and its caution', async () => {
    // From memory: on 27 November 2026 Venus stands some 40° west of the Sun, and both are up at noon.
    const told = await answer(YORK, 'do i need a solar filter for venus at noon', MIDDAY);
    expect(told.level).not.toBe('good');
    expect(told.cautions.join(' ')).toContain('The Sun is up');
  });

  it.each([
    'is a solar filter needed',
    'do i need a solar filter for the eclipse',
    'do i need a solar filter to see the transit of mercury',
    'do i need a solar filter when looking near the sun',
  ])('is always needed for the Sun: %s', async (line) => {
    expect((await refusal(YORK, line, EVENING)).message).toMatch(/^Yes, always/u);
  });
});

describe('a day or an hour alone', () => {
  it.each([
    ['on 25/12', /night of Fri 25 Dec 2026/u],
    ['8pm', /20:00/u],
    ['saturday', /night of Sat 28 Nov 2026/u],
  ])('is what is worth seeing then: %s', async (line, when) => {
    const told = await wordsOf(await at('"York, England"'), line);
    expect(told).toMatch(/^Worth seeing/u);
    expect(told).toMatch(when);
  });

  it('says nothing where it is only told', async () => {
    expect(await wordsOf(YORK, 'it is 8pm')).toMatch(/^unknown-command/u);
  });
});

describe('a walk that waits', () => {
  it.each([
    ['who are you', /^Pierhand/u],
    ['sunset', /The Sun sets/u],
    ['steady bright light low in the east not twinkling', /^Bright in the east/u],
    ['my son asks is saturn up', /^Saturn/u],
    ['what about 10pm', /^Worth seeing/u],
    ['messier marathon 2027', /Messier marathon/u],
  ])('swallows no question of the night: %s', async (line, title) => {
    const deps = await at('"York, England"');
    await ask(deps, 'i cannot connect to my mount over usb', EVENING);
    expect(await wordsOf(deps, line, EVENING + 60_000)).toMatch(title);
  });

  it.each(['power light is steady', 'no i meant the port'])('keeps what is its own: %s', async (line) => {
    const deps = await at('"York, England"');
    await ask(deps, 'i cannot connect to my mount over usb', EVENING);
    await ask(deps, 'is m31 up', EVENING + 60_000);
    expect(await wordsOf(deps, line, EVENING + 120_000)).toMatch(/^(?:Finding|Step|What I read)/u);
  });

  it('lets the place of the question before be put right', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'i cannot connect to my mount over usb', EVENING);
    await ask(deps, 'is m31 up', EVENING + 60_000);
    expect(await wordsOf(deps, 'no i meant from whitby', EVENING + 120_000)).toContain('Site: Whitby');
  });
});

describe('all of Messier’s in a night', () => {
  // Skyfield 1.55 with de421, from Tucson with the Sun 12° down: M 30 at dawn of 7 March 2027 −3.1°, of 4 April 10.3°;
  // M 74 at dusk of 3 April 3.2°. New Moon 8 March 09:29 and 6 April 23:51 UTC.
  it('names the weekends about the new Moon and what stays too low', async () => {
    const told = await answer(await at('"Tucson, Arizona"'), 'messier marathon 2027', EVENING);
    expect(told.summary).toContain('Sat 6 Mar');
    const byNight = new Map(told.facts.map(({ label, value }) => [label, value]));
    expect(byNight.get('Night of Sat 6 Mar')).toMatch(/too low: M 30$/u);
    expect(byNight.get('Night of Sat 3 Apr')).toMatch(/too low: M 74$/u);
  });
});

describe('carbon stars', () => {
  // La Superba, TX Piscium and Hind's Crimson Star are named as carbon stars in every observer's handbook (from memory).
  it('are a kind to be asked for', async () => {
    const told = await answer(YORK, 'carbon stars', EVENING);
    expect(said(told)).toMatch(/La Superba/u);
    expect(said(told)).toMatch(/TX Piscium/u);
    expect(told.facts.every(({ label, value }) => label === 'Also' || value.includes('carbon star'))).toBe(true);
  });
});

describe('the poles', () => {
  it('the northern one is said to be down, from the south', async () => {
    // It stands as far below as the latitude south (geometry): Christchurch lies at 43.5° S.
    const told = await answer(await at('"Christchurch, New Zealand"'), 'where is the north pole of the sky', EVENING);
    expect(told.summary).toMatch(/^The north celestial pole is 43\.5° below the horizon/u);
  });
});

describe('whether something is ever seen', () => {
  it('is told by the year, not by this night', async () => {
    // 90° − (37.4° + 47.5°): ω Centauri culminates 5° high at Seville.
    const told = await answer(await at('"Sevilla, Spain"'), 'is omega centauri ever visible from here', EVENING);
    expect(told.summary).toMatch(/^Yes, it climbs to 5° in the south/u);
  });
  it('never, where it does not rise', async () => {
    const told = await answer(YORK, 'can i ever see the southern cross', EVENING);
    expect(told.summary).toBe('No, it never rises here.');
  });
});

describe('which bright one it was', () => {
  it('counts the air it shines through', async () => {
    // Skyfield 1.55, York at 19:11 UTC: Betelgeuse 2.6°, Aldebaran 21.5° high. Pickering's airmass there: about 16 and 2.7.
    const told = await answer(YORK, 'steady bright light low in the east not twinkling', EVENING);
    expect(told.summary).toContain('brightest there Aldebaran');
  });
});

describe('from one star to another by night', () => {
  it('says which way the tube turns', async () => {
    // Skyfield 1.55, Leeds 20:00 UTC: Vega 32.7° high at 292.6°, Capella 43.7° at 67.6°.
    const told = await answer(
      await at('"Leeds, England"'),
      'which way swing the mount from vega to capella at 8pm',
      EVENING,
    );
    expect(told.summary).toContain('135° to the right through north, and 11° up');
  });
});

describe('reminders', () => {
  const PHOENIX_NIGHT = Date.parse('2026-11-27T06:16Z');
  it('are not set for what is down then', async () => {
    // Skyfield 1.55: Saturn 16.8° below the horizon of Phoenix at 04:00 MST.
    const deps = await at('"Phoenix, Arizona"');
    const told = await refusal(deps, 'wake me 4am if saturn is up', PHOENIX_NIGHT);
    expect(told.message).toContain('no reminder is set');
    expect((await answer(deps, 'remind list', PHOENIX_NIGHT)).summary).toMatch(/^No/u);
  });
  it('wait for what comes by day, where it does not by night', async () => {
    // Skyfield 1.55: the Moon sets at Phoenix on Sunday 29 November 2026 at 18:59:40 UTC, 11:59:40 MST on a level horizon.
    const told = await answer(await at('"Phoenix, Arizona"'), 'ping me when the moon sets on sunday', PHOENIX_NIGHT);
    expect(told.summary).toMatch(/Sun 29 Nov 2026, (?:11:59|12:0\d) MST/u);
  });
  it('cancel all cancels all', async () => {
    const deps = await at('"York, England"');
    await answer(deps, 'remind me at 22:30 to check the dew', EVENING);
    await ask(deps, 'cancel all', EVENING);
    expect((await answer(deps, 'remind list', EVENING)).summary).toMatch(/^No/u);
  });
});

describe('a country', () => {
  it('is answered for its largest city, and says so', async () => {
    expect(await wordsOf(YORK, "what's up in spain tonight")).toMatch(/Took Madrid.* for all of Spain/u);
  });
  it('that one stands in says nothing new', async () => {
    expect(await wordsOf(await at('"Christchurch, New Zealand"'), 'can i see the pleiades from nz')).toContain(
      'Site: home',
    );
  });
  it('tells towns apart by its own name', async () => {
    const deps = await realDeps();
    expect(said(await answer(deps, 'estoy en sevilla, españa', EVENING))).toContain('Andalusia');
  });
});

describe('a town of no size far from home', () => {
  it('is said to have been taken', async () => {
    expect(await wordsOf(YORK, 'is m31 up from swakopmund')).toMatch(/Took Swakopmund, .* km from your usual site/u);
  });
});

describe('eyepieces', () => {
  it.each([
    // 750 over 25, and twice that.
    ['what power is 25mm in 750mm scope and with the 2x barlow', /30×.*60×/su],
    // 32 over 5, 6, 8 and 10.
    ['exit pupil 32mm', /6\.4 mm at f\/5, 5\.3 mm at f\/6, 4 mm at f\/8, 3\.2 mm at f\/10/u],
  ])('%s', async (line, figures) => {
    expect(await wordsOf(YORK, line)).toMatch(figures);
  });
  it('a Barlow told before is told with the next one too', async () => {
    const deps = await at('"York, England"');
    await ask(deps, '2x barlow with 10 mm ep on 1200mm what power', EVENING);
    expect(await wordsOf(deps, 'and w a 25mm', EVENING + 30_000)).toMatch(/48×.*96×/su);
  });
});

describe('the Moon this bright', () => {
  it('is no reason to stay in, and past hours are none to go out', async () => {
    const told = await answer(YORK, 'is it worth setting up w the moon this bright', EVENING);
    expect(told.summary).toMatch(/^Yes, for the Moon itself, planets, doubles/u);
    expect(told.summary).not.toContain('18:29');
  });
});

describe('polar night', () => {
  it('is told with the last day before it', async () => {
    // Skyfield 1.55: at Tromsø the Sun is up 10:21 to 10:41 UTC on 27 November 2026, the last time that year.
    const told = await answer(await at('"Tromsø, Norway"'), 'does the sun come up at all now', MIDDAY);
    expect(told.summary).toMatch(/rises at 11:21 CET and sets at 11:41 CET; not again before \S+ 1[56] Jan 2027/u);
  });
});

it('two planets are measured as they stand where it is asked how many degrees', async () => {
  // Skyfield 1.55: 4.32° at 20:00 UTC on 27 November 2026.
  expect(await wordsOf(YORK, 'they are close together jupiter and mars? how many degree')).toMatch(/4\.3°/u);
});
