/** Part of an option typed as it stands there is that option. The options are those that ship; the lines are ours. */
import { describe, expect, it } from 'vitest';
import { labelHalf } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const halfOf = (check: string, text: string): string | null =>
  labelHalf(text, model.check(check)?.answers ?? [])?.id ?? null;

describe('part of an option', () => {
  it.each([
    ['feet', 'a leg slipped', 'moved'],
    ['masters', 'just this one', 'one'],
    ['how-far', 'guiding goes wrong', 'guiding'],
    ['zone-entries', 'they match', 'match'],
    ['cable-length', 'under 5 m usb', 'short'],
    ['router-list', 'its listed under guests', 'guests'],
    ['game-stick', 'there is one', 'there'],
    ['refused-where', 'near the zenith', 'high'],
  ])('%s: “%s” is %s', (check, text, answer) => expect(halfOf(check, text)).toBe(answer));

  it.each([
    // What was left out turns it round.
    ['router-list', 'in the list'],
    ['mac-approval', 'waits there'],
    // Of two options alike, or of none.
    ['cable-length', 'more than'],
    ['bt-listed', 'listed and'],
    ['feet', 'is it a leg that slipped?'],
    ['game-stick', 'yes'],
    ['when-drops', ''],
  ])('%s: “%s” is none', (check, text) => expect(halfOf(check, text)).toBeNull());

  it('each piece of every option between commas and “or” is that option, unless another has the same words', () => {
    const lost = model.checks.flatMap(({ id, answers }) =>
      answers.flatMap((answer) =>
        answer.label
          .split(/,? or |[,;:]/u)
          .map((piece) => piece.trim())
          .filter((piece) => /[a-z]{3}/iu.test(piece) && !/^(?:yes|no)$/iu.test(piece))
          .filter(
            (piece) =>
              !answers.some(
                (other) => other.id !== answer.id && other.label.toLowerCase().includes(piece.toLowerCase()),
              ),
          )
          .filter((piece) => labelHalf(piece, answers)?.id !== answer.id)
          .map((piece) => `${id}: ${piece}`),
      ),
    );
    expect(lost).toEqual([]);
  });
});
