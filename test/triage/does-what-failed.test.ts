/** A remedy's cure told by the thing that failed: in walks on what failed there, and told of another. Ours. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const LIMIT =
  'windows, usb adapter at the hand controller, connects fine. gotos of low targets are refused, it beeps and says below the horizon limit, about 24 degrees up';
const EPOCH =
  'windows, adapter at handset, connected. gotos land 20 arcmin off, the same everywhere. driver is set to J2000';
const PORT = "Windows, usb adapter on the hand controller. could not open port 'COM3', Device Manager lists COM8";
const TRACKING = 'mount does not track, star drifts out of view in a minute. hand controller alone, goto is fine';

const atRemedy = async (opening: string, text: string) => {
  const who = member(`Wystan ${opening.slice(0, 9)} ${text}`);
  const card = await answer(deps, `triage ${opening}`, NOW, who);
  expect(stepOf(card).kind).toBe('try');
  return { card, next: await answer(deps, `triage ${text}`, NOW, who) };
};

describe('what failed is done now', () => {
  it.each([
    [LIMIT, 'lowered it to 15, rail is still clear. Orion nebula goes there now, no beep!'],
    [LIMIT, 'changed 30 to 5, Sirius taken straight off'],
    [EPOCH, "Changed it to 'of date', reconnected, and Regulus lands dead centre in the camera frame."],
    [EPOCH, 'Regulus lands dead centre twice in a row'],
    [PORT, 'hey it takes gotos from the laptop'],
    [TRACKING, 'Vega still in the middle after a cup of tea'],
  ])('%s: “%s”', async (opening, text) => {
    const { card, next } = await atRemedy(opening, text);
    expect(stepOf(next)).toMatchObject({ kind: 'done', id: stepOf(card).id });
  });
});

describe('something else is done, as it was before', () => {
  it.each([
    [EPOCH, 'it connects now'],
    [EPOCH, 'set to of date now'],
    [LIMIT, 'A target at 45 is accepted, as it always was'],
    [PORT, 'there is COM8 in the list, working properly'],
    [PORT, 'my other laptop connects straight away'],
    [TRACKING, 'tracking says on'],
    [TRACKING, 'it goes to Vega'],
  ])('%s: “%s” is no cure', async (opening, text) => {
    const { next } = await atRemedy(opening, text);
    expect(stepOf(next).kind).not.toBe('done');
  });
});
