/** Words that answer another question than the one in hand, and what is taken back of the way to the mount. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

let members = 0;

const told = async (opening: string, question: string, words: string) => {
  members += 1;
  const who = member(`Alaric${members}`);
  const isThere = (reply: Parameters<typeof stepOf>[0]): boolean => stepOf(reply).id === question;
  const began = await goOn(who, await answer(deps, `triage ${opening}`, NOW, who), isThere, 30);
  expect(stepOf(began).id).toBe(question);
  return answer(deps, `triage walk:${idOf(began)} text:"${words}"`, NOW, who);
};

const LEAD = 'lead from the laptop to the hand controller over an adapter, windows, the mount never replies';
const OWN = 'the bridge on the mount makes its own network, windows, the program times out';

describe('an answer to another question', () => {
  it.each([
    [LEAD, 'changed-last', 'oh hold on, it sits in the guide port on the mount', 'socket for a guider'],
    [LEAD, 'adapter-light', 'by the by, st4 is printed beside that socket', 'guider, accessory'],
    [OWN, 'ping', 'there is only a single bar of signal out here', 'a weak wireless signal'],
    [OWN, 'ping', 'i see now that the laptop sits on our house network, not on that of the mount', 'another network'],
  ])('is taken, and mirrored: %s, %s, “%s”', async (opening, question, words, label) => {
    const reply = await told(opening, question, words);
    expect(reply.notes.join(' ').toLowerCase()).toContain(label);
  });

  it.each([
    [LEAD, 'changed-last', 'my neighbour keeps bees and sells honey'],
    [OWN, 'ping', 'it has been a very long day for all of us'],
  ])('is not made of other talk: %s, %s, “%s”', async (opening, question, words) => {
    const reply = await told(opening, question, words);
    expect(reply.notes.join(' ')).not.toContain('I take it');
    expect(stepOf(reply).id).toBe(question);
  });
});

describe('the way to the mount', () => {
  it.each([
    [LEAD, 'changed-last', 'i was wrong, it is a bluetooth module', 'bluetooth'],
    [LEAD, 'changed-last', 'sorry, i got that wrong, we have the bridge on the house network', 'house network'],
    [OWN, 'ping', 'wait no, the mount has its own usb socket and i use that', 'usb'],
  ])('is taken back in words: %s, %s, “%s”', async (opening, question, words, way) => {
    const reply = await told(opening, question, words);
    expect(reply.notes.join(' ').toLowerCase()).toContain(way);
    expect(stepOf(reply).id).not.toBe(question);
  });
});
