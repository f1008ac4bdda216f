/**
 * Tables that systems print, read row by row: interfaces and their addresses, wireless networks, devices and their status, ports.
 * What a table tells is an entry of evidence/tables.yaml; that something is not in a list counts only where the list is whole.
 */
import type { Span } from './compile-pattern.js';

export interface TableLine {
  /** Single spaces for all white space. */
  readonly text: string;
  /** Where it starts in the folded text. */
  readonly start: number;
}

export interface FoundTable {
  /** The entry of evidence/tables.yaml. */
  readonly id: string;
  readonly span: Span;
}

interface Row {
  readonly line: TableLine;
}

const found = (id: string, { line }: Row): FoundTable => ({
  id,
  span: { start: line.start, end: line.start + line.text.length },
});

interface Address extends Row {
  readonly name: string;
  /** The first three numbers of the address: networks of houses and bridges have 255.255.255.0. */
  readonly net: string;
}

const IPV4 = String.raw`(\d{1,3}\.\d{1,3}\.\d{1,3})\.\d{1,3}`;
/** `ip -br addr`: name, state, address. */
const BRIEF = new RegExp(String.raw`^([a-z][\w.-]{1,14}) (?:up|down|unknown) ${IPV4}/\d+`, 'iu');
/** What opens the block of one interface: `ip addr`, ifconfig (two ways), ipconfig. */
const BLOCK =
  /^(?:\d+: ([\w.-]{2,15})(?:@\w+)?: <|([a-z][\w.-]{1,14})(?:: flags=|:? link encap)|\w[\w -]{2,30}? adapter ([^:]{1,40}):$)/iu;
const OWN = new RegExp(String.raw`^(?:inet (?:addr:)?|ipv4 address[ .]*: ?)${IPV4}`, 'iu');
/** Loop, made by containers and virtual machines, or given by nobody. */
const NO_LINK = /^(?:lo\d*|docker|br-|veth|virbr|vmnet|vbox|utun|tun|tap|wg|vethernet)/iu;
const NO_NET = /^(?:127\.|169\.254)/u;

const addressesOf = (lines: readonly TableLine[]): readonly Address[] => {
  const all: Address[] = [];
  let name = '';
  for (const line of lines) {
    const [, brief, briefNet] = BRIEF.exec(line.text) ?? [];
    if (brief !== undefined && briefNet !== undefined) all.push({ line, name: brief, net: briefNet });
    const block = BLOCK.exec(line.text);
    if (block !== null) name = block[1] ?? block[2] ?? block[3] ?? '';
    const net = OWN.exec(line.text)?.[1];
    if (net !== undefined && name !== '') all.push({ line, name, net });
  }
  return all.filter((one) => !NO_LINK.test(one.name) && !NO_NET.test(one.net));
};

/** Two of the computer's links with numbers of one network. */
const twinsIn = (lines: readonly TableLine[]): readonly FoundTable[] => {
  const addresses = addressesOf(lines);
  const twin = addresses.find((one) => addresses.some(({ name, net }) => name !== one.name && net === one.net));
  return twin === undefined ? [] : [found('table-twin-numbers', twin)];
};

/** Of the network in use, per cent or dBm: `nmcli`, `netsh wlan show interfaces`, iwconfig and iw, the Mac's own tool. */
const STRENGTHS: readonly RegExp[] = [
  /^(?:yes|\*):[^:]{1,40}:(?<percent>\d{1,3})(?::|$)/iu,
  /^\* (?:[\da-f]{2}:){5}[\da-f]{2} .{1,40} \d+ mbit\/s (?<percent>\d{1,3})\b/iu,
  /^\* \S.{0,40} infra \d+ \d+ mbit\/s (?<percent>\d{1,3})\b/iu,
  /^signal ?: (?<percent>\d{1,3}) ?%/iu,
  /\bsignal level[=:] ?(?<dbm>-\d{2,3}) dbm/iu,
  /^signal(?: avg)?: (?<dbm>-\d{2,3})\b/iu,
  /^agrctlrssi: (?<dbm>-\d{2,3})\b/iu,
  /^signal \/ noise: (?<dbm>-\d{2,3}) dbm/iu,
];
/** One bar of four or less. */
const WEAK_PERCENT = 40;
const WEAK_DBM = -75;

const strengthIn = (lines: readonly TableLine[]): readonly FoundTable[] =>
  lines.flatMap((line) => {
    for (const form of STRENGTHS) {
      const { percent, dbm } = form.exec(line.text)?.groups ?? {};
      if (percent === undefined && dbm === undefined) continue;
      const isWeak = percent === undefined ? Number(dbm) <= WEAK_DBM : Number(percent) < WEAK_PERCENT;
      return [found(isWeak ? 'table-signal-weak' : 'table-signal-strong', { line })];
    }
    return [];
  });

/** The network in use, by its name where the name says that it is a mount's. */
const IN_USE =
  /^(?:(?:yes|\*):(?<a>[^:]{1,40})(?::|$)|\* (?:(?:[\da-f]{2}:){5}[\da-f]{2} )?(?<b>\S.{0,40}?) infra |ssid ?: (?<c>.{1,40})$|.{0,20}\bessid:"(?<d>[^"]{1,40})")/iu;
const OF_MOUNT = /scope|mount|goto|astro|bridge/iu;

const joinedIn = (lines: readonly TableLine[]): readonly FoundTable[] =>
  lines.flatMap((line) => {
    const { a, b, c, d } = IN_USE.exec(line.text)?.groups ?? {};
    return OF_MOUNT.test(a ?? b ?? c ?? d ?? '') ? [found('table-on-mounts-network', { line })] : [];
  });

/** `Get-PnpDevice -Class Ports`: status, class, name. */
const PNP_ROW = /^(ok|error|degraded|unknown) ports (.{3,80})/iu;
const BUILT_IN = /^communications port\b/iu;

const devicesIn = (lines: readonly TableLine[]): readonly FoundTable[] => {
  const rows = lines.flatMap((line) => {
    const [, status = '', name = ''] = PNP_ROW.exec(line.text) ?? [];
    return status === '' ? [] : [{ line, status: status.toLowerCase(), name }];
  });
  const own = rows.filter(({ name }) => !BUILT_IN.test(name));
  const bad = own.find(({ status }) => status === 'error' || status === 'degraded');
  if (bad !== undefined && !own.some(({ status }) => status === 'ok')) return [found('table-port-in-error', bad)];
  const [first] = rows;
  return first !== undefined && own.length === 0 ? [found('table-no-port', first)] : [];
};

/** The Mac's list of /dev/cu.*: its own entries alone. */
const MAC_PORTS = /\/dev\/cu\.[\w-]+/giu;
const MAC_OWN = /^\/dev\/cu\.(?:bluetooth-incoming-port|debug-console|wlan-debug|console)$/iu;

const macPortsIn = (lines: readonly TableLine[]): readonly FoundTable[] => {
  const listed = lines.flatMap((line) => [...line.text.matchAll(MAC_PORTS)].map(([name]) => ({ line, name })));
  const [first] = listed;
  const isOwn = listed.length >= 2 && listed.every(({ name }) => MAC_OWN.test(name));
  return first !== undefined && isOwn ? [found('table-no-mac-port', first)] : [];
};

/** `lsusb`: whole where the computer's own sockets are in it; of a row that says what it is, another device's. */
const USB_ROW = /^bus \d{3} device \d{3}: id ([\da-f]{4}):[\da-f]{4} ?(.*)$/iu;
const ROOT_VENDOR = '1d6b';
const OTHER_KIND =
  /\b(?:bluetooth|wi-?fi|wlan|wireless|webcam|camera|keyboard|mouse|receiver|reader|touch\w*|fingerprint|audio|hub|storage|flash|ethernet|headset|printer|disk|radio)\b/iu;

const usbIn = (lines: readonly TableLine[]): readonly FoundTable[] => {
  const rows = lines.flatMap((line) => {
    const [, vendor = '', name = ''] = USB_ROW.exec(line.text) ?? [];
    return vendor === '' ? [] : [{ line, vendor: vendor.toLowerCase(), name }];
  });
  const [first] = rows;
  const isWhole = rows.some(({ vendor }) => vendor === ROOT_VENDOR);
  const isOthers = rows.every(({ vendor, name }) => vendor === ROOT_VENDOR || OTHER_KIND.test(name));
  return first !== undefined && isWhole && isOthers ? [found('table-no-usb-device', first)] : [];
};

/** `ps aux`: a process with the port in its command, which is not the search for it. */
const PROCESS = /^[\w.+-]{1,32} \d{2,7} (?:\d+\.\d+ \d+\.\d+ |\S+ \S+ )?.{0,120}\/dev\/(?:tty(?:usb|acm)\d|cu\.\w)/iu;

const holdersIn = (lines: readonly TableLine[]): readonly FoundTable[] =>
  lines.flatMap((line) =>
    PROCESS.test(line.text) && !/\bgrep\b| chr \d/iu.test(line.text)
      ? [found('table-process-with-port', { line })]
      : [],
  );

const READERS = [twinsIn, strengthIn, joinedIn, devicesIn, macPortsIn, usbIn, holdersIn];

/** A line without any of these is no row, and opens no block, of any of the tables. */
const MAY_BE_ROW = new RegExp(
  [
    String.raw`^(?:yes:|\*|ssid|signal|agrctlrssi|bus \d|(?:ok|error|degraded|unknown) ports |\d+: |inet |ipv4 )`,
    String.raw`/dev/|signal level|essid:|: flags=|link encap| adapter | (?:up|down|unknown) \d`,
  ].join('|'),
  'iu',
);

export const readTables = (lines: readonly TableLine[]): readonly FoundTable[] => {
  const rows = lines.filter(({ text }) => MAY_BE_ROW.test(text));
  return rows.length === 0 ? [] : READERS.flatMap((read) => read(rows));
};
