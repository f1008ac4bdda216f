/** The port that is asked for in vain beside the one that is there. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk, tellText, type Assessment, type WalkState } from '../../bot/triage/index.js';
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
    ['when i hit connect it says cant open com4', 'yes i see it in the device thing, com6'],
    ["the program's settings say COM1", 'it lists COM1 Communications Port and COM7 USB Serial Port'],
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

  const matchIn = (...texts: readonly string[]): string | undefined =>
    texts.reduce<{ state: WalkState; last: string | undefined }>(
      ({ state, last }, text) => {
        const { state: next, read } = tellText(model, state, text, 'member');
        return { state: next, last: read.facts.find(({ what }) => what === 'port-match')?.answer ?? last };
      },
      { state: startWalk({ member: 'Wystan', helper: null }), last: undefined },
    ).last;

  it.each([
    [['its COM5 in both'], 'same'],
    [['both say com5'], 'same'],
    [['com5 n com5 i said'], 'same'],
    [['yes the same, com7 both times'], 'same'],
    [['Device Manager shows COM5', 'its com5 in the program too'], 'same'],
    [['there is only COM4 in the list', 'i chose COM4'], 'same'],
    [["could not open port 'COM3'", 'Device Manager lists COM8', 'chose COM8, now it times out'], 'same'],
    [['the program has COM3', 'the system has COM7'], 'another'],
    [['program is set to COM3, windows shows COM9'], 'another'],
    [['the program uses ttyUSB0', 'now attached to ttyUSB1'], 'another'],
    [['should i set it to COM5?', 'Device Manager shows COM4'], undefined],
    [['the program lists COM3 and COM4'], 'several'],
    [['COM3 denied', 'Device Manager shows (COM3)'], undefined],
    [['the focuser has COM8'], undefined],
    // The system's own log names a port twice (Linux, messages of its usb-serial drivers).
    [['[ 813.3] usb-serial ttyUSB0: serial converter now disconnected from ttyUSB0'], undefined],
    [['usb 1-2: serial converter now attached to ttyUSB0, ttyUSB0 disconnected from ttyUSB0'], undefined],
  ])('is told from the mount’s own: %j is %s', (texts, answer) => {
    expect(matchIn(...texts)).toBe(answer);
  });

  it.each([
    'focuser first and the mount is ttyUSB1, mount first and it is ttyUSB0, and the profile of the driver says ttyUSB0',
    'the list has both /dev/tty.usbserial-31 and /dev/cu.usbserial-31, which one do I take',
    'the store program lists no port, the one I built on the same machine finds /dev/ttyACM0',
  ])('is not called the same where it only is named: %s', (text) => {
    expect(matchIn(text)).not.toBe('same');
  });
});
