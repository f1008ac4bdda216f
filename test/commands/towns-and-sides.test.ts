/** Sides of the sky in short, towns in questions of other languages, a field that is to be fitted, sizes side by side. Our own sentences; places: GeoNames. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);
const MIDDAY = Date.UTC(2026, 10, 27, 13);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

/** The answer to the last of several lines said by one member. */
const last = async (lines: readonly string[], utcMs = NOW): Promise<Reply> => {
  const asker = { ...ODALYS, memberId: `console:${lines.join()}`, channelId: lines.join() };
  let reply: Reply | null = null;
  for (const line of lines) reply = await answer(deps, line, utcMs, asker);
  return reply as Reply;
};
const textOf = ({ title, summary, facts, notes }: Reply): string =>
  [title, summary, ...facts.map(({ label, value }) => `${label}: ${value}`), ...notes].join('\n');

// Heights and azimuths as `altitude` has them, which is held to astropy; which one is meant: common practice.
describe('a side of the sky in short', () => {
  it.each([
    ['whats the orange star in the ne', /Most likely Pollux/u],
    ['bright one ene', /If it was a star: Capella/u],
    ['what is that bright star in the nw', /Most likely Vega/u],
    ['whats the white star wnw', /Most likely Vega/u],
    ['what is the bright thing due s', /Most likely Saturn/u],
    ['whats shining in the e', /^Bright in the east/u],
    ['bright star, se', /^Bright in the south-east/u],
  ])('%s', async (line, says) => {
    const reply = await last([line]);
    expect(textOf(reply)).toMatch(says);
    expect(textOf(reply)).not.toContain('Not used');
  });

  it('asked of tonight by day, the brightest star is no Sun', async () => {
    expect((await last(['what is the brightest star tonight'], MIDDAY)).summary).toMatch(
      /Most likely (?:Capella|Vega)/u,
    );
  });
});

describe('a town in a question of another language', () => {
  it.each([
    [['où est Jupiter à Lyon'], /Site: Lyon/u],
    [['dónde está Saturno en Sevilla'], /Site: Sevill?a, Andalusia/u],
    [['onde está Saturno em São Paulo'], /Site: São Paulo/u],
    [['dove si trova Saturno da Bologna'], /Site: Bologna/u],
    [['hoe laat gaat Saturnus onder in Groningen'], /Saturn sets.*Site: Groningen/su],
    [['wo steht Saturn in München', 'wann geht er unter?'], /Saturn sets.*Site: Munich/su],
    [['où est Jupiter à Lyon', 'à quelle heure se lève-t-il'], /Jupiter rises.*Site: Lyon/su],
  ])('%s', async (lines, says) => {
    const text = textOf(await last(lines));
    expect(text).toMatch(says);
    expect(text).not.toContain('Not used');
  });
});

it('a place that was chosen in the talk stands for its name', async () => {
  const reply = await last([
    'how high is Omega Centauri from Christchurch, New Zealand',
    'how high is M 7 now from Christchurch',
  ]);
  expect(textOf(reply)).toMatch(/Site: Christchurch, Canterbury, New Zealand/u);
});

describe('what fits a field', () => {
  // The Rosette is 80′ long, M 31 3°: OpenNGC. 1200/25 = 48×, 50° over 48 = 1.0°.
  it.each([
    ['does the Rosette fit', /^No: NGC 2237 is 1\.3° long/u],
    ['will M 42 fit', /^No: M 42 is 1\.[45]° long/u],
    ['does the moon fit', /Power 48×/u],
  ])('%s', async (line, says) => {
    expect((await last(['field with a 25mm eyepiece on 1200mm', line])).summary).toMatch(says);
  });

  it('lists what is of the size', async () => {
    const { notes, title } = await last(['which nebulae fit a 3 degree field']);
    expect(title).toMatch(/^Worth seeing/u);
    expect(notes.join(' ')).toMatch(/from 30 to 180 arcminutes/u);
  });
});

describe('which looks the larger', () => {
  // Equatorial radii: IAU 2015. Jupiter at 5.06 au is 39″, Saturn at 8.9 au 19″, Venus at 0.41 au 41″ (distances: JPL DE421 by skyfield, from memory).
  it.each([
    ['which is bigger, jupiter or saturn', /^Jupiter looks the larger: 39″ across against 19″, 2\.\d times/u],
    ['which looks larger, venus or jupiter', /^Venus looks the larger: 41″ across against 39″/u],
  ])('%s', async (line, says) => {
    expect((await last([line])).summary).toMatch(says);
  });
});

it('which is higher, asked by night, is told of this minute, and then of the best', async () => {
  expect((await last(['jupiter and saturn, which is higher'])).summary).toMatch(
    /^Saturn: 36° high .*Jupiter is down.*Jupiter stands higher at its best/u,
  );
});

describe('what was asked last', () => {
  it.each([
    [['saturn tonight', 'and later?'], /^Saturn/u],
    [['is venus up', 'how far is it from the sun'], /Venus/u],
    [['saturn', 'whens it set'], /Saturn sets at 02:2\d/u],
    [['saturn', 'how hi'], /Saturn.*36°/su],
    [['saturn', 'is the moon near it'], /No\. At .* 10\d\.\d° apart/u],
    [['is jupiter up at 8am', 'and at 9'], /at 09:00/u],
  ])('%s', async (lines, says) => {
    expect(textOf(await last(lines))).toMatch(says);
  });
});

it.each(['can I see a shooting star tonight', 'daddy can we see a falling star'])('%s is of showers', async (line) => {
  const text = textOf(await last([line]));
  expect(text).toMatch(/Geminids|shower/u);
  expect(text).not.toMatch(/ISO/u);
});
