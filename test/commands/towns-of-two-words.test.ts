/** Cities whose names are of several words, or of another language, in sentences and alone. Our own sentences; where the cities lie: from memory, to the nearest degree or two. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { plainQuestion } from '../../bot/commands/asking/plain-question.js';
import { withCitiesHeld, withCitiesLoose } from '../../bot/commands/asking/sentence/city-words.js';
import { isProblem } from '../../bot/ground/problem.js';
import { resolvePlace } from '../../bot/places/index.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);
const MOST_OFF_DEG = 2;

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});
const alone = (line: string) => ({ ...ODALYS, memberId: `console:${line}`, channelId: line });

/** The line that a sentence comes to, and where its site lies. */
const siteOf = (sentence: string): readonly number[] => {
  const known = { ...deps, siteNames: [], nowUtcMs: NOW, day: null };
  const read = plainQuestion(sentence, known);
  const line = read !== null && 'line' in read ? read.line : '';
  const [, quoted, bare] = /\bsite:(?:"([^"]+)"|(\S+))/u.exec(line) ?? [];
  const found = resolvePlace(deps.places(), quoted ?? bare ?? '');
  return isProblem(found) ? [] : [found.place.latitudeDeg, found.place.longitudeDeg];
};

describe('a city in a sentence', () => {
  it.each([
    ['saturn from New York, USA', 40.7, -74],
    ['is mercury out from new york this evening', 40.7, -74],
    ['jupiter from buenos aires tonight', -34.6, -58.4],
    ['saturn from Los Angeles', 34, -118.2],
    ['omega centauri from rio de janeiro', -22.9, -43.2],
    ["where's mars, from San Antonio, Texas", 29.4, -98.5],
    ['m 42 from san diego at 9', 32.7, -117.2],
    ['co widac dzis w Krakowie', 50.1, 19.9],
    ['andromeda stasera da Roma', 41.9, 12.5],
    ['quand est il nuit noire à Lyon', 45.8, 4.8],
    ['o que ha de bom hoje em Lisboa', 38.7, -9.1],
    ['jupiter da New York', 40.7, -74],
    ['que veo hoy desde Mar del Plata', -38, -57.5],
  ])('%s', (sentence, latitude, longitude) => {
    const [lat = NaN, lon = NaN] = siteOf(sentence);
    expect(Math.abs(lat - latitude)).toBeLessThan(MOST_OFF_DEG);
    expect(Math.abs(lon - longitude)).toBeLessThan(MOST_OFF_DEG);
  });

  it.each([
    ['tonight from Buenos Aires', 'Site: Buenos Aires, Buenos Aires F.D., Argentina.'],
    ['tonight from Las Vegas', 'Site: Las Vegas, Nevada, United States.'],
    ['tonight las vegas', 'Site: Las Vegas, Nevada, United States.'],
  ])('behind a command: %s', async (line, site) => {
    expect((await answer(deps, line, NOW, alone(line))).notes).toContain(site);
  });

  it.each([
    ['my site is New York', 'New York City, New York, United States.'],
    ['my site is San Francisco', 'San Francisco, California, United States.'],
    // What one language calls Bordeaux is no second Porto.
    ['my site is Porto', 'Porto, Portugal.'],
  ])('is kept: %s', async (line, place) => {
    expect((await answer(deps, line, NOW, alone(line))).notes).toContain(`Found as ${place}`);
  });

  it.each(['San Francisco', 'new york'])('alone is asked what of it: %s', async (line) => {
    const outcome = await ask(deps, line, NOW, alone(line));
    expect(isProblem(outcome) ? outcome.problem : outcome.title).toBe('missing-option');
  });

  it.each(['saturn from los zabbos tonight', 'venus from san frobto'])('no list has is said: %s', async (line) => {
    const outcome = await ask(deps, line, NOW, alone(line));
    expect(isProblem(outcome) ? outcome.problem : outcome.title).toBe('unknown-place');
  });

  it('the city that the world knows is offered first where a namesake is nearer', () => {
    const found = resolvePlace(deps.places(), 'San Francisco', { latitudeDeg: -31.4, longitudeDeg: -64.2 });
    const first = isProblem(found) && found.problem === 'ambiguous-place' ? found.candidates[0] : undefined;
    expect(first?.region).toBe('California');
  });

  it('holds no other words, and gives them back as they were', () => {
    for (const text of ['is the new moon in the south', 'from east to west', 'the moon is near the pole star']) {
      expect(withCitiesHeld(text, deps)).toBe(text);
    }
    expect(withCitiesLoose(withCitiesHeld('mars from new york, and venus', deps))).toBe(
      'mars from new york, and venus',
    );
  });
});

// The height of a pole is the latitude: geometry. σ Octantis and the Cross: common practice, no source.
describe('which way is south', () => {
  it.each(['which way is south at night in Cape Town', 'which way is north at night in cape town'])(
    '%s',
    async (line) => {
      const { summary } = await answer(deps, line, NOW, alone(line));
      expect(summary).toMatch(/south celestial pole stands due south, 34° high.*Southern Cross/u);
      expect(summary).not.toContain('North Star');
    },
  );

  it('by the site of the asker', async () => {
    const asker = alone('south of the equator');
    await answer(deps, 'my site is Cape Town', NOW, asker);
    expect((await answer(deps, 'how do i find north', NOW, asker)).summary).toContain('Southern Cross');
    expect((await answer(deps, 'how do i find north', NOW, alone('north of it'))).summary).toContain('North Star');
  });
});
