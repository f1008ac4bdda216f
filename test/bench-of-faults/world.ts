/**
 * The state of one member's set-up: every link of the chain from the power socket to the sky, as it physically stands.
 * It knows nothing of the likelihood tables in `knowledge/`; what can be seen of it follows by the rules in `links/`.
 */
import { randomFrom } from './random.js';

export type PathId =
  | 'controller-serial'
  | 'controller-usb'
  | 'board-cable'
  | 'built-in-usb'
  | 'bluetooth'
  | 'bridge-own-network'
  | 'bridge-house-network';
export type SystemId = 'windows' | 'macos' | 'linux';
export type ClientId = 'direct' | 'platform';

/** Where in the chain something sits; the ids of the knowledge's stages. */
export type LinkId =
  | 'power'
  | 'cable'
  | 'adapter'
  | 'radio'
  | 'network'
  | 'system-port'
  | 'port-settings'
  | 'controller-mode'
  | 'driver'
  | 'client-program'
  | 'site-and-time'
  | 'alignment';

export interface World {
  readonly path: PathId;
  readonly system: SystemId;
  readonly client: ClientId;
  /** Seeds what happens to fall one way or the other in this very set-up; see `falls`. */
  readonly luck: number;
  readonly power: {
    readonly switchOn: boolean;
    readonly source: 'live' | 'dead';
    readonly plug: 'firm' | 'loose' | 'reversed';
    /** A loose plug makes contact, or does not, as it lies now. */
    readonly looseContact: boolean;
    readonly fuseWhole: boolean;
    readonly supply: 'enough' | 'too-few';
    readonly from: 'mains' | 'battery';
    readonly batteryFull: boolean;
    /** `stout`, or thin but good enough, or so thin that both motors starve. */
    readonly lead: 'stout' | 'thin' | 'starving';
    readonly electronicsAlive: boolean;
    readonly controllerLeadHome: boolean;
    readonly bridgeFed: boolean;
    /** What a small computer gets sags under load, and its USB with it. */
    readonly computerSags: boolean;
  };
  readonly leads: {
    readonly usbWire: 'data' | 'charge-only' | 'broken';
    readonly usbHome: boolean;
    readonly wornAt: 'mount' | 'computer' | null;
    readonly snags: boolean;
    readonly bundled: boolean;
    /** Whether what the motors radiate into a bundled cable disturbs it. */
    readonly disturbed: boolean;
    readonly usbTooLong: boolean;
    readonly hub: 'none' | 'own-supply' | 'bus';
    readonly hubStarves: boolean;
    readonly serial: 'its-own' | 'look-alike' | 'mirrored' | 'extra-piece' | 'other-family';
    /** Bought, or made at home: each pin measured, or not, with its wires where they belong or not. */
    readonly made: 'bought' | 'measured' | 'unmeasured' | 'miscounted';
    readonly serialBroken: boolean;
    readonly serialTooLong: boolean;
    readonly level: 'logic' | 'rs232' | 'low';
    readonly levelMarked: boolean;
    /** What the adapter at a hand controller speaks. */
    readonly adapterLevel: 'rs232' | 'logic';
    readonly socket: 'right' | 'look-alike';
  };
  readonly adapter: {
    readonly alive: boolean;
    readonly driver: 'fits' | 'none' | 'other' | 'refused' | 'blocked' | 'disabled' | 'restart' | 'no-module' | 'taken';
    readonly socketAlive: boolean;
    /** What the setting says; and whether this port really goes to sleep in use. */
    readonly maySleep: boolean;
    readonly fallsAsleep: boolean;
    readonly computerSlept: boolean;
    readonly latencyLong: boolean;
    readonly latencyHurts: boolean;
    readonly machineTakes: boolean;
    readonly mountUsbAlive: boolean;
    /** The USB chip in a controller or mount lives from the computer's 5 V, not from the mount's supply. */
    readonly chipBusPowered: boolean;
  };
  readonly radio: {
    readonly on: boolean;
    readonly pairing: 'good' | 'none' | 'refused' | 'stale';
    readonly heldElsewhere: boolean;
    readonly far: boolean;
    readonly lowEnergyOnly: boolean;
  };
  readonly port: {
    readonly chosen: 'right' | 'old-number' | 'other-device' | 'unlisted' | 'call-in' | 'incoming' | 'not-made';
    readonly group: 'member' | 'outside' | 'on-file';
    readonly holder: 'program' | 'leftover' | 'service' | null;
    readonly package: 'ordinary' | 'confined-allowed' | 'confined';
  };
  readonly settings: {
    readonly speedFits: boolean;
    readonly frameFits: boolean;
    readonly flowControl: boolean;
    readonly timeOutShort: boolean;
    readonly noRetries: boolean;
    /** The board starts afresh when DTR rises; and whether the program's first try comes too soon for it. */
    readonly restartsOnOpen: boolean;
    readonly bridgeSpeedFits: boolean;
  };
  readonly controller: {
    readonly screen: 'ready' | 'question' | 'asleep' | 'pass-through' | 'loader';
    readonly driverWantsPassThrough: boolean;
    readonly otherSocket: boolean;
    readonly firmware: 'enough' | 'old' | 'half';
    readonly bothPlugged: boolean;
  };
  readonly driver: {
    readonly installed: boolean;
    readonly rightOfTwo: boolean;
    readonly twoAlike: boolean;
    readonly bitsMatch: boolean;
    readonly componentOn: boolean;
    readonly oneStarter: boolean;
    readonly privilegeAlike: boolean;
    readonly serviceRuns: boolean;
  };
  readonly program: {
    readonly type: 'fits' | 'other' | 'old-protocol' | 'too-new' | 'simulator';
    readonly parked: boolean;
    /** Lowest altitude the mount will point to, degrees. */
    readonly lowLimitDeg: number;
    readonly pastMeridianLimit: boolean;
    readonly aligned: boolean;
    readonly tracking: 'sidereal' | 'another' | 'off';
    readonly buttonsSlow: boolean;
    readonly clutchFirm: boolean;
  };
  readonly network: {
    readonly joined: 'mounts' | 'other' | 'hops';
    readonly addressNow: 'saved' | 'new';
    readonly bridgeJoined: boolean;
    readonly band24: boolean;
    readonly isolated: boolean;
    readonly portFits: boolean;
    readonly kindFits: boolean;
    readonly firewall: 'lets' | 'blocks' | 'suite-blocks';
    readonly localAllowed: boolean;
    readonly masters: 'one' | 'several';
    readonly vpn: boolean;
    readonly weak: boolean;
    readonly twins: boolean;
    readonly hung: boolean;
  };
  readonly sky: SkyState;
  /** What no shipped fault describes: something at one link that shows itself in one way. */
  readonly oddity: Oddity | null;
}

export interface SkyState {
  readonly mount: 'german' | 'fork' | 'altaz';
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly utcMs: number;
  /** Hours east of UTC, summer time not counted; and whether summer time holds at the site tonight. */
  readonly zoneHours: number;
  readonly summer: boolean;
  /** Tonight's target: hours east of the meridian, degrees of declination. */
  readonly target: { readonly eastHours: number; readonly decDeg: number };
  /** What the mount was told. */
  readonly told: {
    readonly latitudeDeg: number;
    readonly longitudeDeg: number;
    readonly zoneHours: number;
    readonly summer: boolean;
    /** Local date and clock as typed, minus the right ones, hours. */
    readonly clockOffHours: number;
    readonly entry: 'right' | 'swapped' | 'day-off' | 'half-day' | 'clock-off' | 'reset';
    readonly siteEntry: 'match' | 'east-west' | 'north-south' | 'decimals' | 'swapped' | 'another-place';
  };
  /** What the program sends on connecting. */
  readonly sends: 'nothing' | 'right' | 'wrong-site' | 'wrong-clock';
  readonly epochMixed: boolean;
  readonly atHome: boolean;
  readonly starRight: boolean;
  readonly polarOffDeg: number;
  readonly reversed: boolean;
}

/** How an unlisted trouble shows itself to the chain. */
export type Shows =
  | 'dark'
  | 'not-seen'
  | 'not-found'
  | 'denied'
  | 'no-reply'
  | 'odd-reply'
  | 'driver-error'
  | 'unreachable'
  | 'drops-quiet'
  | 'drops-motors'
  | 'drops-random'
  | 'drops-device'
  | 'refuses'
  | 'no-motion'
  | 'misses-small'
  | 'misses-anyhow'
  | 'creeps';

export interface Oddity {
  readonly name: string;
  readonly link: LinkId;
  readonly shows: Shows;
  /** What a look at that link answers, by check id, where it differs from a sound one. */
  readonly seen?: Readonly<Record<string, string>>;
  /** It goes with the computer: another one works. */
  readonly inComputer: boolean;
  /** Words a member would say of it when asked, and a helper would want to read. */
  readonly telling: string;
}

export const isUsb = ({ path }: World): boolean =>
  path === 'controller-serial' || path === 'controller-usb' || path === 'board-cable' || path === 'built-in-usb';
export const isBridge = ({ path }: World): boolean => path === 'bridge-own-network' || path === 'bridge-house-network';
/** Serial wires outside the gear, with an adapter at the computer's end. */
export const hasSerialLead = ({ path }: World): boolean => path === 'controller-serial' || path === 'board-cable';
export const hasController = ({ path }: World): boolean => path !== 'board-cable' && path !== 'built-in-usb';
/** The commands pass through the hand controller's own program. */
export const throughController = ({ path }: World): boolean =>
  path === 'controller-serial' || path === 'controller-usb';

/** Whether something that happens to a share of sound or broken set-ups happens in this one; the same each time it is asked. */
export const falls = ({ luck }: World, what: string, share = 0.5): boolean =>
  randomFrom(`${what} ${luck}`).chance(share);
