import { beforeEach, describe, expect, it } from 'vitest';
import { openClub, RAVI, type Club } from './club-bench.js';

let club: Club;
beforeEach(async () => {
  club = await openClub();
});

describe('gear', () => {
  it('is said once, changed piece by piece, and taken away', async () => {
    const nothing = { mount: null, connection: null, system: null, speeds: null, limits: null, apertureMm: null };
    expect((await club.says('gear')).data).toEqual({ gear: nothing });
    await club.says('gear mount:fork connection:controller-serial system:linux');
    const changed = await club.says('gear connection:none');
    expect(changed.audience).toBe('asker');
    expect(changed.data).toEqual({ gear: { ...nothing, mount: 'fork', system: 'linux' } });
    expect((await club.says('gear', RAVI)).data).toEqual({ gear: nothing });
    expect((await club.refused('gear connection:string-and-tin')).message).toContain('controller-serial');
    expect((await club.refused('gear mount:dobson')).problem).toBe('bad-option');
  });

  it('keeps the speeds of the axes, reckons the way past the Sun with them, and shows that to their owner alone', async () => {
    const line = 'sun Venus at:2026-06-20T10:00Z site:52.71,0.12';
    const before = await club.says(line);
    expect(before.audience).toBe('everyone');
    expect(before.data['path']).toMatchObject({ reckonedFor: 'any speeds' });
    await club.says('gear mount:german speeds:"4°/s, 3°/s"');
    const saved = await club.says(line);
    expect(saved.audience).toBe('asker');
    expect(saved.notes.join(' ')).toContain('at the speeds you saved, 4° and 3° a second');
    const given = await club.says(`${line} speeds:4,3`, RAVI);
    expect(given.audience).toBe('everyone');
    expect(saved.data['path']).toEqual(given.data['path']);
    // Another kind of mount has other speeds.
    expect((await club.says(`${line} mount:altaz`)).data['path']).toMatchObject({ reckonedFor: 'any speeds' });
    expect((await club.refused('gear speeds:fast')).message).toContain('speeds:4,3');
    expect((await club.says('mydata part:gear')).facts).toContainEqual({
      label: 'speeds',
      value: '4° and 3° a second',
    });
    await club.says('forget confirm:yes');
    expect((await club.says(line)).data['path']).toMatchObject({ reckonedFor: 'any speeds' });
  });

  it('keeps the limits past level: the flip comes so much later, or may come so much earlier', async () => {
    const line = 'meridian Capella at:2026-11-25T20:00Z site:52.71,0.12';
    const before = await club.says(line);
    await club.says('gear limits:"10 west, 5 east"');
    const saved = await club.says(line);
    expect(saved.audience).toBe('asker');
    const minutes = (value: unknown): number => Date.parse(String(value)) / 60_000;
    // The sky turns by 15.041° an hour (Explanatory Supplement): ten degrees in 39.9 minutes, fifteen in 59.8.
    expect(minutes(saved.data['flipUtc']) - minutes(before.data['flipUtc'])).toBeCloseTo(39.9, 1);
    const from = /may be flipped from (\d\d):(\d\d) GMT on/u.exec(saved.notes.join(' '));
    const fromMinutes = Number(from?.[1]) * 60 + Number(from?.[2]);
    expect(Math.abs((((minutes(saved.data['flipUtc']) - 59.8) % 1440) - fromMinutes) % 1440)).toBeLessThan(0.6);
    expect(saved.notes.join(' ')).toContain('the limits you saved: 5° east, 10° west');
    expect((await club.says(`${line} past:0`)).data['flipUtc']).toEqual(before.data['flipUtc']);
    expect((await club.says(`${line} mount:fork`)).audience).toBe('everyone');
    expect((await club.refused('gear limits:60,60')).message).toContain('limits:0,10');
    await club.says('gear limits:none');
    expect((await club.says(line)).data).toEqual(before.data);
  });
});

describe('the aperture of a telescope', () => {
  const line = 'up M13 site:52.71,0.12 on:2026-06-20';
  const shown = async (): Promise<string> => {
    const { facts, notes } = await club.says(line);
    return [...facts.map(({ label, value }) => `${label}: ${value}`), ...notes].join('\n');
  };

  it('is kept, used where none is named, shown, and forgotten with the rest', async () => {
    expect(await shown()).toContain('150 mm telescope');
    // Eight inches of 25.4 mm.
    await club.says('my scope is an 8 inch dob');
    expect((await club.says('gear')).facts).toContainEqual({ label: 'Telescope', value: '203 mm aperture' });
    expect(await shown()).toMatch(/203 mm telescope[\s\S]*For the 203 mm of your gear; say with: for another\./u);
    expect((await club.says(line)).audience).toBe('everyone');
    expect((await club.says(`${line} with:100`)).notes.join(' ')).not.toContain('your gear');
    expect((await club.says('mydata part:gear')).facts).toContainEqual({ label: 'aperture', value: '203 mm' });
    await club.says('gear aperture:none');
    expect(await shown()).toContain('150 mm telescope');
    await club.says('gear aperture:300');
    expect((await club.refused('gear aperture:10x50')).message).toContain('aperture:150');
    await club.says('forget confirm:yes');
    expect(await shown()).toContain('150 mm telescope');
  });
});
