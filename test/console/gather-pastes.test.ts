import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { gatherPastes, type LineKind } from '../../bot/platforms/console/gather-pastes.js';

const kindOf = (line: string): LineKind => {
  if (/^(?:\d|up )/u.test(line)) return 'own';
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
});
