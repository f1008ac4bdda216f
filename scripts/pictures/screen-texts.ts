/** What the test screenshots show, and what each plainly says. Written for the tests; names and numbers are invented. */

export interface ScreenText {
  readonly id: string;
  /** As a terminal shows it, or as a window with title and buttons. */
  readonly look: 'terminal' | 'window';
  readonly title: string;
  readonly text: string;
  /** Facts a person reads off it; of each inner list any one will do. */
  readonly facts: readonly (readonly string[])[];
}

export const SCREEN_TEXTS: readonly ScreenText[] = [
  {
    id: 'attached-then-denied',
    look: 'terminal',
    title: 'shed: ~',
    text: `[ 2204.118302] usb 1-2: new full-speed USB device number 9 using xhci_hcd
[ 2204.270114] usbserial_generic 1-2:1.0: generic converter detected
[ 2204.270620] usb 1-2: generic converter now attached to ttyUSB0
$ cat /dev/ttyUSB0
cat: /dev/ttyUSB0: Permission denied`,
    facts: [['message.denied', 'port-group.outside'], ['system.linux']],
  },
  {
    id: 'no-address',
    look: 'terminal',
    title: 'kernel log',
    text: `[  310.551200] usb 2-1.4: new full-speed USB device number 17 using ehci-pci
[  310.631877] usb 2-1.4: device descriptor read/64, error -71
[  310.819901] usb 2-1.4: device descriptor read/64, error -71
[  311.343004] usb 2-1.4: device not accepting address 18, error -71
[  311.344950] usb 2-1-port4: unable to enumerate USB device`,
    facts: [['kernel-log.no-address'], ['system.linux']],
  },
  {
    id: 'code-10',
    look: 'window',
    title: 'USB Serial Port (COM5) Properties',
    text: `Device status

This device cannot start. (Code 10)

The specified request is not a valid operation for the target device.`,
    facts: [['device-status.cannot-start'], ['system.windows']],
  },
  {
    id: 'code-28',
    look: 'window',
    title: 'USB-Serial Controller Properties',
    text: `Device status

The drivers for this device are not installed. (Code 28)

There are no compatible drivers for this device.

To find a driver for this device, click Update Driver.`,
    facts: [['device-status.no-driver', 'adapter-driver.none', 'port-appears.unknown'], ['system.windows']],
  },
  {
    id: 'access-denied',
    look: 'window',
    title: 'Connection error',
    text: `Could not open COM4.

System.UnauthorizedAccessException: Access to the port 'COM4' is denied.`,
    facts: [['message.denied', 'port-holder.program'], ['system.windows']],
  },
  {
    id: 'port-gone',
    look: 'terminal',
    title: 'Command Prompt',
    text: `C:\\Users\\night>python send.py
serial.serialutil.SerialException: could not open port 'COM7':
FileNotFoundError(2, 'The system cannot find the file specified.', None, 2)`,
    facts: [['message.not-found', 'port-appears.nothing'], ['system.windows']],
  },
  {
    id: 'ping-silent',
    look: 'terminal',
    title: 'Command Prompt',
    text: `C:\\>ping 192.168.4.1

Pinging 192.168.4.1 with 32 bytes of data:
Request timed out.
Request timed out.
Request timed out.
Request timed out.

Ping statistics for 192.168.4.1:
    Packets: Sent = 4, Received = 0, Lost = 4 (100% loss),`,
    facts: [['ping.silent'], ['system.windows']],
  },
  {
    id: 'refused',
    look: 'window',
    title: 'Network bridge',
    text: `Connect to 192.168.4.1:4030 failed.

No connection could be made because the target machine actively
refused it. (10061)`,
    facts: [['socket-opens.refused', 'message.unreachable']],
  },
  {
    id: 'taken',
    look: 'terminal',
    title: 'kernel log',
    text: `[ 1201.003421] usb 1-3: usb serial converter now attached to ttyUSB0
[ 1202.411950] input: BRLTTY 6.4 Linux Screen Driver Keyboard as /devices/virtual/input/input29
[ 1202.530887] usb 1-3: usbfs: interface 0 claimed by usb_serial while 'brltty' sets config #1
[ 1202.533208] usb 1-3: serial converter now disconnected from ttyUSB0`,
    facts: [['kernel-log.taken'], ['system.linux']],
  },
  {
    id: 'over-current',
    look: 'terminal',
    title: 'kernel log',
    text: `[  77.410233] usb usb1-port2: over-current condition
[  78.601244] usb 1-2: USB disconnect, device number 4
[  79.118845] usb usb1-port2: over-current change #3`,
    facts: [['kernel-log.power'], ['system.linux']],
  },
  {
    id: 'not-in-group',
    look: 'terminal',
    title: 'fen@laptop: ~',
    text: `fen@laptop:~$ ls -l /dev/ttyUSB0
crw-rw---- 1 root dialout 188, 0 Nov 12 21:40 /dev/ttyUSB0
fen@laptop:~$ groups
fen cdrom plugdev users
fen@laptop:~$`,
    facts: [['port-group.outside', 'port-group.on-file-only', 'message.denied'], ['system.linux']],
  },
  {
    id: 'no-reply',
    look: 'window',
    title: 'Mount',
    text: `The port was opened, but the mount did not answer.

Timed out waiting for a reply (3 tries).`,
    facts: [['message.no-reply']],
  },
  {
    id: 'disconnects',
    look: 'terminal',
    title: 'kernel log',
    text: `[ 5120.700412] usb 1-1: usb serial converter now attached to ttyUSB0
[ 5181.093377] usb 1-1: USB disconnect, device number 11
[ 5181.095610] serial converter ttyUSB0: converter now disconnected from ttyUSB0
[ 5183.560934] usb 1-1: new full-speed USB device number 12 using xhci_hcd
[ 5183.712290] usb 1-1: usb serial converter now attached to ttyUSB0
[ 5240.118026] usb 1-1: USB disconnect, device number 12`,
    facts: [['kernel-log.cycles', 'how-far.drops', 'port-appears.flaps'], ['system.linux']],
  },
  {
    id: 'mac-blocked',
    look: 'window',
    title: 'System Extension Blocked',
    text: `A program tried to load new system extensions. If you want to
enable these extensions, open Privacy & Security in System Settings.`,
    facts: [['mac-approval.waiting', 'device-status.blocked'], ['system.macos']],
  },
  {
    id: 'unknown-device',
    look: 'window',
    title: 'Unknown USB Device (Device Descriptor Request Failed) Properties',
    text: `Device status

Windows has stopped this device because it has reported
problems. (Code 43)

A request for the USB device descriptor failed.`,
    facts: [['device-status.cannot-start', 'port-appears.unknown', 'kernel-log.no-address'], ['system.windows']],
  },
];
