/**
 * Which of Bluetooth's two ports a member's program uses, as listed in other languages' systems. How Windows words the two directions in each
 * language: from memory. The sentences are our own.
 */
import { describe, expect, it } from 'vitest';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const toldBy = (...texts: readonly string[]): readonly string[] => {
  let state = startWalk({ member: 'Ragna', helper: null });
  for (const text of texts) state = tellText(model, state, text, 'member').state;
  const last = state.events.at(-1);
  return last?.kind === 'text' ? last.facts.map(({ what, answer }) => `${what}.${answer}`) : [];
};

describe("Bluetooth's two ports", () => {
  it.each([
    ['windows shows two bluetooth ports, com4 incoming and com5 outgoing, i picked com4', 'incoming'],
    ['puertos com3 entrante y com4 saliente, use el com3', 'incoming'],
    ['es gibt COM5 eingehend und COM6 ausgehend, im Programm steht COM6', 'outgoing'],
    ['eingehend: COM5, ausgehend: COM6, Programm auf COM5', 'incoming'],
    ["port entrant COM3, sortant COM4, j'ai pris COM4", 'outgoing'],
    ['i chose the outgoing one', 'outgoing'],
  ])('%s', (text, direction) => {
    expect(toldBy(text)).toContain(`bt-port.${direction}`);
  });

  it('are known from what was said before', () => {
    expect(toldBy('bluetooth, com7 is incoming, com8 is outgoing', 'the program is set to com7')).toContain(
      'bt-port.incoming',
    );
  });

  it.each(['com4 incoming and com5 outgoing, which one do i use?', 'i did not pick the incoming one', 'i picked com4'])(
    'nothing is told by “%s”',
    (text) => {
      expect(toldBy(text).filter((fact) => fact.startsWith('bt-port'))).toEqual([]);
    },
  );
});
