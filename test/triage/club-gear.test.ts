/** What members see of a club's own folder. */
import { describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { loadTriage } from '../../bot/triage/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';
import { folderWith } from './model-folders.js';

/** What commands work with, over the shipped model with these files of a club. */
const withClubs = (files: Readonly<Record<string, string>>): Deps => {
  const model = loadTriage('knowledge/connection', folderWith(files));
  return { ...deps, triage: () => model };
};

/** A walk of somebody with this fault, reply by reply, until its remedy or for twelve turns. */
const walkOf = async (own: Deps, words: string, faultId: string): Promise<readonly Reply[]> => {
  const who = member('Tamsin');
  const { answers = {}, stage = '' } = own.triage().fault(faultId) ?? {};
  const likely = (id: string): string => {
    const check = own.triage().check(id);
    const told = answers[id] ?? check?.byStage?.[stage] ?? check?.good ?? 'unsure';
    return typeof told === 'string' ? told : (Object.entries(told).sort((a, b) => b[1] - a[1])[0]?.[0] ?? '');
  };
  const seen = [await answer(own, `triage do:new ${words}`, NOW, who)];
  for (let turn = 0; turn < 12; turn++) {
    const last = seen.at(-1);
    if (last === undefined || stepOf(last).id === faultId) break;
    const { kind, id } = stepOf(last);
    const said = kind === 'try' ? 'same' : likely(id);
    seen.push(await answer(own, `triage walk:${idOf(last)} answer:${id}.${said}`, NOW, who));
  }
  return seen;
};

describe('a note of the club', { timeout: 60_000 }, () => {
  it('stands under the lines of a remedy and of a question that ship', async () => {
    const noted = withClubs({
      'faults.yaml': '- id: mount-switched-off\n  remedy: { note: The strip under the bench has a switch. }\n',
      'checks.yaml': '- id: how-far\n  note: The lamp is on the north side.\n',
    });
    const seen = await walkOf(noted, 'my mount and I need help', 'mount-switched-off');
    expect(stepOf(seen.at(-1) as Reply).id).toBe('mount-switched-off');
    expect(linesOn(seen.at(-1) as Reply).join(' ')).toContain('At your club: The strip under the bench has a switch.');
    expect(seen.flatMap(linesOn).join(' ')).toContain('At your club: The lamp is on the north side.');
  });
});

describe('a mount of the club that is reached in two ways', { timeout: 60_000 }, () => {
  it('is known by its name, and its ways have the faults of those they are like', async () => {
    const named = withClubs({
      'paths.yaml': `- { id: our-grey, like: controller-serial, title: 'The pier, by the grey lead', words: [the pier, grey lead] }
- { id: our-stick, like: bridge-own-network, title: 'The pier, by the blue stick', words: [the pier, blue stick] }
`,
    });
    const who = member('Bertrand');
    const first = await answer(named, 'triage do:new the pier does not connect', NOW, who);
    expect(stepOf(first).id).toBe('path');
    expect(first.choices?.slice(0, 3).map(({ label }) => label)).toEqual([
      'The pier, by the grey lead',
      'The pier, by the blue stick',
      'Not sure',
    ]);
    const told = await answer(named, 'triage do:new on the pier by the grey lead the adapter has no driver', NOW, who);
    expect(linesOn(told).join(' ')).toContain('the pier, by the grey lead');
    const { standing } = told.data as { standing: readonly { faultId: string }[] };
    // It is at a stage that the two ways do not share.
    expect(standing.map(({ faultId }) => faultId)).toContain('adapter-driver-missing');
  });
});
