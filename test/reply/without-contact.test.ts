/**
 * What a sheet for a helper leaves out of a member's words, and what has to stay. Telephone numbers: of the ranges set aside for drama (Ofcom,
 * “Telephone numbers for drama”; NANPA 555-01XX), addresses of example.org (RFC 2606); all else is our own.
 */
import { describe, expect, it } from 'vitest';
import { withoutContact } from '../../bot/ground/without-contact.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW } from '../triage/console-walk.js';

describe('left out', () => {
  it.each([
    ['call me on 07700 900123, still the same', 'call me on (phone number), still the same'],
    ['my number is +44 7700 900123', 'my number is (phone number)'],
    ['phone 020 7946 0958', 'phone (phone number)'],
    ['tel. 07700-900-123 pls', 'tel. (phone number) pls'],
    ['whatsapp +1 202 555 0142', 'whatsapp (phone number)'],
    ['mail me odalys@example.org with the answer', 'mail me (e-mail address) with the answer'],
    ['odalys (at) example dot org, still busy', '(e-mail address), still busy'],
    ['wifi password is Heron42, still no', 'wifi password is (password) still no'],
    ['WPA2 key: ab!cdef gh', 'WPA2 key: (password) gh'],
    ['I live at 12 Mill Lane, come by', 'I live at (address), come by'],
  ])('%s', (said, shown) => {
    expect(withoutContact(said)).toBe(shown);
  });
});

describe('what a helper needs stays', () => {
  it.each([
    'password wrong, it says; the password is right',
    'pass through a hub on com4',
    'tried 192.168.4.1 port 11880',
    'still com7 at 9600 8N1, then 115200',
    'firmware 4.37.03.2021, driver version 10.0.19041.1',
    'serial number 0123456789012',
    'site 54 58 12 N 2 06 10 W, or 54.97012 -2.10133',
    'ra 05 35 17 dec -05 23 28',
    '2026-11-27 20:10:33.123 port busy again',
    'error 0x80070005, hwid USB\\VID_0403&PID_6001\\A50285BI',
    'pi@raspberrypi.local answers on 2001:db8::1',
    '[ 12345.678901] usb 1-1.4: new full-speed device, 0000:00:14.0',
    '12 volts, 2 metres from the road',
    'mac aa:bb:cc:dd:ee:ff',
  ])('%s', (said) => {
    expect(withoutContact(said)).toBe(said);
  });
});

describe('the sheet for a helper', () => {
  it('shows neither number nor address', async () => {
    const who = member('Leofrun');
    await answer(deps, 'triage windows, usb adapter at handset, access denied on com5', NOW, who);
    await answer(deps, 'triage no change, ring me on 07700 900123 or odalys@example.org', NOW, who);
    const facts = JSON.stringify((await answer(deps, 'triage do:summary', NOW, who)).facts);
    expect(facts).toContain('com5');
    expect(facts).toContain('(phone number)');
    expect(facts).not.toMatch(/900123|example\.org/u);
  });
});
