/** Sends the list of commands to Discord when it has changed since last time, and only then. */
import { createHash } from 'node:crypto';
import { Routes } from 'discord-api-types/v10';
import type { REST } from 'discord.js';
import type { Store } from '../../../store/store.js';
import { persist } from '../answer/respond.js';
import type { CommandPayload } from './command-payloads.js';

interface Registration {
  readonly rest: REST;
  readonly notes: Store['notes'];
  readonly applicationId: string;
  /** One server while developing; null: everywhere. */
  readonly guildId: string | null;
  /** Which Discord this is, so that a proxy or test server's list is not taken for the real one's. */
  readonly apiUrl: string;
}

/** Returns whether anything was sent. Rejects with what Discord answered. */
export const registerCommands = async (
  registration: Registration,
  payloads: readonly CommandPayload[],
): Promise<boolean> => {
  const { rest, notes, applicationId, guildId, apiUrl } = registration;
  const body = [...payloads];
  const hash = createHash('sha256').update(JSON.stringify(body)).digest('hex');
  const key = `discord:commands:${new URL(apiUrl).host}:${applicationId}:${guildId ?? 'everywhere'}`;
  if ((await notes.get(key)) === hash) return false;
  const route =
    guildId === null
      ? Routes.applicationCommands(applicationId)
      : Routes.applicationGuildCommands(applicationId, guildId);
  await persist(() => rest.put(route, { body }), [500, 2000]);
  await notes.set(key, hash);
  return true;
};
