/** Lines that were once read as the contrary of what they say. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import { answerMeant, readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

const meantAt = (id: string, text: string): string | null => {
  const check = model.check(id);
  if (check === undefined) throw new Error(`no check ${id}`);
  const meant = answerMeant(model.reading, text, { id, answers: check.answers, good: check.good });
  return meant?.isSure === true ? meant.id : null;
};

describe('an answer to the question in hand', () => {
  it.each([
    ['kernel-log', 'lsusb shows the chip', 'no-tty'],
    ['inside-another', 'it runs not inside another system', 'ordinary'],
    ['inside-another', 'yes, in a container', 'inside'],
    ['privilege', 'The guider says Yes, the planetarium says No.', 'mixed'],
    ['privilege', 'all say no', 'alike'],
  ])('at %s, “%s” is %s', (check, words, answer) => {
    expect(meantAt(check, words)).toBe(answer);
  });
});

describe('what is read anywhere', () => {
  const answersIn = (text: string): readonly string[] => {
    const { facts, perhaps } = readText(model.reading, text);
    return [...facts, ...perhaps].map(({ what, answer }) => `${what}.${answer}`);
  };

  it.each([
    ['Restart done before, as said', 'update-ended.well'],
    ['no port COM in the list', 'bt-port.none'],
    ['motor is humming all the time i can hear it', 'gear-sound.silent'],
    ['it drops five seconds after connecting', 'when-drops.minutes'],
    ['it disconnects after ten seconds', 'when-drops.minutes'],
  ])('“%s” tells nothing of %s', (words, contrary) => {
    expect(answersIn(words)).not.toContain(contrary);
  });
});
