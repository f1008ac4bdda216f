/**
 * What lets volts, plus and minus, levels or pins be put to use is taken from plain words to its own question alone. The sentences are
 * ours, in the voices of members at night (invented; no source).
 */
import { describe, expect, it } from 'vitest';
import { answerMeant, readText, supplyFigures } from '../../bot/reading/index.js';
import { wantsPlainWords } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

const meantOf = (check: string, text: string): string | null => {
  const { answers = [], good } = model.check(check) ?? {};
  const meant = answerMeant(model.reading, text, { id: check, answers, good, guards: true });
  return meant?.isSure === true ? meant.id : null;
};

describe('a look that keeps gear from the wrong volts or pins', () => {
  it.each(['supply-amps', 'plug-polarity', 'wire-order', 'lead-level', 'nine-pins', 'pin-order'])('%s is one', (id) => {
    const check = model.check(id);
    expect(check !== undefined && wantsPlainWords(check)).toBe(true);
  });

  it.each([
    ['supply-amps', 'yes 12v mount'],
    ['supply-amps', 'yes its a 12v mount, its dark now'],
    ['supply-amps', 'its 19v, plenty'],
    ['supply-amps', 'should be enough amps'],
    ['plug-polarity', 'same plug fits anyway'],
    ['plug-polarity', 'it came with the mount so they match'],
    ['lead-level', 'its usb so 5v'],
    ['wire-order', 'i think as the drawing says'],
  ])('%s is not cleared by “%s”', (check, text) => {
    expect(meantOf(check, text)).not.toBe(model.check(check)?.good);
  });

  it.each([
    ['supply-amps', 'same volts, enough amps'],
    ['supply-amps', 'yes'],
    ['plug-polarity', 'they match'],
    ['plug-polarity', 'both centre positive'],
    ['lead-level', 'it says ttl on the packet'],
    ['wire-order', 'same as the drawing'],
  ])('%s is cleared by “%s”', (check, text) => {
    expect(meantOf(check, text)).toBe(model.check(check)?.good);
  });

  it.each(['my power supply is fine', 'the psu is strong enough', 'i use a bench supply'])(
    'nothing is told of the label by “%s”',
    (text) => {
      expect(readText(model.reading, text).facts.some(({ what }) => what === 'supply-amps')).toBe(false);
    },
  );
});

describe('figures of the supply beside those of the mount', () => {
  it.each([
    ['label says 12V 5A and the mount wants 12v 3A', 'enough'],
    ['supply 12v 6 amp, mount asks 12v 4 amp, so plenty', 'enough'],
    ['brick: 12 V 1.5 A. manual asks for 12 V, 2 A', 'too-few'],
    ['psu 12v 800ma but the mount needs 12v 2a', 'too-few'],
    ['the charger gives 19 V, the mount wants 12 V', 'other-volts'],
    ['supply 13.8v 10a, mount wants 12 to 15v, 12v 3a', 'enough'],
    ['yes its a 12v mount', null],
    ['12v 5a', null],
  ])('“%s”', (text, answer) => {
    expect(supplyFigures(text)).toBe(answer);
  });
});
