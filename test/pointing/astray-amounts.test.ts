/** Amounts that are known beforehand (a controller still at another of its owner's places, or still at 1 January), and what is asked next. */
import { beforeEach, describe, expect, it } from 'vitest';
import { openClub, RAVI, TAMSIN, type Club } from '../club/club-bench.js';

let club: Club;
beforeEach(async () => {
  club = await openClub();
});

const NOW = Date.UTC(2026, 10, 25, 20);
/** Local sidereal time as a controller shows it (Astronomical Almanac, page B6, first order: good to a second and a half). */
const sidereal = (utcMs: number, longitudeDeg: number): string => {
  const deg = 280.46062 + 360.98564737 * ((utcMs - Date.UTC(2000, 0, 1, 12)) / 86_400_000) + longitudeDeg;
  const seconds = Math.round((((deg % 360) + 360) % 360) * 240) % 86_400;
  return [seconds / 3600, (seconds / 60) % 60, seconds % 60]
    .map((part) => String(Math.floor(part)).padStart(2, '0'))
    .join(':');
};
interface Causes {
  readonly causes: readonly { readonly id?: string; readonly probability: number; readonly offsetMinutes?: number }[];
}

describe('astray', () => {
  it('knows the places its owner saved: a controller still at the other one, told to nobody else', async () => {
    await club.says('site add name:"Quarry Field" position:51.0,-3.0');
    await club.says('site add name:"Cold Ridge" position:52.71,0.12');
    const seen = `lst:${sidereal(NOW, -3)} at:2026-11-25T20:00Z`;
    const reply = await club.says(`astray Mirach site:"Cold Ridge" ${seen}`);
    expect(reply.audience).toBe('asker');
    expect(reply.summary).toContain('still to stand at Quarry Field');
    const [first] = (reply.data as unknown as Causes).causes;
    expect(first?.id).toBe('sidereal-amount');
    // 3.12° of longitude at four minutes a degree.
    expect(first?.offsetMinutes).toBeCloseTo(-12.48, 1);
    // In the channel, of a place named there, nothing speaks of what she saved, and another reads the same.
    const open = await club.says(`astray Mirach site:52.71,0.12 ${seen}`, TAMSIN);
    const other = await club.says(`astray Mirach site:52.71,0.12 ${seen}`, RAVI);
    expect(open.audience).toBe('everyone');
    expect(JSON.stringify(open)).not.toContain('Quarry');
    expect(open.data).toEqual(other.data);
  });

  it('knows the date of a dead battery', async () => {
    // 17 minutes past whole hours of sidereal time, so that no offset comes to the same.
    const at = Date.UTC(2026, 9, 17, 21);
    const reply = await club.says(
      `astray "20:00:00 +20:00:00" site:52.71,0.12 at:2026-10-17T21:00Z lst:${sidereal(at - 289 * 86_400_000, 0.12)}`,
    );
    expect(reply.summary).toContain('still to be 1 January');
    expect((reply.data as unknown as Causes).causes[0]?.id).toBe('sidereal-amount');
  });

  it('asks for what tells the first cause from another one, not from itself with something unseen beside it', async () => {
    const { data } = await club.says(
      'astray "02:36:14.7 +33:24:48" landed:5.6,41.0 at:2027-10-07T05:57:10Z site:34.05,-118.24 mount:altaz',
    );
    const [first, ...others] = (data as unknown as { causes: { id?: string; ids?: string[]; probability: number }[] })
      .causes;
    expect(first?.id).toBe('latitude-sign');
    expect(others.filter(({ ids, probability }) => probability > 0.01 && ids?.includes('latitude-sign'))).toEqual([]);
    expect(data['nextObservation']).toMatchObject({ kind: 'lst' });
  });

  it('knows a home passed wrongly whether the controller keeps the shift on its axes or on the sky', async () => {
    // Both shifted by 4.5° of hour angle and 4.1° south, east and west of the pier: as a shift of coordinates, the same on both sides.
    // Reckoned by pyerfa 2.0.1 (precession, nutation, sidereal time) and the rotation of the axes, without Pierhand.
    const { data } = await club.says(
      'astray Mirfak landed:"25.0,49.1" also:"Rasalhague = 35.0,248.5" at:2027-08-24T03:25Z site:41.26,-73.03 mount:german',
    );
    const { causes } = data as unknown as { causes: { id?: string; probability: number }[] };
    expect(causes[0]?.id).toBe('not-at-home');
    expect(causes[0]?.probability).toBeGreaterThan(0.5);
  });

  it('knows two mistakes of the mount at once from two landings: a drive of the wrong hemisphere on a base turned by 7.6°', async () => {
    // Reckoned as above.
    const { data } = await club.says(
      'astray Betelgeuse landed:"14.2,241.7" lst:01:31:44 shown:"23.3,99.1" also:"Mirach = 16.3,168.5" at:2026-08-24T11:30Z site:37.57,-122.34 mount:fork',
    );
    const { causes } = data as unknown as { causes: { ids?: string[] }[] };
    expect(causes[0]?.ids).toEqual(expect.arrayContaining(['hemisphere-mode', 'polar-axis']));
  });

  it('says where degrees east were read along right ascension, which is less on the sky', async () => {
    // An hour of right ascension at M 13 (declination 36.4°) is 15° × cos 36.4° = 12.1° on the sky.
    const read = await club.says('astray "M 13" landed:"15 degrees east of it" site:52.71,0.12 at:2026-11-25T19:00Z');
    expect(read.notes.join(' ')).toMatch(/15° in right ascension \(1 h\), not on the sky, .* fits exactly/u);
    const onSky = await club.says(
      'astray "M 13" landed:"12.1 degrees east of it" site:52.71,0.12 at:2026-11-25T19:00Z',
    );
    expect(onSky.notes.join(' ')).not.toContain('right ascension');
  });

  it('takes an hour alone for the last such hour, as a miss has happened', async () => {
    const dayAfter = Date.UTC(2026, 10, 26, 9, 23);
    for (const [now, utc] of [
      [NOW, '2026-11-25T19:00:00Z'],
      [dayAfter, '2026-11-25T19:00:00Z'],
      [Date.UTC(2026, 10, 25, 18, 55), '2026-11-25T19:00:00Z'],
    ] as const) {
      const { data } = await club.says(
        'sent it to Capella at 19:00, it landed at 4h16m +46 site:52.71,0.12',
        RAVI,
        now,
      );
      expect(data['utc'], new Date(now).toISOString()).toBe(utc);
    }
  });
});
