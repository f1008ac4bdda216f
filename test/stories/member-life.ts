/** The story of a member: a site by place name, its horizon, a private answer, a reminder, the export, forgetting. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'vitest';
import { EVENING, type Shown, type Stage } from './stage.js';

const MINUTE = 60_000;

const filesHolding = (folder: string, words: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => {
    const file = path.join(folder, name);
    return statSync(file).isFile() && readFileSync(file).includes(words);
  });

export const memberLife = async <S extends Shown>(stage: Stage<S>): Promise<void> => {
  const { member } = stage;
  await stage.clockTo(EVENING);

  const added = await member.asks('site add name:"Quarry Field" position:"Alice Springs"');
  expect(added.isPrivate).toBe(true);
  expect(added.text).toContain('Australia/Darwin');
  const owner = { kind: 'member', id: member.memberId } as const;
  // Alice Springs lies at 23.70° S, 133.88° E (value from memory).
  const [site] = await stage.store().sites.list(owner);
  expect(site?.latitudeDeg).toBeCloseTo(-23.7, 1);
  expect(site?.longitudeDeg).toBeCloseTo(133.88, 1);
  await member.asks('site horizon name:"Quarry Field" horizon:"0:5, 60:20, 90:25, 120:10, 270:5"');

  const up = await member.asks('up Regulus');
  expect(up.isPrivate).toBe(true);
  expect(up.text).toContain('Quarry Field (your site)');
  expect(up.text).toMatch(/Behind your (east|north-east|east-north-east) horizon until \d\d:\d\d/u);

  const set = await member.asks('remind target:Regulus when:horizon before:15');
  expect(set.isPrivate).toBe(true);
  const [reminder] = await stage.store().reminders.list(member.memberId);
  if (reminder === undefined) throw new Error('no reminder in the store');
  expect(reminder.dueUtcMs).toBeGreaterThan(EVENING);
  await member.asks('remind when:sunrise');
  await stage.restart();
  const before = (await member.wasTold()).length;
  await stage.clockTo(reminder.dueUtcMs - MINUTE);
  expect((await member.wasTold()).slice(before)).toEqual([]);
  await stage.clockTo(reminder.dueUtcMs);
  expect((await member.wasTold()).slice(before)).toEqual([
    expect.stringMatching(/^Regulus clears the horizon of Quarry Field at \d\d:\d\d ACST/u),
  ]);
  await stage.clockTo(reminder.dueUtcMs + MINUTE);
  expect((await member.wasTold()).slice(before)).toHaveLength(1);

  const shown = await member.asks('mydata');
  expect(shown.isPrivate).toBe(true);
  expect(shown.text).toMatch(/Sites:? *Quarry Field/u);
  expect(shown.text).toMatch(/Reminders:? *1/u);
  const sites = await member.picks(shown, 'My sites');
  expect(sites.isPrivate).toBe(true);
  expect(sites.text).toContain('0:5, 60:20, 90:25, 120:10, 270:5');

  const asked = await member.asks('forget');
  expect(await stage.store().sites.list(owner)).toHaveLength(1);
  const forgotten = await member.picks(asked, 'Yes, forget me');
  expect(forgotten.isPrivate).toBe(true);
  expect(forgotten.text).toContain('Removed everything I kept about you');
  expect((await member.asks('mydata')).text).toContain('Nothing.');
  expect(await stage.store().exportMember(member.memberId)).toEqual({
    memberId: member.memberId,
    sites: [],
    gear: null,
    reminders: [],
    walks: [],
    walksHelpedWith: [],
    notes: [],
    causesCounted: [],
  });
  // The sunrise warning is gone with the rest.
  const told = (await member.wasTold()).length;
  await stage.clockTo(EVENING + 24 * 60 * MINUTE);
  expect((await member.wasTold()).slice(told)).toEqual([]);
  await stage.restart();
  for (const words of ['Quarry Field', member.memberId]) expect(filesHolding(stage.dataFolder, words)).toEqual([]);
};
