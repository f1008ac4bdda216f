/** What a worker process is told to do, and what it tells its parent. */
import type { StorePlace } from '../../bot/store/open-store.js';

export interface WorkerTask {
  readonly place: StorePlace;
  /** Numbers of this run begin here, so that no two runs write the same. */
  readonly firstNumber: number;
  readonly writes: boolean;
  readonly delivers: boolean;
  readonly leaseMs: number;
  /** How long the chat server takes. */
  readonly serverMs: number;
}

/** What the parent is told, one line each: a write begins, a write was acknowledged with its result, the store is open. */
export type Told = { readonly told: 'open' } | { readonly told: 'begins' | 'done'; readonly write: Write };
export type Write =
  | { readonly kind: 'outcome' | 'walk' | 'note' | 'fill' | 'forget'; readonly number: number }
  | { readonly kind: 'event'; readonly number: number; readonly won?: boolean }
  | { readonly kind: 'reminder'; readonly number: number; readonly key?: string };

/** Where workers count outcomes. */
export const CLUB_OF_WORKERS = 'discord:900000000000000001';
export const SITES_FILLED = 3;
/** So many processes write at once; each run has its own hundred thousand numbers. */
export const LANES = 2;
export const NUMBERS_A_RUN = 100_000;
export const laneOf = (number: number): number => Math.floor(number / NUMBERS_A_RUN) % LANES;
export const filledMember = (number: number): string => `discord:filled-${number}`;
export const remindedMember = (number: number): string => `discord:reminded-${number}`;
