/** Device names, owners and kernel messages against the Linux and macOS documentation. */
import { describe, expect, it } from 'vitest';
import { factorFor, read, shipped } from './shipped-model.js';

const stepsOf = (id: string, system: 'linux' | 'macos' | 'windows'): string => {
  const steps = shipped.fault(id)?.remedy.steps;
  if (steps === undefined) return '';
  return Array.isArray(steps) ? steps.join('\n') : [...(steps.all ?? []), ...(steps[system] ?? [])].join('\n');
};

describe('Linux device files', () => {
  // Source: kernel documentation, "Linux allocated devices": character major 188 is USB serial converters (ttyUSB),
  // 166 is ACM USB modems (ttyACM). https://docs.kernel.org/admin-guide/devices.html
  it.each([
    ['ttyUSB0', 188],
    ['ttyACM0', 166],
  ])('%s is known by its major number %i', (name, major) => {
    expect(read(`crw-rw---- 1 root dialout ${major}, 0 Nov 25 21:14 /dev/${name}`).answers['port-appears']).toBe(
      'port',
    );
    expect(read(`crw-rw---- 1 root dialout 4, 64 Nov 25 21:14 /dev/${name}`).ids).toEqual([]);
  });

  // Source: Debian, base-passwd, "Users and Groups in the Debian System": dialout has full and direct access to serial ports.
  it('a session in dialout may open the port, a root-only port may not be opened', () => {
    expect(read('uid=1000(ravi) gid=1000(ravi) groups=1000(ravi),20(dialout),24(cdrom)').answers['port-group']).toBe(
      'member',
    );
    expect(read('uid=1000(ravi) gid=1000(ravi) groups=1000(ravi),24(cdrom)').answers['port-group']).toBeUndefined();
    expect(factorFor('crw------- 1 root root 188, 0 Nov 25 21:14 /dev/ttyUSB0', 'no-permission')).toBeGreaterThan(5);
  });

  // Source: usermod(8): -G alone replaces the list of groups, -a keeps the others. credentials(7): groups are read at login.
  it('adds the group without taking the others away, and says to log in again', () => {
    expect(stepsOf('no-permission', 'linux')).toMatch(/usermod -aG dialout/u);
    expect(stepsOf('no-permission', 'linux')).toMatch(/log out/iu);
  });
});

describe('kernel log', () => {
  // Messages as printed by drivers/usb/core/hub.c, drivers/usb/serial/bus.c and drivers/usb/class/cdc-acm.c of the Linux kernel.
  const GOOD = `[ 8123.401] usb 1-2: new full-speed USB device number 9 using xhci_hcd
[ 8123.553] usb 1-2: New USB device found, idVendor=1234, idProduct=abcd, bcdDevice= 6.00
[ 8123.560] usbserial 1-2:1.0: USB-serial converter detected
[ 8123.571] usb 1-2: USB-serial converter now attached to ttyUSB0`;
  const BAD = `[ 9001.113] usb 1-2: new full-speed USB device number 10 using xhci_hcd
[ 9001.243] usb 1-2: device descriptor read/64, error -71
[ 9001.483] usb 1-2: device descriptor read/64, error -71
[ 9001.593] usb usb1-port2: attempt power cycle
[ 9002.011] usb 1-2: device not accepting address 12, error -71
[ 9002.013] usb usb1-port2: unable to enumerate USB device`;
  const TAKEN = `${GOOD}
[ 8124.102] usb 1-2: usbfs: interface 0 claimed by usbserial while 'brltty' sets config #1
[ 8124.131] ttyUSB0: USB-serial converter now disconnected from ttyUSB0`;

  it('of a healthy adapter answers two checks at once', () => {
    expect(read(GOOD).answers).toEqual({ 'kernel-log': 'attached', 'port-appears': 'port' });
    expect(read(GOOD).system).toBe('linux');
  });

  it('of a bad cable answers that nothing usable appeared (-71 is EPROTO, kernel documentation, USB error codes)', () => {
    expect(read(BAD).answers).toEqual({ 'kernel-log': 'no-address', 'port-appears': 'nothing' });
    expect(factorFor(BAD, 'usb-cable-broken')).toBeGreaterThan(1);
    expect(factorFor(BAD, 'adapter-module-missing')).toBe(1);
  });

  it('of an adapter taken by the Braille service outweighs its "attached" line', () => {
    expect(factorFor(TAKEN, 'adapter-taken-by-braille-service')).toBeGreaterThan(100);
  });

  it('of one unplugging on request is no complaint, of three in a row is', () => {
    const once = 'usb 1-2: USB disconnect, device number 9';
    expect(read(once).answers['kernel-log']).toBeUndefined();
    expect(read(`${once}\n${once}\n${once}`).answers['kernel-log']).toBe('cycles');
  });

  it('tells a hub without power from a bad cable', () => {
    const starved = 'usb 1-1.3: rejected 1 configuration due to insufficient available bus power';
    expect(read(starved).answers['kernel-log']).toBe('power');
    expect(factorFor(starved, 'unpowered-hub')).toBeGreaterThan(factorFor(starved, 'usb-cable-broken'));
  });
});

describe('macOS device names', () => {
  // Source: Apple Developer, "Device File Access Guide for Serial I/O": /dev/cu.* calls out, /dev/tty.* waits for a call in.
  it('tells call-out from call-in', () => {
    // One port in sight says that the driver made one, not that the USB tree shows the adapter.
    expect(read('ls: /dev/cu.usbserial-1420').answers).toEqual({ 'port-appears': 'port' });
    expect(read('connected to port /dev/tty.usbserial-1420').answers['mac-name']).toBe('call-in');
    expect(stepsOf('mac-call-in-device', 'macos')).toContain('/dev/cu.');
  });

  it('does not take the Bluetooth port that every Mac has for an adapter', () => {
    const { ids, answers } = read('/dev/cu.Bluetooth-Incoming-Port /dev/cu.debug-console');
    expect(ids).toEqual(['table-no-mac-port']);
    expect(answers['port-appears']).toBe('nothing');
  });
});
