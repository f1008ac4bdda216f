/** What the shipped model must cover: paths, systems, clients, the faults the club asked for, and that checks tell them apart. */
import { describe, expect, it } from 'vitest';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { phoneContextsOf } from '../../scripts/knowledge/contexts.js';
import { CLIENTS, SYSTEMS } from '../../bot/triage/model/schema.js';
import { everySituation, read, shipped } from './shipped-model.js';

// Source of the lists in this file: the project's own issue on connection triage.
const PATHS = [
  'controller-serial',
  'controller-usb',
  'board-cable',
  'built-in-usb',
  'bluetooth',
  'bridge-own-network',
  'bridge-house-network',
];

const ASKED_FOR: Readonly<Record<string, readonly string[]>> = {
  power: [
    'mount-switched-off',
    'supply-dead',
    'brown-out-supply',
    'brown-out-lead',
    'power-plug-reversed',
    'power-plug-loose',
  ],
  cable: [
    'look-alike-serial-lead',
    'six-wire-lead-mirrored',
    'rs232-on-logic-port',
    'worn-socket',
    'charge-only-cable',
    'usb-cable-too-long',
    'serial-lead-too-long',
    'unpowered-hub',
    'computer-undervolted',
  ],
  adapter: [
    'usb-port-asleep',
    'adapter-driver-missing',
    'adapter-driver-wrong',
    'adapter-chip-refused',
    'adapter-blocked-by-policy',
    'adapter-latency-long',
  ],
  'system-port': [
    'port-number-moved',
    'port-number-too-high',
    'port-held-by-program',
    'no-permission',
    'mac-call-in-device',
  ],
  'port-settings': ['wrong-speed', 'wrong-frame', 'flow-control-on', 'time-out-too-short', 'retries-too-few'],
  'controller-mode': [
    'controller-at-start-question',
    'controller-asleep',
    'pass-through-left-on',
    'pass-through-needed',
    'firmware-half-updated',
  ],
  driver: [
    'mount-driver-missing',
    'bits-differ',
    'component-off',
    'driver-race',
    'privilege-mixed',
    'similar-driver-chosen',
  ],
  'client-program': ['protocol-too-old', 'wrong-mount-type', 'mount-parked', 'below-horizon-limit', 'meridian-limit'],
  'site-and-time': [
    'site-of-another-place',
    'longitude-sign-wrong',
    'day-and-month-swapped',
    'utc-offset-wrong',
    'summer-time-wrong',
    'epoch-mixed',
  ],
  network: ['firewall-blocks', 'wrong-network-joined', 'bridge-address-changed', 'two-masters'],
};

describe('the shipped fault model', () => {
  it('has every path, each under three systems and for both kinds of client', () => {
    expect(shipped.paths.map(({ id }) => id)).toEqual(PATHS);
    for (const path of shipped.paths) {
      expect(path.systems, path.id).toEqual(SYSTEMS.filter((system) => system !== 'phone'));
      expect(path.clients, path.id).toEqual(CLIENTS);
    }
  });

  it('holds at least 70 faults, 45 checks and 40 evidence patterns', () => {
    expect(shipped.faults.length).toBeGreaterThanOrEqual(70);
    expect(shipped.checks.length).toBeGreaterThanOrEqual(45);
    expect(shipped.evidence.length).toBeGreaterThanOrEqual(40);
  });

  it.each(Object.entries(ASKED_FOR))('knows the faults asked for at the stage %s', (stage, ids) => {
    for (const id of ids) expect(shipped.fault(id)?.stage, id).toBe(stage);
  });

  it('has faults at every stage of every path', () => {
    for (const { context, faults } of everySituation()) {
      for (const stage of shipped.path(context.path ?? '')?.stages ?? []) {
        if (stage === 'driver' && context.client === 'direct') continue; // without a platform there is no driver to go wrong
        expect(
          faults.some((fault) => fault.stage === stage),
          `${context.path}/${context.system}/${context.client}: ${stage}`,
        ).toBe(true);
      }
    }
  });

  it('gives remedy steps and instructions for the system at hand, wherever a fault or check applies', () => {
    for (const { context, faults, checks } of everySituation()) {
      const system = context.system ?? 'windows';
      for (const { id, remedy } of faults)
        expect(
          Array.isArray(remedy.steps) || (remedy.steps.all ?? remedy.steps[system]) !== undefined,
          `${id} on ${system}`,
        ).toBe(true);
      for (const { entry } of checks)
        expect(
          typeof entry.how === 'string' || (entry.how.all ?? entry.how[system]) !== undefined,
          `${entry.id} on ${system}`,
        ).toBe(true);
    }
  });

  it('has, for any two faults of a situation, a check that usually answers differently', () => {
    const alike: string[] = [];
    for (const { context, faults, checks } of everySituation()) {
      for (const [a, one] of faults.entries())
        for (const [b, other] of faults.entries()) {
          if (b <= a || one.sameAs?.includes(other.id) === true) continue;
          const apart = checks.some(
            ({ odds }) => odds.reduce((sum, row) => sum + Math.abs((row[a] ?? 0) - (row[b] ?? 0)) / 2, 0) > 0.5,
          );
          if (!apart) alike.push(`${one.id} and ${other.id} on ${context.path}/${context.system}/${context.client}`);
        }
    }
    expect(alike).toEqual([]);
  });

  it('uses every answer of every check: each is good, or some fault gives it', () => {
    const given = new Set(
      [...everySituation(), ...phoneContextsOf(shipped).map((context) => situationFor(shipped, context))].flatMap(
        ({ checks }) =>
          checks.flatMap(({ entry, answers, odds }) =>
            answers
              .filter((_, i) => (odds[i] ?? []).slice(0, -1).some((p) => p > 0.01))
              .map((answer) => `${entry.id}: ${answer}`),
          ),
      ),
    );
    const unused = shipped.checks.flatMap(({ id, answers, good }) =>
      answers
        .filter((answer) => answer.id !== good && !given.has(`${id}: ${answer.id}`))
        .map((answer) => `${id}: ${answer.id}`),
    );
    expect(unused).toEqual([]);
  });

  it('hands every site, time and alignment fault over', () => {
    const handed = shipped.faults.filter(({ stage }) => stage === 'site-and-time' || stage === 'alignment');
    for (const fault of handed) expect(fault.handsOverTo, fault.id).toBe('astray');
  });
});

describe('facts of the trade', () => {
  // 9,600 baud, 2,000 ms, 2 retries, ports such as 3 and 4, J2000 by default: common practice, no source.
  const everything = JSON.stringify({ checks: shipped.checks, faults: shipped.faults });

  it('stand in the texts members read', () => {
    expect(JSON.stringify(shipped.check('port-settings')?.how)).toMatch(/9,600, 8, none, 1/u);
    expect(shipped.check('patience')?.question).toMatch(/2,000 ms.*2 retries/u);
    expect(JSON.stringify(shipped.check('port-match')?.how)).toMatch(/often 3 or 4/u);
    expect(JSON.stringify(shipped.check('epoch-entries')?.how)).toMatch(/J2000/u);
  });

  it('every entry names its source, and what has none says so', () => {
    for (const { id, source } of [...shipped.faults, ...shipped.checks, ...shipped.evidence])
      expect(source ?? '', id).toMatch(/\S{3}/u);
    expect(everything).toContain('common practice, no source');
  });
});

describe('evidence', () => {
  it('reads each example, printed, as its own entry says, whatever other patterns it meets', () => {
    for (const entry of shipped.evidence) {
      // Some count only beside another message.
      const beside = shipped.reading.evidence.find(({ id }) => id === entry.with?.[0]);
      // Two figures apart are told in members' own words alone.
      const by = entry.id.startsWith('figures-') ? undefined : 'log';
      const said = read(`${beside?.example ?? ''}\n${entry.example}`, by);
      if (entry.says !== undefined) expect(said.ids, entry.id).toContain(entry.id);
      for (const [check, answer] of Object.entries(entry.answers ?? {}))
        expect(said.answers[check], `${entry.id}: ${check}`).toBe(answer);
      if (entry.system !== undefined) expect(said.system, entry.id).toBe(entry.system);
    }
  });

  it('stays silent on talk that is no complaint', () => {
    for (const text of [
      'good evening, is NGC 7789 up tonight at Fenwold Common?',
      'the sky cleared after midnight and Uranus was lovely',
      'thank you, that was the best view of the ring yet',
      'who brings the kettle on Friday?',
    ]) {
      expect(read(text).ids, text).toEqual([]);
    }
  });
});
