/** Contrasts and the unknown in every link: what works clears the links it uses, what fails charges them, noise included. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { contrastOdds } from '../../bot/triage/engine/contrast.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { assess, located, startWalk, type WalkEvent } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const SERIAL = { path: 'controller-serial', system: 'windows', client: 'direct' } as const;
const said = (check: string, answer: string): WalkEvent => ({ kind: 'answer', check, answer, by: 'member' });
const shareOf = (events: readonly WalkEvent[], link: string): number =>
  located(
    assess(model, {
      ...startWalk({ member: 'Tamsin', helper: null }, SERIAL),
      events: [...startWalk({ member: null, helper: null }, SERIAL).events, ...events],
    }),
  ).find((one) => one.link === link)?.probability ?? 0;

describe('a contrast', () => {
  // By hand: two links a and b; the way uses a. Works: 0.06 for a fault in a, 1 for one in b, and the reverse where it fails.
  it('gives each answer by the links it uses', () => {
    const contrast = { works: { works: ['a'] }, fails: { fails: ['a'] } };
    const [works, fails] = contrastOdds(contrast, ['works', 'fails'], 'a');
    expect(works).toBeCloseTo(0.06 / 1.06, 12);
    expect(fails).toBeCloseTo(1 / 1.06, 12);
    expect(contrastOdds(contrast, ['works', 'fails'], 'b')[0]).toBeCloseTo(1 / 1.06, 12);
    expect(contrastOdds(contrast, ['works', 'fails'], null)).toEqual([0.5, 0.5]);
  });

  it('says nothing where it says that there is none', () => {
    const contrast = { works: { works: ['a'] }, fails: { fails: ['a'] }, silent: ['none'] };
    expect(contrastOdds(contrast, ['works', 'fails', 'none'], 'a')[2]).toBe(
      contrastOdds(contrast, ['works', 'fails', 'none'], 'b')[2],
    );
  });

  it('of the hand controller clears supply, mount and controller, and charges what the computer alone uses', () => {
    const before = [said('how-far', 'no-connect')];
    const after = [...before, said('works-with-handset', 'finds')];
    for (const link of ['mount', 'handset', 'supply']) expect(shareOf(after, link)).toBeLessThan(shareOf(before, link));
    expect(shareOf(after, 'lead')).toBeGreaterThan(shareOf(before, 'lead'));
  });

  it('of another computer, and the hand controller with it, leave this computer', () => {
    const events = [
      said('how-far', 'no-connect'),
      said('works-with-handset', 'moves'),
      said('other-computer', 'works'),
      said('other-program', 'fails'),
    ];
    const links = located(
      assess(model, {
        ...startWalk({ member: 'Tamsin', helper: null }, SERIAL),
        events: [...startWalk({ member: null, helper: null }, SERIAL).events, ...events],
      }),
    );
    expect(['system', 'computer-usb', 'settings', 'program']).toContain(links[0]?.link);
    expect(links.find(({ link }) => link === 'lead')?.probability ?? 1).toBeLessThan(0.1);
  });
});

describe('what no list holds', () => {
  it('has a place in every link of the path, and is brought down to one by contrasts alone', () => {
    const situation = situationFor(model, SERIAL);
    expect(situation.unknownLinks).toEqual(model.path('controller-serial')?.links);
    const belief = beliefFrom(
      situation,
      gatherEvidence(situation, [
        said('works-with-handset', 'finds'),
        said('other-computer', 'fails'),
        said('other-adapter', 'same'),
        said('other-usb-socket', 'same'),
      ]),
    );
    const unknown = situation.unknownLinks
      .map((link, i) => ({ link, p: belief.probabilities[situation.unexplained + i] ?? 0 }))
      .sort((a, b) => b.p - a.p);
    expect(unknown[0]?.link).toBe('lead');
  });
});
