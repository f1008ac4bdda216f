/** Members who write their own language are read in the commonest wordings. The sentences are from memory, as the wordings are. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldBy = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('plain talk in other languages', () => {
  it.each([
    [
      'Mein Laptop mit Windows 11 erkennt die Montierung über USB nicht',
      ['system.windows', 'path.usb-cable', 'how-far.not-seen'],
    ],
    ['La monture ne répond plus depuis hier soir', ['message.no-reply']],
    ['Por wifi se conecta pero se desconecta a los pocos minutos', ['path.network', 'how-far.drops']],
    ['via bluetooth non si connette alla montatura', ['path.bluetooth', 'how-far.no-connect']],
    ['Hij is verbonden maar de telescoop beweegt niet', ['how-far.no-move']],
    ['Montaż się nie włącza, nie świeci żadna dioda', ['how-far.no-light', 'power-light.off']],
    ['O goto aponta sempre para o lado do alvo', ['how-far.elsewhere']],
  ])('“%s”', (text, told) => {
    expect(toldBy(text)).toEqual(expect.arrayContaining(told));
  });

  it.each([
    'Bei einem Freund antwortet die Montierung nicht, bei mir geht alles',
    'Merci à tous, la monture répond maintenant',
    '¿Qué cable necesito para la montura?',
    'De montering werkt goed, bedankt allemaal.',
    'Dove trovo il manuale della montatura?',
  ])('“%s” tells of no trouble', (text) => {
    expect(toldBy(text)).toEqual([]);
  });
});

describe('what is told late in a long story', () => {
  it('is read as it would be in a short one', () => {
    const trouble = 'It drops after ten minutes. I have tried another cable.';
    expect(toldBy(`${'We had soup, and then a walk along the lake. '.repeat(40)}${trouble}`)).toEqual(
      expect.arrayContaining(['how-far.drops', 'when-drops.minutes', 'tried-already.cable']),
    );
  });
});
