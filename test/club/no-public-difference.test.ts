/**
 * What a room may read of an answer never depends on what only its asker may see. Two members of one club, alike in everything but their own sites and
 * reminders, ask the same things: whatever is shown to everyone must be the same word for word, answers and refusals alike.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import type { Deps } from '../../bot/commands/core/deps.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { writeOutcome } from '../../bot/platforms/matrix/answer/write-reply.js';
import { realDeps } from '../commands/real-deps.js';

/** 2026-11-25, 18:00 UTC. */
const NOW = Date.UTC(2026, 10, 25, 18);
const CLUB_SITES = ['Fenwold Common'];

/** The two differ in nothing that others could know. */
const PRIVATE_ROWS = [
  [
    'site add name:"Garden" position:52.71,0.12 elevation:3 horizon:"0:5, 90:20"',
    'site add name:"Hilltop" position:51.05,-114.07',
    'remind when:dark on:tomorrow site:Garden',
    'remind NGC 7331 above:30 site:Hilltop',
  ],
  [
    'site add name:"Garden" position:-33.9,18.42 elevation:200 horizon:"180:40"',
    'site add name:"Meadow" position:69.65,18.96',
    'remind when:sunrise site:Meadow',
  ],
] as const;

const SITES = [
  '',
  ' site:Garden',
  ' site:Hilltop',
  ' site:Meadow',
  ' site:"Fenwold Common"',
  ' site:nowhere',
  ' site:52.71,0.12',
];
const WHENS = ['', ' at:"tonight 22:30"', ' at:2026-06-21T12:00', ' at:never'];
const NIGHTS = ['', ' on:2026-06-21'];
const TARGETS = ['M13', 'Sun', 'Venus', 'NGC 253', 'nothing known'];

const withSites = (lines: readonly string[]): readonly string[] =>
  lines.flatMap((line) => SITES.map((site) => `${line}${site}`));
const LINES: readonly string[] = [
  ...withSites(TARGETS.flatMap((target) => NIGHTS.map((on) => `up ${target}${on}`))),
  ...withSites(TARGETS.flatMap((target) => WHENS.map((at) => `altitude ${target}${at}`))),
  ...withSites(
    TARGETS.flatMap((target) => ['', ' from:Vega', ' from:"nothing known"'].map((from) => `sun ${target}${from}`)),
  ),
  ...withSites(TARGETS.map((target) => `meridian ${target} above:20`)),
  ...withSites(NIGHTS.map((on) => `dark${on}`)),
  ...withSites(WHENS.flatMap((at) => [`sidereal${at}`, `entries${at}`, `pole${at}`, `alignment${at}`])),
  ...withSites(['tonight', 'tonight kind:galaxy', 'tonight above:89', 'tonight kind:nonsense']),
  ...withSites([
    'astray Capella landed:"15 degrees east of it"',
    'astray Mirach lst:23:19:40',
    'astray M13 landed:nonsense',
  ]),
  ...withSites([
    'remind M13 above:30',
    'remind M13 above:89',
    'remind NGC 253 above:80',
    'remind when:dark',
    'remind when:sunrise to:channel',
  ]),
  ...['Garden', 'Hilltop', 'Meadow', 'nowhere', 'x', 'Fenwold Common'].flatMap((name) =>
    ['show', 'use', 'remove', 'rename', 'horizon', 'add'].flatMap((action) => [
      `site ${action} name:"${name}"`,
      `site ${action} name:"${name}" to:Other`,
      `site ${action} name:"${name}" for:club`,
      `site ${action} name:"${name}" horizon:"bad"`,
    ]),
  ),
  'site list',
  'site',
  'remind list',
  'remind cancel id:aaaaaaa',
  'remind',
  'mydata',
  'mydata part:sites',
  'forget',
  'help',
  'gear',
  'epoch M13',
  'triage',
  'Garden',
  'is M13 up at Garden?',
  'how dark is it at Meadow tonight',
];

const askers = (platform: 'discord' | 'matrix'): readonly [Asker, Asker] => {
  const of = (id: string): Asker => ({
    platform,
    memberId: `${platform}:${id}`,
    // Names are the asker's own to show; here both have the same.
    displayName: 'Member',
    clubId: `${platform}:club`,
    channelId: `${platform}:room`,
    isManager: false,
    isPrivate: false,
  });
  return [of('first'), of('other')];
};

/** What the room reads, with nothing of it that names the asker. */
const publicWords = (outcome: Outcome, asker: Asker): string | null =>
  outcome.audience === 'asker'
    ? null
    : JSON.stringify([outcome, writeOutcome(outcome, asker.memberId, {})])
        .replaceAll(asker.memberId, 'ASKER')
        // A walk's and a reminder's own name are drawn by lot.
        .replaceAll(/walk:[a-z0-9]+|"(?:walkId|id)":"[a-z0-9]+"|\b[a-z0-9]{7,10}\.[a-z]/gu, 'LOT');

describe.each(['discord', 'matrix'] as const)('on %s', (platform) => {
  const [first, other] = askers(platform);
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
    deps = await realDeps();
    for (const site of CLUB_SITES)
      await ask(`site add name:"${site}" position:52.7,0.1 for:club`, { ...first, isManager: true });
    for (const [index, asker] of [first, other].entries())
      for (const line of PRIVATE_ROWS[index] ?? []) {
        const outcome = await ask(line, asker);
        expect(outcome, line).not.toHaveProperty('problem');
      }
  });

  test('no public word, answer or refusal, depends on a private row', async () => {
    const differing: string[] = [];
    const shown = { publicly: 0, privately: 0, refusedPrivately: 0 };
    for (const line of LINES) {
      const [one, two] = [await ask(line, first), await ask(line, other)];
      const [words, otherWords] = [publicWords(one, first), publicWords(two, other)];
      shown[words === null ? 'privately' : 'publicly']++;
      if (words === null && 'problem' in one) shown.refusedPrivately++;
      if (words !== otherWords && words !== null && otherWords !== null) differing.push(line);
    }
    console.log(`${platform}: ${LINES.length} questions, ${JSON.stringify(shown)}, ${differing.length} differing`);
    expect(errors).toEqual([]);
    expect(differing).toEqual([]);
    // Both kinds were there to be compared, refusals for the asker alone among them.
    expect(shown.publicly).toBeGreaterThan(200);
    expect(shown.refusedPrivately).toBeGreaterThan(10);
  }, 180_000);
});
