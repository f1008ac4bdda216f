/** Questions of the night that name an hour past, a side, a height or a neighbour: each with what holds by itself, or with its source. */
import { describe, expect, it } from 'vitest';
import { plainQuestion } from '../../bot/commands/asking/plain-question.js';
import { answer, ODALYS, realDeps, refusal } from './real-deps.js';

const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const EVENING = Date.UTC(2026, 11, 10, 20);
const AFTER_MIDNIGHT = Date.UTC(2026, 11, 11, 0, 40);

const lineOf = (words: string, nowUtcMs = EVENING): string => {
  const read = plainQuestion(words, { ...deps, allCommands: deps.commands, siteNames: [], nowUtcMs });
  return read !== null && 'line' in read ? read.line : '-';
};

let count = 0;
/** Each by a member of their own: what one asked before changes nothing. */
const asked = (words: string, nowUtcMs = EVENING) =>
  answer(deps, words, nowUtcMs, { ...ODALYS, memberId: `console:kinds-${(count += 1)}` });

describe('what words are read as, by plain English', () => {
  it.each([
    ['what galaxies can i see at 04:30', 'tonight at:04:30 kind:galaxies'],
    ['what can i see from 9pm', 'tonight from:9pm'],
    ['can i see M 31 in binoculars', 'up m 31 with:binoculars first:seen'],
    ['what can i see from a dark site', 'tonight sky:dark'],
    ['is jupiter up from Nice tonight', 'up jupiter on:tonight site:nice first:seen'],
    ['when is saturn highest', 'up saturn first:transit'],
    ['algol minimum above 40 degrees', 'up algol above:40 first:minimum'],
    ['two alignment stars, one each side of the meridian', 'alignment stars:2 side:both'],
    ['bright steady thing in the south-east', 'bright towards:south-east steady:yes thing:yes'],
    ['pick two alignment stars, one east and one west of the meridian', 'alignment stars:2 side:both'],
    ['what is that yellowish steady star in the se', 'bright towards:south-east colour:yellow steady:yes'],
    ['really bright thing in the west, not blinking', 'bright towards:west steady:yes thing:yes'],
    ['is saturn visible from Eye', 'up saturn site:eye first:seen'],
    ['when does algol fade', 'up algol first:minimum'],
    ['whats neer the moon tonite', 'ahead meetings on:tonight'],
    ['remind me half an hour before sunset', 'remind target:Sun when:set before:30'],
    // 10 December 2026 is a Thursday: the Saturday after the next is nine days off.
    ['geminids next weekend', 'ahead showers on:"in 9 days" about:geminid'],
  ])('%s', (words, line) => {
    const parts = (text: string): readonly string[] =>
      text
        .toLowerCase()
        .split(/ (?=[a-z]+:)/u)
        .sort();
    expect(parts(lineOf(words))).toEqual(parts(line));
  });
});

describe('an hour of the evening asked after midnight', () => {
  it.each(['up M 42 8pm', 'is m42 up tonight at 8pm', 'what can i see at 8pm'])(
    'is the coming one: %s',
    async (words) => {
      expect((await asked(words, AFTER_MIDNIGHT)).title).toContain('night of Fri 11 Dec 2026');
    },
  );

  it('is the one past where that is said, and a list that goes on is of this night', async () => {
    const past = await asked('where was m31 last night at 10pm', AFTER_MIDNIGHT);
    expect(past.summary).toContain('Thu 10 Dec 2026, 22:00 GMT');
    expect((await asked('tonight from:23:00 until:02:00', AFTER_MIDNIGHT)).title).toContain('Thu 10 Dec 2026');
  });
});

describe('limits that were said', () => {
  it('hold for all of a list', async () => {
    const { data } = await asked('tonight kind:galaxy above:40 all:yes');
    const picks = data['picks'] as readonly { readonly bestAltitudeDeg: number }[];
    expect(picks.length).toBeGreaterThan(3);
    for (const { bestAltitudeDeg } of picks) expect(bestAltitudeDeg).toBeGreaterThanOrEqual(40);
  });

  it('hold for minima of a variable', async () => {
    const { summary } = await asked('algol minimum above 40 degrees');
    const heights = [...summary.matchAll(/\((\d+)° in/gu)].map(([, height]) => Number(height));
    expect(heights).toHaveLength(3);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(40);
  });

  it('put alignment stars on both sides of the meridian', async () => {
    for (const hours of [0, 2, 4, 6, 8]) {
      const { data } = await asked('alignment stars:2 side:both', EVENING + hours * 3_600_000);
      const stars = data['stars'] as readonly { readonly azimuthDeg: number }[];
      // At 52.7° N between 20° and 75° high, what is yet to cross stands in the eastern half.
      expect(stars.map(({ azimuthDeg }) => azimuthDeg > 180).sort(), String(hours)).toEqual([false, true]);
    }
  });
});

describe('what is told', () => {
  it('the next transit, and the one just past after it', async () => {
    expect((await asked('when is saturn highest')).summary).toMatch(
      /^Saturn crosses the meridian next on Fri 11 Dec .*; it crossed the meridian at 19:1\d GMT/u,
    );
    expect((await asked('when did jupiter culminate')).summary).toMatch(
      /^Jupiter crossed the meridian on Thu 10 Dec 2026, 04:4\d GMT/u,
    );
  });

  it('two targets by their best, where no hour is named', async () => {
    // M 81, declination 69.1°, culminates 90° − (69.1° − 52.7°) = 73.6° high.
    expect((await asked('compare M 81 and M 31')).summary).toMatch(/at its best|at their best/u);
    expect((await asked('compare M 13 and M 81')).summary).toMatch(/^M 81 stands higher at its best: 7[34]° high/u);
  });

  it('a planet is looked for where a light is steady', async () => {
    const south = await asked('bright towards:south-west steady:yes');
    expect(south.facts[0]?.label).toBe('Saturn');
    const east = await asked('bright towards:south-east steady:yes');
    expect(east.summary).toMatch(/^No planet stands in the south-east then/u);
    expect(east.notes.join(' ')).toContain('Saturn');
  });

  it('a shower beside its best night (active 4 to 20 December, maximum 14: International Meteor Organization, from memory)', async () => {
    expect((await asked('geminids this weekend')).summary).toMatch(/^Some .*Geminids.* the night before or after/u);
    expect((await asked('geminids this weekend', Date.UTC(2026, 10, 12, 20))).summary).toMatch(
      /^No Geminids in the night of Sat 14 Nov 2026\. Next: Geminids, night of Sun 13 Dec/u,
    );
    expect((await asked('perseids on 20 august', Date.UTC(2026, 7, 10, 20))).summary).toMatch(
      /^A few .* after their best/u,
    );
  });

  it('a shower by the last word of its name', async () => {
    expect((await asked('will the lyrids be good this weekend')).summary).toContain('Next: April Lyrids, night of');
  });

  it('a reminder of a phase of the Moon asks for the hour', async () => {
    const { choices } = await refusal(deps, 'remind me of the new moon', EVENING);
    expect(choices?.[0]?.run).toContain('on:"new moon"');
  });

  it('comets: why none is known, and what can be asked', async () => {
    for (const words of ['any comets tonight', 'is there a comet visible', 'can i see any comet this month'])
      expect((await refusal(deps, words, EVENING)).message, words).toContain('no list of comets');
  });

  it('what stands near the Moon that night, or that the Moon is not there', async () => {
    // New Moon on 9 December 2026, 00:52 UT (almanac, from memory): on the 10th it sets in twilight.
    expect((await asked('what is near the moon tonight')).summary).toMatch(
      /^The Moon is not seen in the dark tonight\./u,
    );
    const later = await asked('what is near the moon tonight', Date.UTC(2026, 11, 18, 19));
    const shown = Number(/Saturn (\d+\.\d)° away/u.exec(later.summary)?.[1]);
    const { data } = await asked('compare Moon other:Saturn at:2026-12-18T19:10', Date.UTC(2026, 11, 18, 19));
    expect(shown).toBeCloseTo(data['separationDeg'] as number, 0);
  });

  it('reminders long after sunset are refused with what can be done', async () => {
    const { message, choices } = await refusal(deps, 'ping me 20 min after sunset', EVENING);
    expect(message).toContain('say the hour');
    expect(choices?.map(({ run }) => run)).toEqual(['remind target:Sun when:set', 'remind when:dark']);
  });
});
