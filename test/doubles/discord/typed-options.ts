/** Option values as text into the kinds a registered command takes, as Discord's own client would send them. */
import { ApplicationCommandOptionType as Kind } from 'discord-api-types/v10';
import type { CommandPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import type { OptionValue } from './people-and-files.js';
import type { Person } from './world.js';

/** @param personNamed for options that take a member: "@Tamsin" or "Tamsin" */
export const typedOptions = (
  payload: CommandPayload | undefined,
  raw: ReadonlyMap<string, string>,
  personNamed: (name: string) => Person,
): Record<string, OptionValue> =>
  Object.fromEntries(
    [...raw].map(([name, value]): [string, OptionValue] => {
      switch (payload?.options?.find((option) => option.name === name)?.type) {
        case Kind.Integer:
        case Kind.Number:
          return [name, Number(value)];
        case Kind.Boolean:
          return [name, /^(y|true|on|1)/iu.test(value)];
        case Kind.User:
          return [name, personNamed(value.replace(/^@/u, ''))];
        default:
          return [name, value];
      }
    }),
  );
