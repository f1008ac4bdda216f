/** What lies beyond the point where the signal stops is not asked about. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { rankSteps } from '../../bot/triage/engine/choose-step.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import type { WalkEvent } from '../../bot/triage/index.js';
import { deps } from './console-walk.js';

const model = deps.triage();
const answered = (check: string, answer: string): WalkEvent => ({ kind: 'answer', check, answer, by: 'member' });

/** The checks that are thought of in a context once these answers stand. */
const askedAfter = (path: string, events: readonly WalkEvent[]): readonly string[] => {
  const situation = situationFor(model, { path, system: 'windows', client: 'direct' });
  const evidence = gatherEvidence(situation, events);
  return rankSteps(situation, evidence, beliefFrom(situation, evidence)).flatMap((choice) =>
    choice.kind === 'ask' && !choice.again ? [situation.checks[choice.check]?.entry.id ?? ''] : [],
  );
};

describe('a signal that stops', () => {
  it('leaves out the mount and the settings behind a network that does not answer', () => {
    const beyond = ['how-far', 'controller-screen', 'settings-screen', 'mount-type', 'park-state', 'patience'];
    const passed = [answered('ping', 'answers'), answered('socket-opens', 'opens'), answered('message', 'no-reply')];
    for (const id of beyond.slice(1, 3)) expect(askedAfter('bridge-house-network', passed)).toContain(id);
    const after = askedAfter('bridge-house-network', [answered('ping', 'silent')]);
    for (const id of beyond) expect(after).not.toContain(id);
    expect(after).toContain('router-list');
  });

  it('looks whether a network stands before it looks at the settings and the mount behind it', () => {
    const behind = ['controller-screen', 'settings-screen', 'arrow-keys', 'mount-type', 'bridge-speed'];
    for (const path of ['bridge-own-network', 'bridge-house-network']) {
      const before = askedAfter(path, [answered('how-far', 'no-connect')]);
      expect(before).toContain('ping');
      for (const id of behind) expect(before).not.toContain(id);
      const looked = [
        answered('how-far', 'no-connect'),
        answered('ping', 'answers'),
        answered('socket-opens', 'opens'),
      ];
      expect(askedAfter(path, looked)).toContain('controller-screen');
      // A mount that connects and stands still has its network.
      expect(askedAfter(path, [answered('how-far', 'no-move')])).toContain('park-state');
    }
    expect(askedAfter('bridge-own-network', [])).toContain('how-far');
  });

  it('does not ask for the light of an adapter whose port will not open, nor how far it gets', () => {
    expect(askedAfter('controller-serial', [])).toContain('adapter-light');
    const after = askedAfter('controller-serial', [answered('message', 'denied')]);
    expect(after).not.toContain('adapter-light');
    expect(after).not.toContain('how-far');
    expect(after).toContain('port-holder');
    expect(askedAfter('controller-serial', [answered('message', 'no-reply')])).not.toContain('how-far');
  });

  it('asks on behind it once all else says that the answer was wrong', () => {
    const refuted = [
      answered('ping', 'silent'),
      answered('socket-opens', 'opens'),
      answered('message', 'odd-reply'),
      answered('works-with-phone', 'works'),
    ];
    expect(askedAfter('bridge-house-network', refuted)).toContain('controller-screen');
  });
});
