import { beforeEach, describe, expect, it } from 'vitest';
import { openPrivacy } from '../../bot/commands/core/privacy.js';
import { siteFor } from '../../bot/commands/asking/resolve-site.js';
import { brokenStore, inPrivate, MBALI, openClub, RAVI, TAMSIN, type Club } from './club-bench.js';

let club: Club;
beforeEach(async () => {
  club = await openClub();
});
const labelled = (
  reply: { readonly facts: readonly { readonly label: string; readonly value: string }[] },
  label: string,
) => reply.facts.find((fact) => fact.label === label)?.value;

describe('adding a site', () => {
  it('by coordinates rounds to 0.01°, finds the clocks, and makes the first one the usual one', async () => {
    const reply = await club.says('site add name:"Quarry Field" position:52.7123,-0.2168 elevation:31');
    expect(reply).toMatchObject({ level: 'good', audience: 'asker', title: 'Site saved: Quarry Field' });
    expect(reply.data).toEqual({
      owner: 'member',
      site: {
        name: 'Quarry Field',
        latitudeDeg: 52.71,
        longitudeDeg: -0.22,
        elevationM: 31,
        zone: 'Europe/London',
        horizon: null,
        sky: null,
        isDefault: true,
      },
    });
    expect(labelled(reply, 'Time zone')).toBe('Europe/London, now 18:00 GMT');
    expect(JSON.stringify(reply)).not.toContain('52.7123');
    expect((await club.says('site add name:"Cold Ridge" position:-33.2,151.2')).data['site']).toMatchObject({
      isDefault: false,
      zone: 'Australia/Sydney',
    });
  });

  it('keeps more of the position when that is asked for', async () => {
    const { data } = await club.says('site add name:"Quarry Field" position:52.7123,-0.2168 precise:yes');
    expect(data['site']).toMatchObject({ latitudeDeg: 52.7123, longitudeDeg: -0.2168 });
  });

  it('takes ISO 6709 with its height', async () => {
    // The annex of ISO 6709 writes Mount Everest as +27.5916+086.5640+8850 (degrees and decimals, metres).
    const { data } = await club.says('site add name:"High Camp" position:+27.5916+086.5640+8850/ precise:yes');
    expect(data['site']).toMatchObject({
      latitudeDeg: 27.5916,
      longitudeDeg: 86.564,
      elevationM: 8850,
      zone: 'Asia/Kathmandu',
    });
  });

  it("by place name takes the place's height and clocks, and its name where none is given", async () => {
    const reply = await club.says('site add position:"Alice Springs"');
    expect(reply.title).toBe('Site saved: Alice Springs');
    expect(reply.data['site']).toMatchObject({ zone: 'Australia/Darwin' });
    // Alice Springs stands about 580 m above the sea (GeoNames).
    expect((reply.data['site'] as { elevationM: number }).elevationM).toBeGreaterThan(500);
    expect(reply.notes[0]).toContain('Northern Territory');
  });

  it('offers the readings of a place name that is not unique, each of which works as it stands', async () => {
    const { problem, choices } = await club.refused('site add name:Home position:Springfield');
    expect(problem).toBe('ambiguous-place');
    expect(choices?.length).toBeGreaterThan(2);
    expect((await club.says(choices![1]!.run)).title).toBe('Site saved: Home');
  });

  it.each([
    'site save home 52.71,0.12',
    'site save name:home position:52.71,0.12',
    'site action:save name:home position:52.71,0.12',
    'site set home 52.71,0.12',
    'site store home 52.71,0.12',
  ])('in the words that the answers use: %s', async (line) => {
    expect((await club.says(line)).title).toBe('Site saved: home');
    expect((await club.says('site delete home')).title).toBe('Site removed');
  });

  it.each([
    ['site add name:Home', 'missing-option'],
    ['site add position:52.7,0.1', 'missing-option'],
    ['site add name:Home position:95,0.1', 'bad-position'],
    ['site add name:"52.7,0.1" position:52.7,0.1', 'bad-site-name'],
    ['site add name:"<b>home</b>" position:52.7,0.1', 'bad-site-name'],
    [`site add name:${'x'.repeat(41)} position:52.7,0.1`, 'bad-site-name'],
    ['site add name:Home position:52.7,0.1 horizon:"90:20, 120"', 'bad-horizon'],
    ['site add name:Home position:52.7,0.1 horizon:"400:20"', 'bad-horizon'],
    ['site add name:Home position:52.7,0.1 elevation:9000', 'bad-option'],
    ['site add name:Home position:"Nowhere-on-the-Wold"', 'unknown-place'],
  ])('%s is refused as %s and saves nothing', async (line, code) => {
    const refused = await club.refused(line);
    expect(refused.problem).toBe(code);
    expect(refused.message.length).toBeLessThanOrEqual(400);
    expect((await club.says('site list')).data).toEqual({ member: [], club: [] });
  });

  it('does not overwrite a site of the same name', async () => {
    await club.says('site add name:"Quarry Field" position:52.7,0.1 horizon:"90:20"');
    expect((await club.refused('site add name:"quarry  field" position:10,10')).problem).toBe('site-exists');
    expect((await club.says('site show name:"Quarry Field"')).data['site']).toMatchObject({ latitudeDeg: 52.7 });
  });

  it('stops at twenty', async () => {
    for (let i = 0; i < 20; i++) await club.says(`site add name:S${i} position:52.7,0.1`);
    const refused = await club.refused('site add name:S20 position:52.7,0.1');
    expect(refused.problem).toBe('store-limit');
    expect(refused.message).toContain('site remove');
  });
});

describe("a member's sites", () => {
  beforeEach(async () => {
    await club.says('site add name:"Quarry Field" position:52.7,0.1');
    await club.says('site add name:"Cold Ridge" position:-33.2,151.2');
  });

  it('are used by name and, the usual one, without; and the one used is said', async () => {
    const usual = await club.says('dark');
    expect(usual.notes).toContain('Site: Quarry Field (your site).');
    expect(usual.audience).toBe('asker');
    await club.says('site use name:"cold ridge"');
    expect((await club.says('dark')).notes).toContain('Site: Cold Ridge (your site).');
    expect((await club.says('dark site:"QUARRY field"')).notes).toContain('Site: Quarry Field (your site).');
  });

  it("are nobody else's", async () => {
    expect((await club.refused('dark', RAVI)).problem).toBe('no-site');
    expect((await club.refused('dark site:"Quarry Field"', RAVI)).problem).toBe('unknown-place');
    expect((await club.says('site list', RAVI)).data).toEqual({ member: [], club: [] });
  });

  it('go along into a direct message', async () => {
    expect((await club.says('dark', inPrivate(TAMSIN))).notes).toContain('Site: Quarry Field (your site).');
  });

  it('are renamed and removed', async () => {
    expect((await club.refused('site rename name:"Cold Ridge" to:"quarry field"')).problem).toBe('site-exists');
    await club.says('site rename name:"Cold Ridge" to:"Old Ridge"');
    expect((await club.refused('site use name:"Cold Ridge"')).problem).toBe('unknown-site');
    const removed = await club.says('site remove name:"Quarry Field"');
    expect(removed.choices).toEqual([{ label: 'Use Old Ridge', run: 'site use name:"Old Ridge"' }]);
    expect((await club.refused('dark')).problem).toBe('no-site');
    await club.says(removed.choices![0]!.run);
    expect((await club.says('dark')).notes).toContain('Site: Old Ridge (your site).');
  });

  it('are shown to the one who asks alone', async () => {
    for (const line of [
      'site list',
      'site show name:"Cold Ridge"',
      'site use name:"Cold Ridge"',
      'site horizon horizon:"90:20"',
      'site rename name:"Cold Ridge" to:R',
      'site remove name:R',
    ]) {
      expect((await club.says(line)).audience, line).toBe('asker');
    }
  });
});

describe("the club's sites", () => {
  it('are set by managers alone, in the club', async () => {
    expect((await club.refused('site add name:"Fenwold Common" position:52.71,0.12 for:club')).problem).toBe(
      'not-allowed',
    );
    expect(
      (
        await club.refused('site add name:"Fenwold Common" position:52.71,0.12 for:club', {
          ...inPrivate(MBALI),
          isManager: true,
        })
      ).problem,
    ).toBe('no-club');
    const added = await club.says('site add name:"Fenwold Common" position:52.71,0.12 for:club', MBALI);
    expect(added.audience).toBe('everyone');
    for (const line of [
      'use name:"Fenwold Common"',
      'remove name:"Fenwold Common"',
      'rename name:"Fenwold Common" to:x',
      'horizon horizon:"9:9"',
    ]) {
      expect((await club.refused(`site ${line} for:club`)).problem, line).toBe('not-allowed');
    }
  });

  it('are used by everyone after their own, and shown to everyone', async () => {
    await club.says('site add name:"Fenwold Common" position:52.71,0.12 for:club', MBALI);
    const reply = await club.says('dark', RAVI);
    expect(reply.notes).toContain("Site: Fenwold Common (the club's site).");
    expect(reply.audience).toBe('everyone');
    await club.says('site add name:"Back Garden" position:10,10', RAVI);
    expect((await club.says('dark', RAVI)).notes).toContain('Site: Back Garden (your site).');
    expect((await club.says('dark site:"Fenwold Common"', RAVI)).audience).toBe('everyone');
    expect((await club.says('site show', TAMSIN)).title).toBe('Fenwold Common');
  });
});

describe('finding the site of a question', () => {
  it("prefers the member's own saved name to the club's, and that to a place of the same name", async () => {
    const latitude = async (text: string | undefined, asker = TAMSIN) => {
      const { privacy } = openPrivacy(club.deps.store);
      const found = await siteFor(club.deps, { asker, privacy }, text);
      return 'problem' in found
        ? found.problem
        : [found.site.source, Math.round(found.site.observer.latitudeDeg), privacy.isPersonal()];
    };
    expect(await latitude('Alice Springs')).toEqual(['place', -24, false]);
    await club.says('site add name:"Alice Springs" position:10,0 for:club', MBALI);
    expect(await latitude('alice  SPRINGS')).toEqual(['club', 10, false]);
    await club.says('site add name:"Alice springs" position:20,0');
    expect(await latitude('Alice Springs')).toEqual(['saved', 20, true]);
    expect(await latitude('30,0')).toEqual(['coordinates', 30, false]);
    expect(await latitude(undefined)).toEqual(['saved', 20, true]);
    expect(await latitude(undefined, RAVI)).toEqual(['club', 10, false]);
  });

  it("falls back to the operator's setting, and names the setting when that cannot be read", async () => {
    const set = await openClub({ clubSiteText: '52.71,0.12' });
    expect((await set.says('dark')).notes).toContain("Site: 52.71° N, 0.12° E (the club's site).");
    const wrong = await openClub({ clubSiteText: '152.71,0.12' });
    expect((await wrong.refused('dark')).message).toContain('PIERHAND_SITE');
  });

  it('keeps working with coordinates and place names while the store does not answer, and says what does not', async () => {
    const broken = await openClub({ store: brokenStore() });
    expect((await broken.says('dark site:52.71,0.12')).notes).toContain('Site: 52.71° N, 0.12° E.');
    expect((await broken.says('up NGC 7331 site:"Alice Springs"')).title).toContain('NGC 7331');
    expect((await broken.refused('dark')).message).toContain('Saved sites cannot be read just now');
    expect((await broken.refused('dark site:"Quarry Field-on-the-Wold"')).message).toContain(
      'Saved sites cannot be read just now',
    );
    for (const line of [
      'site list',
      'site add name:Home position:52.71,0.12',
      'gear',
      'remind list',
      'mydata',
      'forget confirm:yes',
    ]) {
      const outcome = await broken.refused(line).catch((error: unknown) => error);
      expect(outcome, line).toMatchObject({ code: 'store-unavailable' });
    }
  });
});

describe('a horizon', () => {
  it('is drawn, said in words, and changes what is hidden', async () => {
    await club.says('site add name:"Quarry Field" position:52.71,0.12');
    const open = await club.says('up Aldebaran');
    const shown = await club.says('site horizon horizon:"0:5, 60:5, 90:25, 120:10, 270:5"');
    expect(shown.chart).toMatchObject({
      kind: 'horizon',
      altText: expect.stringContaining('highest 25° in the east (90°)') as string,
    });
    expect(shown.chart?.kind === 'horizon' && shown.chart.points).toHaveLength(5);
    const hidden = await club.says('up Aldebaran');
    // Clear of it at 19:26:16 UTC (skyfield 1.55, DE421; see remind.test.ts).
    expect(JSON.stringify(hidden.notes)).toMatch(/horizon until 19:26 GMT/u);
    expect(JSON.stringify(open.notes)).not.toContain('horizon until');
    expect((await club.says('site horizon horizon:none')).data['site']).toMatchObject({ horizon: null });
  });

  it('can be pasted in lines, with comments', async () => {
    await club.says('site add name:"Quarry Field" position:52.71,0.12');
    const { data } = await club.says('site horizon horizon:"# from the pier\n0 5\n90 25 # barn\n270 5"');
    expect((data['site'] as { horizon: unknown }).horizon).toEqual([
      { azimuthDeg: 0, altitudeDeg: 5 },
      { azimuthDeg: 90, altitudeDeg: 25 },
      { azimuthDeg: 270, altitudeDeg: 5 },
    ]);
  });

  it('goes to the usual site when none is named, and asks which where there is none', async () => {
    expect((await club.refused('site horizon horizon:"90:20"')).problem).toBe('missing-option');
  });
});

it('suggests saved names for site and its name option', async () => {
  await club.says('site add name:"Quarry Field" position:52.7,0.1');
  const command = club.deps.commands.find(({ name }) => name === 'site');
  expect(await command?.completeOwn?.(club.deps, 'name', 'quar', TAMSIN)).toEqual([
    { label: 'Quarry Field', value: 'Quarry Field' },
  ]);
  expect(await command?.completeOwn?.(club.deps, 'name', 'quar', RAVI)).toEqual([]);
});
