/** Which words a waiting walk takes, and which are a question of another kind; and the line to copy that a walk offers. */
import { describe, expect, it } from 'vitest';
import { allCommands } from '../../bot/commands/all-commands.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { isAnotherQuestion } from '../../bot/commands/triage/waiting-words.js';
import { assess, collectingOffer, startWalk, tellText } from '../../bot/triage/index.js';
import { shippedCatalogue, shippedModel, shippedPlaces } from '../shipped.js';

const places = shippedPlaces();
const deps = {
  catalogue: shippedCatalogue(),
  commands: allCommands,
  places: () => places,
} as unknown as Deps;
const NOW = Date.UTC(2026, 10, 25, 20);
const model = shippedModel();

describe('while a walk waits', () => {
  it.each([
    'hello',
    "what's up tonight",
    'when is the next lunar eclipse',
    'my site is norwich',
    'save my garden 52.63 1.30',
    'let me know when saturn sets',
    'can i look at venus while the sun is up',
    'delete my stuff',
    'please forget about me',
    'sent it to vega landed 15 deg west',
    'I asked for M31 and it ended up on Vega',
  ])('it leaves alone: %s', (text) => {
    expect(isAnotherQuestion(text, deps, NOW)).toBe(true);
  });

  it.each([
    'Vega',
    'my mount does not answer',
    'no change',
    'could not open port COM3',
    'the lamp went out',
    '2',
    "I don't see anything good",
    'im in device manager',
    'yes it points at the moon',
    'my scope is not connecting',
    'it is in my garden',
    'forget it, still nothing',
    'it always misses to the east',
    'it misses everything by an hour',
    'the stars are trailing',
    'sent it to vega and nothing moved',
    'goto lands a fist to the left of everything since the clocks changed, connects ok',
    'everything ends up a bit to the right of the middle',
    'scope keeps landing left of capella',
  ])('it takes: %s', (text) => {
    expect(isAnotherQuestion(text, deps, NOW)).toBe(false);
  });
});

describe('the line to copy', () => {
  const known = startWalk(
    { member: 'Tamsin', helper: null },
    { path: 'controller-serial', system: 'windows', client: 'direct' },
  );

  it('is offered at the first question once the system is known, and not once a log was read', () => {
    expect(collectingOffer(model, known, assess(model, known))?.where).toBe('PowerShell');
    const { state } = tellText(model, known, 'usb 1-1: device descriptor read/64, error -71', 'member', { by: 'log' });
    expect(collectingOffer(model, state, assess(model, state))).toBeNull();
  });

  it('is not offered while the system is not known', () => {
    const open = startWalk({ member: 'Tamsin', helper: null }, { path: 'controller-serial' });
    expect(collectingOffer(model, open, assess(model, open))).toBeNull();
  });
});
