/** Turns what a database or disk reports into a StoreError with a sentence fit for a member. */
import { accessSync, constants, existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { StoreError } from './store.js';

type Code = StoreError['code'];

const STILL_WORKS = 'What needs no saved sites, gear, walks or reminders still works.';

const MESSAGES: Readonly<Record<Exclude<Code, 'store-limit'>, string>> = {
  'store-unavailable': `My notebook cannot be reached just now. ${STILL_WORKS} Please try again in a few minutes.`,
  'store-full': `My notebook has no room left on its disk, so nothing new can be saved; what was saved before is safe. ${STILL_WORKS} Please tell whoever runs me.`,
  'store-read-only': `My notebook cannot be written just now, so nothing new can be saved. ${STILL_WORKS} Please tell whoever runs me.`,
  'store-locked': 'My notebook is busy with something else, and nothing was saved. Please try again in a minute.',
  'store-damaged': `My notebook's file is damaged. ${STILL_WORKS} Please tell whoever runs me: a backup has to be brought back.`,
};

const FOR_THE_OPERATOR: Readonly<Record<Code, string>> = {
  'store-unavailable': 'the store cannot be reached',
  'store-full': 'no room is left on its disk',
  'store-read-only': 'its file or disk cannot be written',
  'store-locked': 'something else keeps it busy',
  'store-damaged': 'its file is damaged: put a backup back',
  'store-limit': 'more is kept than may be',
};

/** "store-full: no room is left on its disk". */
export const storeTrouble = ({ code }: StoreError): string => `${code}: ${FOR_THE_OPERATOR[code]}`;

export const storeError = (code: Exclude<Code, 'store-limit'>, cause?: unknown): StoreError =>
  new StoreError(code, MESSAGES[code], { cause });

const codeOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** Primary result codes of SQLite's documentation ("Result and Error Codes"); extended ones carry them in their low byte. */
const SQLITE_CODES: Readonly<Record<number, Exclude<Code, 'store-limit'>>> = {
  5: 'store-locked',
  6: 'store-locked',
  8: 'store-read-only',
  11: 'store-damaged',
  13: 'store-full',
  26: 'store-damaged',
};

const sqliteCode = (error: unknown): Exclude<Code, 'store-limit'> | undefined =>
  typeof error === 'object' && error !== null && 'errcode' in error && typeof error.errcode === 'number'
    ? SQLITE_CODES[error.errcode & 0xff]
    : undefined;

const nearestExisting = (folder: string): string => {
  const above = dirname(folder);
  return existsSync(folder) || above === folder ? folder : nearestExisting(above);
};

/** A full or read-only disk often shows as a plain input/output error: look at the disk itself. Null where nothing is wrong with it. */
export const diskTrouble = (given: string): Exclude<Code, 'store-limit'> | null => {
  const folder = nearestExisting(given);
  try {
    accessSync(folder, constants.W_OK);
  } catch (error) {
    return ['EROFS', 'EACCES', 'EPERM'].includes(codeOf(error)) ? 'store-read-only' : 'store-unavailable';
  }
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize < 64 * 1024 ? 'store-full' : null;
  } catch {
    return null;
  }
};

/** `folder` holds the database file. */
export const sqliteFailure = (error: unknown, folder: string): StoreError => {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  if (code === 'ENOSPC') return storeError('store-full', error);
  if (code === 'EROFS') return storeError('store-read-only', error);
  return storeError(sqliteCode(error) ?? diskTrouble(folder) ?? 'store-unavailable', error);
};

/** SQLSTATE codes: PostgreSQL documentation, appendix A. */
export const postgresFailure = (error: unknown): StoreError => {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  if (code === '53100') return storeError('store-full', error);
  if (code === '25006') return storeError('store-read-only', error);
  // Lock not available, deadlock, serialization failure, cancelled by a time-out.
  if (['55P03', '40P01', '40001', '57014'].includes(code)) return storeError('store-locked', error);
  if (['XX001', 'XX002'].includes(code)) return storeError('store-damaged', error);
  return storeError('store-unavailable', error);
};

export const isBusy = (error: unknown): boolean => sqliteCode(error) === 'store-locked';
