/** The schema's history, oldest first; version N is the state after the first N steps. */
import { firstTables } from './0001-first-tables.js';
import { reminderRetries } from './0002-reminder-retries.js';
import { consent } from './0003-consent.js';
import { gearSpeeds } from './0004-gear-speeds.js';
import { siteSky } from './0005-site-sky.js';
import { gearAperture } from './0006-gear-aperture.js';
import type { Migration } from './migration.js';

export const MIGRATIONS: readonly Migration[] = [
  firstTables,
  reminderRetries,
  consent,
  gearSpeeds,
  siteSky,
  gearAperture,
];
