/** The numbers of a miss inside a walk: how a line is read, what it does to the causes that stand, what is asked again. */
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { plainlyNumbers, readNumbers } from '../../bot/commands/triage/take-numbers.js';
import { triage } from '../../bot/commands/triage/triage.js';
import type { Deps } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { CAUSE_IDS } from '../../bot/pointing/miss/astray-types.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { shippedModel } from '../shipped.js';
import { answer, ODALYS, realDeps, refusal } from '../commands/real-deps.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const NOW = Date.UTC(2026, 10, 25, 20);
const LONGITUDE_DEG = 0.12;

describe('a line of numbers', () => {
  it.each([
    [
      'Vega; about 15 degrees east of it; shown 41, 135; lst 18:22',
      { target: 'Vega', landed: 'about 15 degrees east of it', shown: '41, 135', lst: '18:22' },
    ],
    // A form's lines, those left out empty.
    ['target: Deneb\nlanded: Vega\nlst: 18:22:30', { target: 'Deneb', landed: 'Vega', lst: '18:22:30' }],
    ['Capella; altitude 40; azimuth 80; site Cork', { target: 'Capella', shown: '40,80', site: 'Cork' }],
    [
      'site:"Hannover, Germany" Vega; about 30 degrees east of it',
      { target: 'Vega', landed: 'about 30 degrees east of it', site: 'Hannover, Germany' },
    ],
    ['Mirach; sidereal time: 23:19; -', { target: 'Mirach', lst: '23:19' }],
  ])('is read: %s', (line, read) => {
    expect(readNumbers(line)).toEqual(read);
  });

  it.each(['Vega', 'it lands somewhere else', 'lst 18:22', ''])(
    'is none without a target and one number: %s',
    (line) => {
      expect(readNumbers(line)).toBeNull();
    },
  );

  it.each([
    ['Vega; about 15 degrees west of it', true],
    ['Vega; lst 22:10; site 52.71,0.12', true],
    ['I moved the dish; it took 3 days', false],
    ['15 degrees off, always east', false],
  ])('is known unasked: %s %s', (line, is) => {
    expect(plainlyNumbers(line)).toBe(is);
  });
});

/** USNO, Approximate Sidereal Time: GMST in hours from days since J2000, good to a tenth of a second over this century. */
const localSiderealHours = (utcMs: number): number => {
  const days = (utcMs - Date.UTC(2000, 0, 1, 12)) / 86_400_000;
  return (((18.697374558 + 24.06570982441908 * days + LONGITUDE_DEG / 15) % 24) + 24) % 24;
};

const clockOf = (hours: number): string => {
  const seconds = Math.round((((hours % 24) + 24) % 24) * 3600);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
};

describe('numbers typed in a walk', () => {
  let deps: Deps;
  let asked: Reply;
  const asker = { ...ODALYS, memberId: 'console:odalys-numbers' };
  beforeAll(async () => {
    deps = await realDeps();
    await answer(deps, 'triage It moves, and misses every target.', NOW, asker);
    asked = await answer(
      deps,
      `triage Capella; landed 15 degrees west of it; lst ${clockOf(localSiderealHours(NOW) + 1)}; site 52.71,${LONGITUDE_DEG}`,
      NOW,
      asker,
    );
  });

  it('become evidence: an hour of sidereal time too much is a clock or zone cause, 15 degrees of sky', () => {
    expect(asked.notes.some((note) => note.startsWith('From your numbers:'))).toBe(true);
    const standing = asked.data['standing'] as unknown as readonly { faultId: string; probability: number }[];
    const clock = standing
      .filter(({ faultId }) =>
        /^(?:summer-time|utc-offset|mount-clock|computer-clock|two-systems|twelve)/u.test(faultId),
      )
      .reduce((sum, { probability }) => sum + probability, 0);
    expect(clock).toBeGreaterThan(0.8);
  });

  it('stand in the summary', async () => {
    const summary = await answer(deps, 'triage do:summary', NOW, asker);
    expect(summary.facts.map(({ value }) => value).join('\n')).toContain(
      'Numbers of the miss: Capella; 15 degrees west',
    );
  });

  it('may be said in a sentence where they were asked for', async () => {
    const other = { ...ODALYS, memberId: 'console:odalys-sentence' };
    await answer(deps, 'triage', NOW, other);
    await answer(deps, 'triage answer:how-far.elsewhere', NOW, other);
    const reply = await answer(deps, 'triage answer:entries-screen.time', NOW, other);
    expect((reply.data['step'] as { id: string }).id).toBe('numbers');
    const line = 'triage I sent it to Capella and it landed 15 degrees west of it site:52.71,0.12';
    expect((await answer(deps, line, NOW, other)).notes.join(' ')).toContain('From your numbers:');
  });

  it('are read from a form whose fields are filled in as its hints say', async () => {
    const { fields = [], into } = triage.forms?.['numbers'] ?? {};
    expect(into).toBe('text');
    const line = fields.map(({ id, hint = '' }) => `${id} ${hint}`).join('; ');
    const other = { ...ODALYS, memberId: 'console:odalys-hints' };
    await answer(deps, 'triage', NOW, other);
    await answer(deps, 'triage answer:how-far.elsewhere', NOW, other);
    await answer(deps, 'triage answer:entries-screen.time', NOW, other);
    expect((await answer(deps, `triage ${line}`, NOW, other)).notes.join(' ')).toContain('From your numbers:');
  });

  it('that do not work out are words, where they were not asked for', async () => {
    const other = { ...ODALYS, memberId: 'console:odalys-words' };
    const reply = await answer(deps, 'triage Nosuchstar; lst 99:99', NOW, other);
    expect(reply.notes.join(' ')).not.toContain('From your numbers');
  });

  it.each(['constructor', 'no-such-cause', 'tracking-off'])(
    'bring no cause that astray does not name: %s',
    async (id) => {
      const other = { ...ODALYS, memberId: 'console:odalys-found' };
      await answer(deps, 'triage', NOW, other);
      const { message } = await refusal(deps, `triage answer:found.${id}`, NOW, other);
      expect(message).toBe(
        `"${id}" is no cause that astray names. Ask astray again, and take one of the causes it offers.`,
      );
      const taken = await answer(deps, 'triage answer:found.longitude-sign', NOW, other);
      const standing = taken.data['standing'] as unknown as readonly { faultId: string }[];
      expect(standing[0]?.faultId).toBe('longitude-sign-wrong');
    },
  );
});

describe('the causes of a miss', () => {
  /** A mount that does not track is found by looking (the check "follow"), not by numbers: its fault hands nothing over. */
  const NOT_IN_THE_MODEL = ['not-tracking'];

  it('are each some fault of the model, and the model names no others', () => {
    const named = new Set(shippedModel().faults.flatMap(({ astrayCauses = [] }) => astrayCauses));
    expect(CAUSE_IDS.filter((id) => !named.has(id))).toEqual(NOT_IN_THE_MODEL);
    expect([...named].filter((id) => !(CAUSE_IDS as readonly string[]).includes(id))).toEqual([]);
  });

  it('weigh nothing for or against what the numbers of one miss cannot show', () => {
    const situation = situationFor(shippedModel(), { path: null, system: null, client: null });
    const { factors } = gatherEvidence(situation, [
      { kind: 'found', cause: 'unknown', causes: [], said: 'Vega; 2 degrees off', by: 'member' },
    ]);
    const factorOf = (id: string): number => factors.get(situation.faultIndex.get(id) ?? -1) ?? 1;
    for (const id of ['tube-shifts', 'cone-error', 'low-air', 'gearing-wrong']) expect(factorOf(id), id).toBe(1);
    expect(factorOf('longitude-sign-wrong')).toBeLessThan(0.1);
  });
});
