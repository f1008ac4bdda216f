/** Where members say they are, in a sentence and in some other languages: kept as their site. Places are those of the gazetteer; no source: common practice. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);
const alone = (line: string) => ({ ...ODALYS, memberId: `console:${line}`, channelId: line });

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

describe('a place told', () => {
  it.each([
    'my site is quito',
    'my site is Quito, Ecuador',
    'my location is quito ecuador',
    'im in leeds, yorkshire',
    'im at delhi india, city roof',
    'hey in denver colorado tonight',
    'my site is near york uk, dark sky',
    'we are in cape town south africa',
    'hi im from nairobi',
    'observing from pune india',
    'i observe from my balcony in lyon france',
    'location: hobart tasmania',
    'my location is 52.2, 0.12',
    'my position is 40.4 N 3.7 W',
    'i am based in krakow poland',
    'here in dunedin nz',
    'greetings from oslo norway',
    'hello from lisbon',
    'we are a club near utrecht netherlands',
    'set my place to madrid',
    'i stay in berlin, germany',
    'my home is in turin italy',
    'my observing spot is outside flagstaff arizona',
    'from tromso norway here',
    'currently in reykjavik',
    'ich bin in münchen',
    'ich wohne in hamburg',
    'mein standort ist köln',
    'ich beobachte bei dresden',
    'estoy en quito',
    'mi ubicación es bogotá colombia',
    'je suis à lyon',
    "j'habite à toulouse",
    'mon site est près de grenoble',
    'sono a torino',
    'abito a bologna',
    'osservo da firenze',
    'ik ben in utrecht',
    'ik woon in gent',
    'mijn locatie is rotterdam',
    'jestem w krakowie',
    'mieszkam w gdańsku',
    'obserwuję z poznania',
    'estou em lisboa',
    'moro em são paulo',
    'meu local é porto alegre',
    'im in paris texas',
    // The country by its own name tells Seville from Colombia's.
    'vivo en sevilla, españa',
    'ich wohne in ulm, deutschland',
  ])('is kept: %s', async (line) => {
    expect((await answer(deps, line, NOW, alone(line))).title).toBe('Site saved: my site');
  });

  it.each([
    'we observe from near oxford',
    'i live in bristol',
    'my city is cordoba',
    'observo desde valencia',
    'my site is springfield',
  ])('is asked back where several are called so: %s', async (line) => {
    const outcome = await ask(deps, line, NOW, alone(line));
    expect(isProblem(outcome) ? outcome.problem : outcome.title).toBe('ambiguous-place');
  });

  it.each([
    "i'm in Leeds, is jupiter up",
    'i live in santiago, chile what can i see',
    "i'm near toronto, is saturn up",
    'im in mumbai whats up tonight',
    'ich bin in berlin, ist jupiter sichtbar',
    'estoy en madrid, que puedo ver esta noche',
    'je suis à paris, quand se lève jupiter',
  ])('is kept, and what is asked is answered for there: %s', async (line) => {
    const asker = alone(line);
    const first = await answer(deps, line, NOW, asker);
    expect(first.title).toMatch(/^(?:Worth seeing|Jupiter|Saturn)/u);
    expect(first.notes.join(' ')).toContain('Kept as your site');
    const next = await ask(deps, 'dark', NOW + 60_000, asker);
    expect(isProblem(next) ? next.message : '').toBe('');
  });

  it('is not kept beside a site that is saved already', async () => {
    const asker = alone('has a site');
    await answer(deps, 'site add garden 53.8,-1.55', NOW, asker);
    const there = await answer(deps, "i'm near toronto, is saturn up", NOW, asker);
    expect(there.notes.join(' ')).not.toContain('Kept');
    expect((await answer(deps, 'dark', NOW + 60_000, asker)).notes.join(' ')).toContain('garden');
  });

  it('stands beside a walk, whose question stands again', async () => {
    const asker = alone('walks');
    await answer(deps, 'triage do:new goto missed by 15 degrees east', NOW, asker);
    const told = await answer(deps, 'im in leeds, uk', NOW, asker);
    expect(told.title).toBe('Site saved: my site');
    expect(told.notes.join(' ')).toContain('Your walk still waits');
  });
});

describe('what is no place', () => {
  it.each([
    'im in trouble, mount does not connect',
    'im in the hand controller menu',
    'we are in eq mode',
    "i'm in charge of the mount",
    'im in a hurry, is jupiter up',
    'my site is not saved',
    'my location is wrong in the handset',
    'my site is dark',
    'im in bed',
    'hello from Tamsin',
    'i am in york on saturday for the meeting',
  ])('is not kept: %s', async (line) => {
    const outcome = await ask(deps, line, NOW, alone(line));
    expect(isProblem(outcome) ? '' : outcome.title).not.toMatch(/^Site saved/u);
  });
});
