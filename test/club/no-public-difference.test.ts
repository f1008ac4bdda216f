/**
 * What a room may read of an answer never depends on what only its asker may see. Three members of one club, alike in everything but their own
 * sites, reminders, mounts and walks in direct rooms (the third has none), ask the same things: whatever is shown to everyone must be the same
 * word for word as each platform writes it, answers and refusals alike; and that it is shown must not hang on what is kept.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { allReaders } from '../../bot/commands/all-commands.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { shownAnswer } from '../../bot/platforms/browser/write-message.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import { writeOutcome as writeDiscord } from '../../bot/platforms/discord/write/write-reply.js';
import { writeOutcome as writeMatrix } from '../../bot/platforms/matrix/answer/write-reply.js';
import { realDeps } from '../commands/real-deps.js';
import { asksTheUsual, LINES, PRIVATE_ROWS, PRIVATE_WALKS } from './difference-lines.js';

/** 2026-11-25, 18:00 UTC. */
const NOW = Date.UTC(2026, 10, 25, 18);
const WIDTHS = [80, 40];

const memberOf = (platform: 'discord' | 'matrix', id: string): Asker => ({
  platform,
  memberId: `${platform}:${id}`,
  // Names are the asker's own to show; here all have the same.
  displayName: 'Member',
  clubId: `${platform}:club`,
  channelId: `${platform}:room`,
  isManager: false,
  isPrivate: false,
});
const directly = (asker: Asker): Asker => ({
  ...asker,
  clubId: asker.memberId,
  channelId: `dm ${asker.memberId}`,
  isPrivate: true,
});

/** As every platform writes it where all can read it, with nothing that names the asker. */
const publicWords = (outcome: Outcome, asker: Asker, { commands }: Deps): string | null => {
  const discord = writeDiscord(outcome, null);
  const isPrivate = outcome.audience === 'asker';
  // Refusals are the asker's alone on Discord, all of them.
  if (isPrivate && !discord.isPrivate) throw new Error('Discord takes it for another audience');
  if (isPrivate) return null;
  const written = [
    outcome,
    discord.body,
    writeMatrix(outcome, asker.memberId, {}),
    ...WIDTHS.map((width) => consoleLines(outcome, null, { colour: true, width })),
    shownAnswer(outcome, commands, null),
  ];
  return (
    JSON.stringify(written)
      .replaceAll(asker.memberId, 'ASKER')
      // A walk's and a reminder's own name are drawn by lot.
      .replaceAll(/walk:[a-z0-9]+|"(?:walkId|id)":"[a-z0-9]+"|\b[a-z0-9]{7,10}\.[a-z]/gu, 'LOT')
  );
};

describe.each(['discord', 'matrix'] as const)('on %s', (platform) => {
  const members = ['first', 'other', 'empty'].map((id) => memberOf(platform, id));
  const [first, other, empty] = members as [Asker, Asker, Asker];
  const helper = { ...memberOf(platform, 'helper'), displayName: 'Ravi' };
  let deps: Deps;
  const errors: unknown[] = [];
  const ask = (line: string, asker: Asker): Promise<Outcome> =>
    runLine(deps, line, {
      asker,
      nowUtcMs: NOW,
      onError: (error) => {
        errors.push(error);
      },
    });

  beforeAll(async () => {
    deps = { ...(await realDeps()), readers: allReaders };
    await ask('site add name:"Fenwold Common" position:52.7,0.1 for:club', { ...first, isManager: true });
    await ask('site use name:"Fenwold Common" for:club', { ...first, isManager: true });
    for (const [index, asker] of members.entries()) {
      for (const line of PRIVATE_ROWS[index] ?? []) expect(await ask(line, asker), line).not.toHaveProperty('problem');
      for (const line of PRIVATE_WALKS[index] ?? [])
        expect(await ask(line, directly(asker)), line).not.toHaveProperty('problem');
    }
  });

  test('no public word, answer or refusal, depends on a private row, nor does whether there is one', async () => {
    const differing: string[] = [];
    const shown = { publicly: 0, privately: 0, refusedPrivately: 0 };
    // What differs between platforms is the writing, which is compared for both; a part of the questions will do for the second.
    for (const line of LINES.filter((_, i) => platform === 'discord' || i % 3 === 0)) {
      const outcomes = [await ask(line, first), await ask(line, other), await ask(line, empty)];
      const [words = null, otherWords = null, emptyWords = null] = outcomes.map((outcome, i) =>
        publicWords(outcome, members[i] ?? first, deps),
      );
      shown[words === null ? 'privately' : 'publicly']++;
      if (words === null && 'problem' in (outcomes[0] ?? {})) shown.refusedPrivately++;
      const isAlike = words === otherWords && (words === emptyWords || (words === null && asksTheUsual(line)));
      if (!isAlike) differing.push(line);
    }
    console.log(`${platform}: ${JSON.stringify(shown)}, ${differing.length} differing`);
    expect(errors).toEqual([]);
    expect(differing).toEqual([]);
    // Both kinds were there to be compared, refusals for the asker alone among them.
    expect(shown.publicly).toBeGreaterThan(100);
    expect(shown.refusedPrivately).toBeGreaterThan(10);
  }, 240_000);

  test('a helper who begins a walk for one reads the same, whatever that one keeps', async () => {
    const helped: (string | null)[][] = [];
    for (const subject of members) {
      const lines = ['', ' the port is not in the list', ' do:why', ' do:summary', ' Vega; 15 degrees east of it'];
      const said: (string | null)[] = [];
      for (const line of lines)
        said.push(publicWords(await ask(`triage for:${subject.memberId}${line}`, helper), subject, deps));
      helped.push(said);
    }
    expect(helped[0]?.every((words) => words !== null)).toBe(true);
    expect(helped[1]).toEqual(helped[0]);
    expect(helped[2]).toEqual(helped[0]);
  });
});
