/** Device Manager codes: the numbers and names against Microsoft's published list, and what our pattern makes of them. */
import { describe, expect, it } from 'vitest';
import { factorFor, read, shipped } from './shipped-model.js';

// Source: Microsoft Learn, "Device Manager error messages",
// https://learn.microsoft.com/windows-hardware/drivers/install/device-manager-error-messages (codes as defined in Cfg.h).
const PUBLISHED: Readonly<Record<number, string>> = {
  1: 'CM_PROB_NOT_CONFIGURED',
  3: 'CM_PROB_OUT_OF_MEMORY',
  9: 'CM_PROB_INVALID_DATA',
  10: 'CM_PROB_FAILED_START',
  12: 'CM_PROB_NORMAL_CONFLICT',
  14: 'CM_PROB_NEED_RESTART',
  16: 'CM_PROB_PARTIAL_LOG_CONF',
  18: 'CM_PROB_REINSTALL',
  19: 'CM_PROB_REGISTRY',
  21: 'CM_PROB_WILL_BE_REMOVED',
  22: 'CM_PROB_DISABLED',
  24: 'CM_PROB_DEVICE_NOT_THERE',
  28: 'CM_PROB_FAILED_INSTALL',
  29: 'CM_PROB_HARDWARE_DISABLED',
  31: 'CM_PROB_FAILED_ADD',
  32: 'CM_PROB_DISABLED_SERVICE',
  33: 'CM_PROB_TRANSLATION_FAILED',
  34: 'CM_PROB_NO_SOFTCONFIG',
  35: 'CM_PROB_BIOS_TABLE',
  36: 'CM_PROB_IRQ_TRANSLATION_FAILED',
  37: 'CM_PROB_FAILED_DRIVER_ENTRY',
  38: 'CM_PROB_DRIVER_FAILED_PRIOR_UNLOAD',
  39: 'CM_PROB_DRIVER_FAILED_LOAD',
  40: 'CM_PROB_DRIVER_SERVICE_KEY_INVALID',
  41: 'CM_PROB_LEGACY_SERVICE_NO_DEVICES',
  42: 'CM_PROB_DUPLICATE_DEVICE',
  43: 'CM_PROB_FAILED_POST_START',
  44: 'CM_PROB_HALTED',
  45: 'CM_PROB_PHANTOM',
  46: 'CM_PROB_SYSTEM_SHUTDOWN',
  47: 'CM_PROB_HELD_FOR_EJECT',
  48: 'CM_PROB_DRIVER_BLOCKED',
  49: 'CM_PROB_REGISTRY_TOO_LARGE',
  50: 'CM_PROB_SETPROPERTIES_FAILED',
  51: 'CM_PROB_WAITING_ON_DEPENDENCY',
  52: 'CM_PROB_UNSIGNED_DRIVER',
  53: 'CM_PROB_USED_BY_DEBUGGER',
  54: 'CM_PROB_DEVICE_RESET',
  55: 'CM_PROB_CONSOLE_LOCKED',
  56: 'CM_PROB_NEED_CLASS_CONFIG',
  57: 'CM_PROB_GUEST_ASSIGNMENT_FAILED',
};

// What the name of each code means for the device; "no driver" and so on are the answers of our check.
const MEANING: Readonly<Record<number, string>> = {
  1: 'no-driver',
  10: 'cannot-start',
  14: 'restart',
  18: 'no-driver',
  22: 'disabled',
  24: 'not-there',
  28: 'no-driver',
  29: 'disabled',
  31: 'damaged',
  32: 'damaged',
  37: 'damaged',
  38: 'restart',
  39: 'damaged',
  40: 'damaged',
  43: 'cannot-start',
  45: 'not-there',
  48: 'blocked',
  52: 'blocked',
};

const entries = shipped.evidence.flatMap((entry) => {
  const number = /^device-code-(\d+)$/u.exec(entry.id)?.[1];
  return number === undefined ? [] : [{ number: Number(number), entry }];
});

describe('device status codes', () => {
  it('are all codes that Microsoft publishes, under the name it publishes', () => {
    expect(entries.length).toBeGreaterThanOrEqual(25);
    for (const { number, entry } of entries)
      expect(entry.source, entry.id).toContain(`(${PUBLISHED[number] ?? 'not published'})`);
  });

  it.each(Object.entries(MEANING))('code %s reads as "%s"', (number, meaning) => {
    const said = read(`This device has a problem. (Code ${number})`);
    expect(said.ids).toEqual([`device-code-${number}`]);
    expect(said.answers['device-status']).toBe(meaning);
    expect(said.system).toBe('windows');
    expect(read(`ProblemCode: ${PUBLISHED[Number(number)] ?? ''}`).answers['device-status']).toBe(meaning);
  });

  it('are not seen in a number that merely begins alike, or in an exit code', () => {
    expect(read('Device status (Code 280)').ids).toEqual([]);
    expect(read('the guider stopped with exit code 10').ids).toEqual([]);
  });

  it('name no driver trouble for a device that is simply not connected (45)', () => {
    expect(
      read('Currently, this hardware device is not connected to the computer. (Code 45)').answers['device-status'],
    ).toBe('not-there');
    expect(factorFor('(Code 10)', 'adapter-chip-refused')).toBeGreaterThan(1);
  });
});
