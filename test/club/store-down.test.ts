/** With the notebook unreadable: whose sky an answer is for is said first, and where the Sun is concerned nothing is guessed. */
import { beforeAll, describe, expect, it } from 'vitest';
import { brokenStore, NOW, openClub, TAMSIN, type Club } from './club-bench.js';

let club: Club;
beforeAll(async () => {
  club = await openClub({ store: brokenStore(), clubSiteText: '52.71,0.12' });
});

describe('with the store down', () => {
  it.each(['sun Venus', 'sun M 31', 'meridian M 31'])(
    '%s without a site is refused, to the asker alone',
    async (line) => {
      const { problem, message, audience } = await club.refused(line);
      expect(problem).toBe('store-unavailable');
      expect(message).toMatch(/^Saved sites cannot be read just now/u);
      expect(message).toContain('site:52.71,0.12');
      expect(audience).toBe('asker');
    },
  );

  it('sun with a position is answered as ever', async () => {
    const { summary } = await club.says('sun Venus site:51.05,-114.07');
    expect(summary).not.toContain('cannot be read');
  });

  it.each(['up M 31', 'tonight', 'dark', 'altitude Vega', 'pole', 'alignment', 'sidereal', 'entries', 'moon'])(
    '%s says first that it is for the club and not for the member, to the asker alone, and calls nothing good',
    async (line) => {
      const { summary, audience, level } = await club.says(line);
      expect(summary).toMatch(/^Saved sites cannot be read just now: this is for .*the club's site/u);
      expect(audience).toBe('asker');
      expect(level).not.toBe('good');
    },
  );

  it('a place name that a saved site may bear is said to be taken as the place', async () => {
    const { summary } = await club.says('up M 31 site:"Ely, England"', TAMSIN, NOW);
    expect(summary).toMatch(/^Saved sites cannot be read just now: this is for the place Ely/u);
  });

  it('a name that only a saved site can have is not called unknown', async () => {
    const { message, audience } = await club.refused('up M 31 site:home');
    expect(message).toContain('cannot be read');
    expect(message).not.toContain('I do not know where');
    expect(audience).toBe('asker');
  });
});
