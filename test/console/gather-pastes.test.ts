import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { asksAlone } from '../../bot/platforms/console/asks-alone.js';
import { gatherPastes, type LineKind } from '../../bot/platforms/console/gather-pastes.js';

const kindOf = (line: string): LineKind => {
  if (/^(?:\d|up )/u.test(line)) return 'own';
  if (asksAlone(line)) return 'asks';
  return line.startsWith('triage') ? 'opens' : 'words';
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const said = (lines: readonly string[], isTerminal: boolean, pauseMs = 0): readonly string[] => {
  const texts: string[] = [];
  const pastes = gatherPastes({ say: (text) => texts.push(text), kindOf, isTerminal });
  for (const line of lines) {
    pastes.push(line);
    vi.advanceTimersByTime(pauseMs);
  }
  pastes.flush();
  return texts;
};

describe('what is pasted into the console', () => {
  it('is one text, empty lines included, after a command or alone', () => {
    expect(said(['usb 1-1: attached', '', 'usb 1-1: gone'], true)).toEqual(['usb 1-1: attached\n\nusb 1-1: gone']);
    expect(said(['triage it says', 'Permission denied'], true)).toEqual(['triage it says\nPermission denied']);
  });
  it('is several when a person typed line after line', () => {
    expect(said(['it drops', 'after minutes'], true, 300)).toEqual(['it drops', 'after minutes']);
  });
  it('leaves commands and numbers as they are, from a pipe as well', () => {
    expect(said(['up M 13', '2', 'triage', '1', 'lost', 'again'], false)).toEqual([
      'up M 13',
      '2',
      'triage',
      '1',
      'lost\nagain',
    ]);
    expect(said(['some words', '3', 'up M 13'], true)).toEqual(['some words', '3', 'up M 13']);
  });
  it('leaves each short question from a pipe by itself, and a log together', () => {
    expect(said(['is jupitr up', 'and saturn?', 'what about the moon'], false)).toEqual([
      'is jupitr up',
      'and saturn?',
      'what about the moon',
    ]);
    const log = [
      'usb 1-1: new full-speed device',
      'usb 1-1: device descriptor read/64, error -71',
      'hub 1-0: unable to enumerate',
    ];
    expect(said([...log, 'why?'], false)).toEqual([log.join('\n'), 'why?']);
    expect(said(['my mount drops', 'is it the cable?'], true)).toEqual(['my mount drops\nis it the cable?']);
  });
});

describe('a line that asks by itself', () => {
  it.each(['is jupitr up', 'and saturn?', "what's up tonight", 'remind me at 9', 'tonight', 'yes', 'where is M31 now'])(
    '“%s” does',
    (line) => expect(asksAlone(line)).toBe(true),
  );
  it.each([
    'lost',
    'usb 1-1: device not accepting address 5, error -71',
    'Is the device plugged in? [Errno 2]',
    'the mount drops after ten minutes',
    '  who  pid  port',
    'Permission denied',
  ])('“%s” may be a piece of a paste', (line) => expect(asksAlone(line)).toBe(false));
});
