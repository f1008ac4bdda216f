/** Error words and numbers of the operating systems against their published lists. */
import { constants } from 'node:os';
import { describe, expect, it } from 'vitest';
import { factorFor, read } from './shipped-model.js';

describe('POSIX errors', () => {
  // Texts: strerror of the GNU C Library 2.36; numbers: errno.h of this platform as Node reports it, and
  // POSIX.1-2024 <errno.h> for the meaning of each name.
  it.each([
    ['EACCES', 'Permission denied', 'message', 'denied'],
    ['EBUSY', 'Device or resource busy', 'message', 'denied'],
    ['ENOENT', 'No such file or directory', 'message', 'not-found'],
  ] as const)('%s on a port (%s) answers %s with %s', (name, text, check, answer) => {
    const said = read(`could not open port /dev/ttyUSB0: [Errno ${constants.errno[name]}] ${text}: '/dev/ttyUSB0'`);
    expect(said.answers[check]).toBe(answer);
  });

  it('tells a port one may not open from a port that is taken', () => {
    const denied = "[Errno 13] Permission denied: '/dev/ttyUSB0'";
    const busy = "[Errno 16] Device or resource busy: '/dev/ttyUSB0'";
    expect(factorFor(denied, 'no-permission')).toBeGreaterThan(10 * factorFor(denied, 'port-held-by-program'));
    expect(factorFor(busy, 'port-held-by-program')).toBeGreaterThan(10 * factorFor(busy, 'no-permission'));
  });

  it.each([
    ['ENODEV', 'No such device'],
    ['ENXIO', 'No such device or address'],
    ['EIO', 'Input/output error'],
  ] as const)('%s (%s) points at a device that vanished while in use', (name, text) => {
    const said = `read failed: [Errno ${constants.errno[name]}] ${text}`;
    expect(factorFor(said, 'usb-port-asleep')).toBeGreaterThan(1);
    expect(factorFor(said, 'worn-socket')).toBeGreaterThan(1);
    expect(factorFor(said, 'wrong-speed')).toBe(1);
  });

  it('ENOTTY points at something that is not a serial port', () => {
    expect(constants.errno.ENOTTY).toBe(25);
    expect(
      factorFor('could not configure port: (25, Inappropriate ioctl for device)', 'wrong-port-picked'),
    ).toBeGreaterThan(3);
  });
});

describe('Windows system errors', () => {
  // Source: Microsoft Learn, "System Error Codes (0-499)" and "(1000-1299)"; texts as FormatMessage gives them.
  it.each([
    ['5 ERROR_ACCESS_DENIED', "Access to the port 'COM4' is denied.", 'denied'],
    ['2 ERROR_FILE_NOT_FOUND', 'The system cannot find the file specified.', 'not-found'],
    ['121 ERROR_SEM_TIMEOUT', 'The semaphore timeout period has expired.', 'no-reply'],
    ['170 ERROR_BUSY', 'The requested resource is in use.', 'denied'],
  ])('%s answers what the program says', (_, text, answer) => {
    const said = read(text);
    expect(said.answers['message']).toBe(answer);
    expect(said.system).toBe('windows');
  });

  it.each([
    ['31 ERROR_GEN_FAILURE', 'A device attached to the system is not functioning.'],
    [
      '995 ERROR_OPERATION_ABORTED',
      'The I/O operation has been aborted because of either a thread exit or an application request.',
    ],
    ['1167 ERROR_DEVICE_NOT_CONNECTED', 'The device is not connected.'],
  ])('%s points at a port that went away', (_, text) => expect(factorFor(text, 'usb-port-asleep')).toBeGreaterThan(1));

  // Source: Microsoft Learn, "COM Error Codes"; 193 ERROR_BAD_EXE_FORMAT and 11 ERROR_BAD_FORMAT in the system list.
  it('class not registered and bad format are driver errors, the second one of bit width', () => {
    expect(read('Class not registered (0x80040154 REGDB_E_CLASSNOTREG)').answers['message']).toBe('driver-error');
    expect(factorFor('An attempt was made to load a program with an incorrect format.', 'bits-differ')).toBeGreaterThan(
      5,
    );
  });
});

describe('socket errors', () => {
  // Winsock numbers: Microsoft Learn, "Windows Sockets Error Codes". Linux numbers: asm-generic/errno.h; macOS numbers: sys/errno.h.
  it.each([
    [
      'ECONNREFUSED',
      [
        'socket error 10061',
        'connect ECONNREFUSED 192.168.4.1:7000',
        'Connection refused',
        'the target machine actively refused it',
      ],
      'bridge-port-number-wrong',
    ],
    [
      'ETIMEDOUT',
      ['WSA error 10060', 'Connection timed out', '[Errno 60] Operation timed out', '[Errno 110] Connection timed out'],
      'wrong-network-joined',
    ],
    ['EHOSTUNREACH', ['error 10065', 'No route to host', 'EHOSTUNREACH'], 'wrong-network-joined'],
    ['ENETUNREACH', ['error 10051', 'Network is unreachable'], 'wrong-network-joined'],
    ['ECONNRESET', ['error 10054', 'Connection reset by peer'], 'two-masters'],
  ])('%s is known by number and by words', (_, texts, fault) => {
    for (const text of texts) expect(factorFor(text, fault), text).toBeGreaterThan(1);
  });

  it('10013 WSAEACCES says that something blocks the socket', () => {
    expect(
      read('An attempt was made to access a socket in a way forbidden by its access permissions (10013)').answers[
        'firewall'
      ],
    ).toBe('blocked');
  });

  it('a refusal shows that the address answers; a time-out does not (RFC 9293, reset for a closed port)', () => {
    expect(factorFor('Connection refused', 'wrong-network-joined')).toBeLessThan(1);
    expect(factorFor('Connection timed out', 'bridge-port-number-wrong')).toBeLessThan(1);
  });

  it('a refusal on this very computer means a service that is not running', () => {
    expect(
      factorFor('connect to localhost:5000 failed: Connection refused', 'platform-service-stopped'),
    ).toBeGreaterThan(20);
  });

  it('reads Test-NetConnection and ping (Microsoft Learn; ping(8))', () => {
    expect(read('PingSucceeded : True TcpTestSucceeded : True').answers['socket-opens']).toBe('opens');
    expect(read('4 packets transmitted, 0 received, 100% packet loss, time 3060ms').answers['ping']).toBe('silent');
    expect(read('64 bytes from 192.168.4.1: icmp_seq=1 ttl=255 time=2.31 ms').answers['ping']).toBe('answers');
  });
});
