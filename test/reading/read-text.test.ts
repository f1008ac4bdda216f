/** What a text is read as: facts, each with the words it came from. */
import { describe, expect, it } from 'vitest';
import { loadTriage } from '../../bot/triage/index.js';
import { readText } from '../../bot/reading/index.js';

const { reading } = loadTriage('knowledge/connection');

describe('a pasted message', () => {
  it('gives facts that quote it, and the system it can only come from', () => {
    // Linux kernel, drivers/usb/serial/bus.c and usb-serial.c: the line printed when a port is made of an adapter.
    const read = readText(reading, '[  963.837493] usb 1-2: USB serial converter now attached to ttyUSB0');
    expect(read.by).toBe('log');
    const fact = (what: string) => read.facts.find((one) => one.what === what);
    expect(fact('system')?.answer).toBe('linux');
    expect(fact('kernel-log')?.answer).toBe('attached');
    for (const { quote } of read.facts) expect(quote).toContain('attached to ttyUSB0');
  });

  it('says nothing of a text that says nothing', () => {
    const read = readText(reading, 'thank you, that was the best view of the ring yet');
    expect(read).toMatchObject({ by: 'words', facts: [], suggested: [], understood: [], says: [] });
  });
});
