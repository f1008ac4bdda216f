/** The 5 V question alarms those without such a lead: it comes only where a lead to the motor board was said. */
import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { stepCautions } from '../../bot/commands/triage/step-cautions.js';
import { readText } from '../../bot/reading/index.js';
import { answerStep, assess, startWalk, tellText, UNSURE, type WalkState } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const MODEL = shippedModel();
const STEPS = 8;

const told = (words: string): WalkState =>
  tellText(MODEL, startWalk({ member: 'Odalys', helper: null }), words, 'member').state;

/** The steps of a member who cannot say anything. */
const asked = (words: string): string[] => {
  let state = told(words);
  const ids: string[] = [];
  while (ids.length < STEPS) {
    const { step } = assess(MODEL, state);
    ids.push(step.id);
    if (step.kind !== 'ask') break;
    const next = answerStep(MODEL, state, step.id, UNSURE, 'member');
    if (isProblem(next)) throw new Error(next.problem);
    state = next;
  }
  return ids;
};

// Openings as members write them; invented.
const OTHERS = [
  'my mount wont connect',
  'It worked last week, tonight the laptop says no',
  'No COM port after the Windows update',
  'port opens but there is no reply from the mount',
  'adapter at the handset, no answer',
  'usb adapter plugged in the hand controller, nothing replies',
  'I have a USB to serial lead and it says timeout',
  'Mac, adapter light blinks once then nothing',
  'ttyUSB0 permission denied',
  'the usb cable from the laptop does nothing',
  'new router at home and the mount is not found any more',
  'connects by address, only search finds nothing',
  'the wifi of the mount shows up, but the program cannot find it',
  'Bluetooth pairs and then drops',
  'Connection drops every time the camera starts',
  'device descriptor read error',
  'The program says it is connected, but the mount does not move',
  'nothing lights up when I switch on',
  'help, star party in an hour, no connection',
  'I get garbage characters in the log',
  'error: could not open port COM7: access denied',
  'my new cable does not work, the old one did',
  'usb socket in the mount, computer makes no sound',
  'after the firmware update the handset will not answer the pc',
  'cannot connect, a friend says it is the driver',
];
const BOARD = [
  'made my own cable straight to the motor board, no answer',
  'direct cable into the mounts board, timeout',
  'cable into the mount board instead of the handset, no reply',
];

describe('the question after the level of the lead', () => {
  it.each(OTHERS)('is not asked: %s', (words) => {
    expect(asked(words)).not.toContain('lead-level');
  });
  it.each(BOARD)('is asked first of all: %s', (words) => {
    expect(assess(MODEL, told(words)).step.id).toBe('lead-level');
  });
});

// Openings as members write them, all with a lead straight to the motor board; invented.
const PROVED = [
  'cable to the motor board, the same cable as last week, no answer',
  'been using this very lead to the motor board for two years, tonight timeout',
  'direct cable into the mounts board. worked yesterday with the very same lead. no reply',
];
const IN_THE_COMPUTER = [
  'Ubuntu, cable straight to the motor board, permission denied on /dev/ttyUSB0',
  'cable to the motor board, windows: access to the port COM5 is denied',
];
const NEW = [
  'Ubuntu, new cable straight to the motor board, permission denied on /dev/ttyUSB0',
  'first time with this cable to the motor board, same cable as my friend has. access to COM5 is denied',
  'cable straight to the motor board, it has never worked, permission denied on /dev/ttyUSB0',
  'probably the same cable to the motor board as always, no answer',
  'same kind of cable to the motor board as before, no answer',
  // Beside such a lead, a new cable is that one, wherever it is named.
  'cable to the motor board, new cable, permission denied on /dev/ttyUSB0',
  'direct cable into the mounts board. cable is brand new. access to COM5 is denied',
  'got a new lead for the motor board, windows, access denied on COM5',
  'new lead, plugged where the handset goes, permission denied on ttyUSB0',
  'motor board lead, swapped the cable, permission denied on /dev/ttyUSB0',
];

describe('a lead to the motor board', () => {
  it.each(PROVED)('that has long worked is not asked for its level: %s', (words) => {
    expect(asked(words)).not.toContain('lead-level');
    expect(asked(words)).not.toContain('lead-at-rest');
  });
  it.each(IN_THE_COMPUTER)('is left alone while the error names what the computer forbids: %s', (words) => {
    const { step, situation } = assess(MODEL, told(words));
    const entry = MODEL.fault(step.id) ?? MODEL.check(step.id);
    expect(entry !== undefined && situation.isInComputer(entry)).toBe(true);
  });
  it.each(NEW)('that is new, or not surely the old one, is asked for its level first: %s', (words) => {
    expect(assess(MODEL, told(words)).step.id).toBe('lead-level');
  });
  it('that shows RS-232 levels is stopped, however long it was in use', () => {
    const state = answerStep(MODEL, told(PROVED[0] ?? ''), 'lead-level', 'rs232', 'member');
    if (isProblem(state)) throw new Error(state.problem);
    expect(assess(MODEL, state).step).toMatchObject({ kind: 'try', id: 'rs232-on-logic-port' });
  });
});

const levelOf = (words: string): string | undefined =>
  readText(MODEL.reading, words).facts.find(({ what }) => what === 'lead-level')?.answer;

describe('the level that a message tells', () => {
  it.each([
    ['usb ttl 3.3v module wired to the motor port', 'low'],
    ['the lead to the motor board says 3v3', 'low'],
    ['ttl 5v lead straight to the motor board', 'logic'],
    ['rs232 cable to the motor board', 'rs232'],
    ['serial cable with db9 at the pc straight into the motor board', 'rs232'],
  ])('%s: %s', (words, level) => expect(levelOf(words)).toBe(level));

  it.each([
    // What a computer calls the chip is the same in a lead of any level.
    'it shows up as usb to uart bridge on COM5, direct lead to the mount board, no answer',
    'dmesg says uart converter now attached, lead goes straight into the motor board',
    'cable to the motor board, jumper for 3.3 or 5 V, no reply',
    'firmware 3.3, cable to the motor board, no reply',
  ])('is none of: %s', (words) => expect(levelOf(words)).toBeUndefined());
});

describe('the warning of signal levels', () => {
  const LEVELS = /^Signal levels|RS-232 swings/u;
  /** Whether it stands on the card of a remedy, the first time it is shown. */
  const warned = (state: WalkState, faultId: string): boolean => {
    const fault = MODEL.fault(faultId);
    if (fault === undefined) throw new Error(faultId);
    const step = { kind: 'try', id: faultId, fault, otherwise: false } as const;
    return stepCautions([], { ...assess(MODEL, state), step }).some((line) => LEVELS.test(line));
  };
  const untold = (words: string): WalkState => {
    const state = answerStep(MODEL, told(words), 'path', UNSURE, 'member');
    if (isProblem(state)) throw new Error(state.problem);
    return state;
  };

  it('stands before something is plugged in, where it may be a lead to the motor board', () => {
    expect(warned(untold('my new cable does not work'), 'wrong-socket')).toBe(true);
    expect(warned(untold('my new cable does not work'), 'worn-socket')).toBe(true);
  });
  it('stands nowhere else', () => {
    expect(warned(untold('my new cable does not work'), 'port-held-by-program')).toBe(false);
    expect(warned(untold('my new cable does not work'), 'fuse-blown')).toBe(false);
    // The mount is off for its home, for the cell of its clock; a charging cable fits no motor board.
    for (const fault of ['not-started-at-home', 'mount-clock-lost', 'charge-only-cable'])
      expect(warned(untold('my new cable does not work'), fault), fault).toBe(false);
    expect(warned(told('Bluetooth pairs and then drops'), 'controller-lead-loose')).toBe(false);
    expect(warned(told('the usb adapter is plugged in the hand controller'), 'worn-socket')).toBe(false);
  });
});

describe('the path', () => {
  it.each([
    'adapter at the handset, no answer',
    'the usb adapter is plugged in the hand controller',
    'It is plugged in the hand controller, with an adapter',
  ])('is the hand controller by its serial socket: %s', (words) => {
    expect(assess(MODEL, told(words)).context.path).toBe('controller-serial');
  });
  it('is what two sayings leave together', () => {
    const first = tellText(MODEL, told('I use a usb adapter'), 'plugged in the hand controller', 'member').state;
    expect(assess(MODEL, first).context.path).toBe('controller-serial');
  });
});
