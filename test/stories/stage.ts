/** What a story needs of a platform: two members who ask, pick and read there, and a bot that can be stopped and started on its store. */
import type { Store } from '../../bot/store/store.js';

export interface Shown {
  /** All that the one who asked can read, as they read it. */
  readonly text: string;
  /** What can be picked, in order. */
  readonly labels: readonly string[];
  /** Whether nobody but the one who asked can read it. */
  readonly isPrivate: boolean;
}

export interface Actor<S extends Shown = Shown> {
  readonly memberId: string;
  readonly name: string;
  /** A line of the text grammar, without prefix. */
  readonly asks: (line: string) => Promise<S>;
  readonly picks: (shown: S, label: string) => Promise<S>;
  /** What the bot has said to this member alone without being asked, oldest first. */
  readonly wasTold: () => Promise<readonly string[]>;
}

export interface Stage<S extends Shown = Shown> {
  readonly helper: Actor<S>;
  readonly member: Actor<S>;
  readonly clubId: string;
  /** The store of the bot as it runs now. */
  readonly store: () => Store;
  readonly dataFolder: string;
  /** Stops the bot and starts another on the same store. */
  readonly restart: () => Promise<void>;
  /** Sets the bot's one clock, and waits until the reminders have been looked through. */
  readonly clockTo: (utcMs: number) => Promise<void>;
}

/** An evening at Alice Springs, UTC+9:30, whatever the calendar says; past, as a real server dates its own events. */
export const EVENING = Date.UTC(2025, 0, 8, 10, 0);

/** For comparing what is read with what was meant, whatever marks a platform puts around words. */
export const bare = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');

/** The number a member types for a label. */
export const numberOf = ({ labels, text }: Shown, label: string): number => {
  const index = labels.indexOf(label);
  if (index < 0) throw new Error(`"${label}" is not offered with: ${text}`);
  return index + 1;
};
