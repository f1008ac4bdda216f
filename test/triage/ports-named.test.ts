/** The port that is asked for in vain beside the one that is there. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk, tellText, type Assessment } from '../../bot/triage/index.js';
import { deps } from './console-walk.js';

const model = deps.triage();
const told = (...texts: readonly string[]): Assessment => {
  const start = startWalk({ member: 'Wystan', helper: null }, { path: 'controller-serial', client: 'direct' });
  return assess(
    model,
    texts.reduce((state, text) => tellText(model, state, text, 'member').state, start),
  );
};
const moved = ({ situation, belief }: Assessment): number =>
  belief.probabilities[situation.faultIndex.get('port-number-moved') ?? -1] ?? 0;

describe('a port asked for that is not the one shown', () => {
  it.each([
    ['the port COM3 does not exist', 'it says its working properly. usb serial port (COM8)'],
    ["could not open port 'COM3'", 'Device Manager lists COM8'],
    [
      '[Errno 2] could not open port /dev/ttyUSB0: No such file or directory',
      'usb 1-2: converter now attached to ttyUSB1',
    ],
    ['cannot open /dev/cu.usbserial-1420', 'ls shows /dev/cu.usbserial-2420'],
  ])('is the cause at once: %s / %s', (wanted, shown) => {
    const then = told(wanted, shown);
    expect(moved(then)).toBeGreaterThan(0.6);
    expect(then.step).toMatchObject({ kind: 'try', id: 'port-number-moved' });
    expect(told(shown, wanted).step).toMatchObject({ kind: 'try', id: 'port-number-moved' });
  });

  it.each([
    ["could not open port 'COM3': access denied", 'usb serial port (COM3)'],
    ['the port COM3 does not exist', 'usb serial port (COM3)'],
    ['could not open /dev/cu.usbserial-1420', 'ls shows /dev/cu.Bluetooth-Incoming-Port'],
    ['access to COM3 is denied', 'the focuser is on COM8, there is (COM8) too'],
  ])('is not seen in %s / %s', (first, second) => {
    const { situation, evidence } = told(first, second);
    const seen = evidence.observations.map(({ check, answer }) => {
      const numbers = situation.checks[check];
      return `${numbers?.entry.id} ${numbers?.answers[answer]}`;
    });
    expect(seen).not.toContain('port-match another');
  });
});
