/** What the bot remembers. One interface; SQLite and PostgreSQL stand behind it; nothing else may be stored. */
import type { MountKind } from '../pointing/mount/mount.js';
import type { UtcMs } from '../sky/types.js';
import type { Json } from '../reply/reply.js';

/** A store that cannot answer now. `message` is fit for a member; the cause is for the log. */
export class StoreError extends Error {
  constructor(
    readonly code:
      'store-unavailable' | 'store-full' | 'store-read-only' | 'store-locked' | 'store-damaged' | 'store-limit',
    message: string,
    options?: { cause?: unknown },
  ) {
    super(message, options);
  }
}

export interface Owner {
  readonly kind: 'member' | 'club';
  readonly id: string;
}

export interface HorizonPoint {
  readonly azimuthDeg: number;
  readonly altitudeDeg: number;
}

/** How dark its sky is without Moon or twilight. */
export type SiteSky = 'city' | 'suburb' | 'country' | 'dark';

export interface StoredSite {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  readonly zone: string;
  readonly horizon: readonly HorizonPoint[] | null;
  /** Where its owner has said. */
  readonly sky?: SiteSky;
  /** The one used when none is named. */
  readonly isDefault: boolean;
}

export interface Gear {
  readonly mount: MountKind | null;
  /** A path id of the fault model. */
  readonly connection: string | null;
  readonly system: 'windows' | 'macos' | 'linux' | 'phone' | null;
  /** Top speeds in degrees a second: right ascension or azimuth, then declination or altitude. */
  readonly speeds: { readonly primaryDegPerS: number; readonly secondaryDegPerS: number } | null;
  /**
   * How far past level a German mount's counterweight bar may turn, in degrees: west, following the stars; east, against them,
   * so that a target may be taken on its later side of the pier so long before the meridian.
   */
  readonly limits: { readonly eastDeg: number; readonly westDeg: number } | null;
  /** Of the telescope, clear, in millimetres. */
  readonly apertureMm: number | null;
}

export interface StoredWalk {
  readonly id: string;
  readonly clubId: string;
  /** Whose mount it is about. */
  readonly memberId: string;
  /** Who started it for them, or null. */
  readonly helperId: string | null;
  readonly platform: string;
  readonly channelId: string;
  /** The triage engine's own state. */
  readonly state: Json;
  readonly updatedUtcMs: UtcMs;
  readonly endedUtcMs: UtcMs | null;
  /** Begun by another, and the member has not answered in it yet; absent otherwise. */
  readonly awaitsMember?: true;
  /** Who asks to help and waits for the member's leave. */
  readonly askedHelperId?: string;
}

export interface NewReminder {
  readonly memberId: string;
  readonly clubId: string;
  readonly platform: string;
  readonly channelId: string;
  /** `member`: to the member alone; `channel`: to the channel. */
  readonly to: 'member' | 'channel';
  readonly kind: 'altitude' | 'horizon' | 'transit' | 'set' | 'hour' | 'dark' | 'sunrise';
  readonly dueUtcMs: UtcMs;
  /** After this instant it has lost its sense and is dropped (null: never); a sunrise warning is not dropped but said to be missed. */
  readonly staleUtcMs: UtcMs | null;
  /** For standing reminders: how to find the next one. */
  readonly repeat: Json | null;
  /** What is said, bounded plain text. */
  readonly text: string;
}
export interface Reminder extends NewReminder {
  readonly id: string;
}

export interface ClaimedReminder extends Reminder {
  /** How often it was claimed since it came due, this time included. */
  readonly attempts: number;
}

/** Every method may reject with StoreError and with nothing else. */
export interface Store {
  readonly sites: {
    list(owner: Owner): Promise<readonly StoredSite[]>;
    /** Adds or replaces by name (case-insensitive). Limit: 20 an owner ('store-limit'). */
    put(owner: Owner, site: StoredSite): Promise<void>;
    remove(owner: Owner, name: string): Promise<boolean>;
    rename(owner: Owner, name: string, newName: string): Promise<boolean>;
    setDefault(owner: Owner, name: string): Promise<boolean>;
  };
  readonly gear: {
    get(memberId: string): Promise<Gear | null>;
    put(memberId: string, gear: Gear): Promise<void>;
  };
  readonly walks: {
    /**
     * Makes it the newest of its people in its club: where another has its time or a later one, a millisecond after that.
     * Limit: the newest 20 of a member stay, and of a helper the newest 20 that wait for their members.
     */
    put(walk: StoredWalk): Promise<void>;
    get(id: string): Promise<StoredWalk | null>;
    /**
     * The newest walk not ended in this club about this member, or that they help with; none that another began and they
     * have not answered. With `helperId`: the newest about this member with that helper.
     */
    active(clubId: string, memberId: string, helperId?: string): Promise<StoredWalk | null>;
    /** The newest walk not ended in this club that another began for this member and that they have not answered. */
    waiting(clubId: string, memberId: string): Promise<StoredWalk | null>;
    /** Removes walks last touched before the instant; returns how many. */
    purge(beforeUtcMs: UtcMs): Promise<number>;
  };
  readonly outcomes: {
    /** Counts one confirmed cause for the club, once a member, cause and month (UTC); false: counted before. */
    add(clubId: string, faultId: string, memberId: string, nowUtcMs: UtcMs): Promise<boolean>;
    /** Forgets what the club has counted; returns how many causes. Who was counted this month is not counted again. */
    reset(clubId: string): Promise<number>;
    /** Removes the marks of who was counted in months before that of the instant; returns how many. */
    purgeMarks(nowUtcMs: UtcMs): Promise<number>;
    counts(clubId: string): Promise<Readonly<Record<string, number>>>;
  };
  readonly reminders: {
    add(reminder: NewReminder): Promise<Reminder>;
    list(memberId: string): Promise<readonly Reminder[]>;
    cancel(memberId: string, id: string): Promise<boolean>;
    /** Those said to a channel, whoever set them. */
    listChannel(platform: string, channelId: string): Promise<readonly Reminder[]>;
    /** For managers: cancels one said to a channel, whoever set it. */
    cancelChannel(platform: string, channelId: string, id: string): Promise<boolean>;
    /**
     * Takes up to `limit` due reminders, earliest first, for this process alone until `leaseUtcMs`; of the given
     * platforms only, where any are given.
     */
    claimDue(
      nowUtcMs: UtcMs,
      leaseUtcMs: UtcMs,
      claimant: string,
      limit: number,
      platforms?: readonly string[],
    ): Promise<readonly ClaimedReminder[]>;
    /** Those that come again, of these platforms. */
    listStanding(platforms: readonly string[]): Promise<readonly Reminder[]>;
    /** Moves one that is still due at `fromUtcMs` and that no process has taken; false: it was not so. */
    reschedule(id: string, fromUtcMs: UtcMs, dueUtcMs: UtcMs): Promise<boolean>;
    /** Could not be said: free for any process again from the instant on. */
    retryLater(id: string, claimant: string, notBeforeUtcMs: UtcMs): Promise<boolean>;
    /** Sent or dropped: gone, or moved to `nextDueUtcMs`. */
    settle(id: string, claimant: string, nextDueUtcMs: UtcMs | null): Promise<boolean>;
  };
  /**
   * Small values a platform keeps: sync token, registered-commands hash, direct room ids. A note about one member has a
   * key that ends with `:` and the member's id (with or without its platform), so that `forgetMember` finds it.
   */
  readonly notes: {
    get(key: string): Promise<string | null>;
    set(key: string, value: string): Promise<void>;
    /** All whose key begins so, in order of their keys. */
    list(prefix: string): Promise<readonly { readonly key: string; readonly value: string }[]>;
    remove(key: string): Promise<void>;
  };
  /** Platform events already answered, so that each is answered once across restarts and processes. */
  readonly events: {
    /** True the first time a key is claimed, false ever after (kept for a day at least). */
    claim(key: string, nowUtcMs: UtcMs): Promise<boolean>;
    /** Marks a claimed key as answered. */
    answered(key: string): Promise<void>;
    /** Claimed but never marked answered (the process died between), claimed at or after the instant. */
    unanswered(prefix: string, sinceUtcMs: UtcMs): Promise<readonly string[]>;
    /** Removes keys claimed before the instant, answered or not; returns how many. */
    purge(beforeUtcMs: UtcMs): Promise<number>;
  };
  /** Everything kept about a member, as JSON for `mydata`. */
  exportMember(memberId: string): Promise<Json>;
  /**
   * Removes every row of a member in one transaction; returns how many. What belongs to others stays without the
   * member's name: walks they helped with, and standing reminders they set for a channel.
   */
  forgetMember(memberId: string): Promise<number>;
  /** Rejects when the store cannot answer: for the health check. */
  ping(): Promise<void>;
  close(): Promise<void>;
}
