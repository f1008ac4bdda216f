/** A line that names a system's own tool, path or window is shown on that system alone. */
import { describe, expect, it } from 'vitest';
import { forPhone, linesFor } from '../../bot/commands/triage/walk-words.js';
import { SYSTEMS, type System } from '../../bot/triage/model/schema.js';
import { startWalk, type WalkState } from '../../bot/triage/index.js';
import { shipped } from './shipped-model.js';

// Names of the systems' own tools, from their documentation (systemd, iproute2, BlueZ, kernel device names; Microsoft Learn; Apple Support).
const MARKS: Readonly<Record<System, RegExp>> = {
  linux:
    /\/dev\/(?:tty[A-Z]|serial|rfcomm)|\b(?:dmesg|lsusb|lsmod|dialout|systemctl|udev|nmcli|rfkill|bluetoothctl|ufw|timedatectl|modprobe|journalctl|fuser|Linux)\b/u,
  windows:
    /\b(?:Device Manager|Control Panel|Task Manager|Windows|COM Port|COM\d+|ipconfig|regedit|Disk Management)\b/u,
  macos: /\b(?:System Settings|caffeinate|Activity Monitor|System Information|macOS|Mac|Finder|lsof)\b|\/dev\/cu/u,
  phone: /\b(?:Settings, Apps|iPhone|iPad|Android|app store)\b/iu,
};

/** Two systems on one machine: the other's tools are meant. */
const OF_TWO_SYSTEMS = /\bLinux subsystem\b|\bin the other system\b/u;

const shownOn = (system: System, all: readonly string[]): readonly string[] =>
  all.flatMap((line) =>
    SYSTEMS.filter(
      (other) => !OF_TWO_SYSTEMS.test(line) && other !== system && MARKS[other].test(line) && !MARKS[system].test(line),
    ).map((other) => `${system} is shown ${other}'s: ${line}`),
  );

const tellEvent = (words: string): WalkState['events'][number] => ({
  kind: 'text',
  words,
  facts: [],
  guesses: [],
  suggests: [],
  by: 'member',
});

const isFor = (system: System, only: { readonly systems?: readonly System[] | undefined } | undefined): boolean =>
  only?.systems === undefined || only.systems.includes(system);

describe('a phone', () => {
  const lines = shipped.faults.find(({ id }) => id === 'phone-program-not-allowed')?.remedy.steps ?? [];
  const told = (words: string): readonly string[] =>
    linesFor(lines, 'phone').flatMap(
      forPhone({ ...startWalk({ member: null, helper: null }), events: [tellEvent(words)] }),
    );

  it.each(['my iphone cannot find it', 'ipad pro, no mount found', 'on iOS it says nothing'])('%s', (words) => {
    expect(told(words).join(' ')).toContain('Local Network');
    expect(told(words).join(' ')).not.toMatch(/nearby devices|iPhone|Android/u);
  });

  it.each(['my android cannot find it', 'android tablet, no mount found'])('%s', (words) => {
    expect(told(words).join(' ')).toContain('nearby devices');
    expect(told(words).join(' ')).not.toMatch(/iPhone|Android|Privacy/u);
  });

  it('of an unknown kind is told both', () => {
    expect(told('my phone cannot find it').join(' ')).toMatch(/iPhone or iPad: .*Android: /u);
    expect(told('not the iphone, the android tablet').join(' ')).toMatch(/iPhone or iPad: .*Android: /u);
  });
});

describe.each(SYSTEMS)('on %s', (system) => {
  it('each remedy names its own tools alone', () => {
    const faults = shipped.faults.filter(({ only }) => isFor(system, only));
    expect(faults.length).toBeGreaterThan(20);
    const wrong = faults.flatMap(({ id, remedy: { steps, otherwise, lasting } }) =>
      [steps, otherwise, lasting]
        .flatMap((part) => (part === undefined ? [] : shownOn(system, linesFor(part, system))))
        .map((line) => `${id}: ${line}`),
    );
    expect(wrong).toEqual([]);
  });

  it('each look names its own tools alone', () => {
    const wrong = shipped.checks
      .filter(({ only }) => isFor(system, only))
      .flatMap(({ id, how }) => shownOn(system, linesFor(how, system)).map((line) => `${id}: ${line}`));
    expect(wrong).toEqual([]);
  });
});
