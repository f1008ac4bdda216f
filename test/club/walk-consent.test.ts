/** Walks between members: whose they are, who may sit in as a helper, who ends them, and that nobody's gear is shown to another. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { MBALI, NOW, openClub, RAVI, TAMSIN, type Club } from './club-bench.js';

let club: Club;
beforeEach(async () => {
  club = await openClub();
});

const idIn = (data: unknown): string => String((data as Record<string, unknown>)['walkId']);
const forTamsin = `triage for:${TAMSIN.memberId}`;
/** Tamsin's own walk, two answers in. */
const ownWalk = async (): Promise<string> => idIn((await club.says('triage the port is not in the list', TAMSIN)).data);
/** Presses the button of a reply. */
const accept = async (asked: { readonly choices?: readonly { readonly run: string }[] | undefined }, by: Asker) =>
  club.says(asked.choices?.[0]?.run ?? '', by);

describe('a walk begun for a member', () => {
  it('shows the one who begins it nothing of the gear the member saved, in this club or another', async () => {
    await club.says('gear mount:fork connection:bluetooth system:windows', TAMSIN);
    const plain = await openClub();
    for (const clubId of [RAVI.clubId, 'discord:900000000000000009']) {
      const asked = await club.says(forTamsin, { ...RAVI, clubId });
      const bare = await plain.says(forTamsin, { ...RAVI, clubId });
      // Walk ids are drawn by chance; all else must be the same.
      const words = ({ title, summary, facts, notes, data }: typeof asked) =>
        JSON.stringify({ title, summary, facts, notes }).replaceAll(idIn(data), 'WALK');
      expect(words(asked)).toBe(words(bare));
    }
  });

  it("is not the member's default until they answer in it, and then it is", async () => {
    const own = await ownWalk();
    const pushed = idIn((await club.says(forTamsin, RAVI)).data);
    // Ravi would help: the own walk is under way, and is neither entered nor replaced.
    expect(pushed).not.toBe(own);
    expect(idIn((await club.says('triage', TAMSIN)).data)).toBe(own);
  });

  it('is one walk a starter and subject, however often it is begun', async () => {
    const first = idIn((await club.says(forTamsin, RAVI)).data);
    for (const line of [forTamsin, `${forTamsin} do:new`, forTamsin])
      expect(idIn((await club.says(line, RAVI)).data)).toBe(first);
    const mine = idIn((await club.says('triage', TAMSIN)).data);
    expect(mine).not.toBe(first);
    const { data } = await club.says(`triage walk:${first} the port is not in the list`, TAMSIN, NOW + 60_000);
    expect(data['agreed']).toBe(true);
    expect(idIn((await club.says('triage', TAMSIN)).data)).toBe(first);
  });
});

describe('answers to one walk at the same moment', () => {
  it('are all heard', async () => {
    const own = await ownWalk();
    await Promise.all([
      club.says(`triage walk:${own} answer:system.linux`, TAMSIN),
      club.says(`triage walk:${own} answer:path.controller-serial`, TAMSIN),
      club.says(`triage walk:${own} answer:client.platform`, TAMSIN),
    ]);
    const kept = await club.deps.store.walks.get(own);
    for (const answer of ['linux', 'controller-serial', 'platform'])
      expect(JSON.stringify(kept?.state)).toContain(`"${answer}"`);
  });
});

describe('a walk forgotten while an answer to it waits its turn', () => {
  it('is not written again', async () => {
    const own = await ownWalk();
    const { store } = club.deps;
    const get = store.walks.get.bind(store.walks);
    // Found, and then forgotten before its turn comes.
    const found = vi.spyOn(store.walks, 'get').mockImplementationOnce(async (id) => {
      const walk = await get(id);
      await store.forgetMember(TAMSIN.memberId);
      return walk;
    });
    const outcome = await club.refused(`triage walk:${own} answer:system.linux`, TAMSIN);
    found.mockRestore();
    expect(outcome).toMatchObject({ problem: 'unknown-walk' });
    expect(await store.walks.get(own)).toBeNull();
  });
});

describe('a walk begun for a member by another', () => {
  const noteOf = async (by: Asker, nowUtcMs = NOW) => (await club.says('triage do:new', by, nowUtcMs)).notes.join(' ');

  it('is pointed to when they begin one of their own there, and only then and for a while', async () => {
    const pushed = idIn((await club.says(forTamsin, RAVI)).data);
    expect(await noteOf(TAMSIN)).toContain(
      `Ravi began a walk for you here. To answer in that one instead: triage walk:${pushed}`,
    );
    // Neither to others, nor elsewhere, nor the morning after, nor once it has been answered.
    expect(await noteOf(MBALI)).not.toContain('began a walk');
    expect(await noteOf({ ...TAMSIN, channelId: 'discord:800000000000000009' })).not.toContain('began a walk');
    expect(await noteOf({ ...TAMSIN, clubId: 'discord:900000000000000009' })).not.toContain('began a walk');
    expect(await noteOf(TAMSIN, NOW + 4 * 3_600_000)).not.toContain('began a walk');
    await club.says(`triage walk:${pushed} the port is not in the list`, TAMSIN);
    expect(await noteOf(TAMSIN)).not.toContain('began a walk');
  });

  it('leads nobody into it: words and answers go to their own, and the name is a plain short word', async () => {
    await club.says(forTamsin, {
      ...RAVI,
      displayName: 'Tamsin\n\nSystem: **type** `forget confirm:yes` now @everyone and more',
    });
    const { data, notes } = await club.says('triage the port is not in the list', TAMSIN);
    expect(notes.filter((note) => note.includes('began a walk'))).toHaveLength(1);
    expect(notes.find((note) => note.includes('began a walk'))).not.toMatch(/\n/u);
    expect((notes.find((note) => note.includes('began a walk')) ?? '').split(' began')[0]?.length).toBeLessThanOrEqual(
      40,
    );
    expect(idIn((await club.says('triage', TAMSIN)).data)).toBe(idIn(data));
  });
});

describe("a helper in a member's own walk", () => {
  it('sits down only when the member says so, and sees nothing before', async () => {
    const own = await ownWalk();
    const asked = await club.says(forTamsin, RAVI);
    expect(JSON.stringify(asked)).not.toContain('port is not in the list');
    expect((await club.refused(`triage walk:${own}`, RAVI)).problem).toBe('not-your-walk');
    expect((await club.refused(asked.choices?.[0]?.run ?? '', RAVI)).problem).toBe('not-your-walk');
    await accept(asked, TAMSIN);
    expect(idIn((await club.says(`triage walk:${own}`, RAVI)).data)).toBe(own);
  });

  it('cannot be slipped in by an older request, nor keep the seat against the member', async () => {
    const own = await ownWalk();
    const byRavi = await club.says(forTamsin, RAVI);
    const byMbali = await club.says(forTamsin, MBALI);
    expect((await club.refused(byRavi.choices?.[0]?.run ?? '', TAMSIN)).problem).toBe('another-asks');
    await accept(byMbali, TAMSIN);
    expect((await club.refused(forTamsin, RAVI)).problem).toBe('has-a-helper');
    await club.says('triage do:release', TAMSIN);
    expect((await club.refused(`triage walk:${own}`, MBALI)).problem).toBe('not-your-walk');
    await accept(await club.says(forTamsin, RAVI), TAMSIN);
    expect(idIn((await club.says(`triage walk:${own}`, RAVI)).data)).toBe(own);
  });

  it('may leave but not end it', async () => {
    const own = await ownWalk();
    await accept(await club.says(forTamsin, RAVI), TAMSIN);
    expect((await club.refused(`triage walk:${own} do:end`, RAVI)).problem).toBe('not-yours-to-end');
    await club.says(`triage walk:${own} do:release`, RAVI);
    expect((await club.refused(`triage walk:${own}`, RAVI)).problem).toBe('not-your-walk');
    expect((await club.deps.store.walks.get(own))?.endedUtcMs).toBeNull();
  });
});

describe('the right entries in a walk with a helper', () => {
  const AT_CARD = 'triage goto misses by about 15 degrees east every time, sidereal time on handset is one hour off';
  const pressed = async (by: Asker) => {
    const card = await club.says(AT_CARD, TAMSIN);
    await accept(await club.says(forTamsin, RAVI), TAMSIN);
    const shown = await club.says(`triage walk:${idIn(card.data)}`, TAMSIN);
    const press = shown.choices?.find(({ label }) => label === 'Show the right entries');
    return club.says(press?.run ?? '', by);
  };

  it('are the member’s for the member', async () => {
    await club.says('site add home 52.71,0.12', TAMSIN);
    expect((await pressed(TAMSIN)).title).toBe('What to type into the controller');
  });

  it('tell a helper whose they are, and show no site', async () => {
    await club.says('site add home 52.71,0.12', TAMSIN);
    const told = await pressed(RAVI);
    expect(told.summary).toContain('Tamsin');
    expect(JSON.stringify(told)).not.toContain('52.7');
  });
});
