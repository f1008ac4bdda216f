/** What a member says at one question of another look is taken for that one; a comparison is none with the computer at hand. Ours. */
import { describe, expect, it } from 'vitest';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const NAMES = { member: 'Aldwyn', helper: null };
const factsOf = (text: string, before?: string): readonly string[] => {
  const state = startWalk(NAMES);
  const told = before === undefined ? state : tellText(model, state, before, 'member').state;
  return tellText(model, told, text, 'member').read.facts.map(({ what, answer }) => `${what}.${answer}`);
};

describe('told of another look', () => {
  it.each([
    ['Use saved time? 1 yes 2 no is on the screen', 'controller-screen.question'],
    ['Ping answers with no loss', 'ping.answers'],
    ['no loss on the ping', 'ping.answers'],
    ['baud rate is 9600 in the program and 9600 in the handset', 'port-settings.match'],
    ['COM5 is in the list and the program has COM5', 'port-match.same'],
    ['half of the pings are lost', 'ping.patchy'],
  ])('“%s”: %s', (text, fact) => {
    expect(factsOf(text)).toContain(fact);
  });
});

describe('another system that works', () => {
  const LINUX = 'linux, usb adapter on the hand controller. the program gets no reply';

  it.each([
    ['on windows same cable and handset works fine'],
    ['on windows the same cable works'],
    ['same laptop booted in windows connects at once'],
    ['on windows it connects'],
  ])('“%s” is not the one at hand', (text) => {
    expect(factsOf(text, LINUX).filter((fact) => fact.startsWith('system.'))).toEqual([]);
  });

  it.each([
    ['sorry, it is windows', LINUX],
    ['windows, same cable as always, connects fine but goto is off', undefined],
    ['my windows laptop connects with the same cable, then drops', undefined],
  ])('“%s” is', (text, before) => {
    expect(factsOf(text, before)).toContain('system.windows');
  });
});
