import { describe, expect, it } from 'vitest';
import {
  choice,
  defineCommand,
  flag,
  integer,
  member,
  number,
  optional,
  text,
} from '../../bot/commands/core/command.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { triage } from '../../bot/commands/triage/triage.js';
import { commandPayloads } from '../../bot/platforms/discord/connect/command-payloads.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import { requestFaults } from '../doubles/discord/request-rules.js';

const sample = defineCommand({
  name: 'sample',
  summary: 'Everything a command may take',
  options: {
    colour: optional(choice('Which', ['red', 'blue'])),
    much: optional(number('How much', { min: -1.5, max: 90 })),
    many: optional(integer('How many', { min: 1, max: 9 })),
    really: optional(flag('Whether')),
    who: optional(member('Whom')),
    what: text('What', { maxLength: 50, complete: 'target' }),
  },
  examples: ['sample x'],
  run: async () => reply({ pointsAt: NOWHERE, title: '', summary: '' }),
});
const clubSite = defineCommand({
  name: 'clubsite',
  summary: "Set the club's site",
  options: {},
  access: 'manager',
  examples: ['clubsite'],
  run: async () => reply({ pointsAt: NOWHERE, title: '', summary: '' }),
});

describe('commands as Discord registers them', () => {
  it("every real command fits Discord's published schema, unknown keys refused", () => {
    const commands = allCommands.includes(triage) ? allCommands : [...allCommands, triage];
    expect(requestFaults('PUT', '/applications/1/commands', commandPayloads(commands), 0)).toEqual([]);
  });

  it('types every option, required ones first', () => {
    expect(commandPayloads([sample])[0]).toEqual({
      type: 1,
      name: 'sample',
      description: 'Everything a command may take',
      integration_types: [0, 1],
      contexts: [0, 1, 2],
      options: [
        {
          type: 3,
          name: 'what',
          description: 'What',
          required: true,
          min_length: 1,
          max_length: 50,
          autocomplete: true,
        },
        {
          type: 3,
          name: 'colour',
          description: 'Which',
          required: false,
          choices: [
            { name: 'red', value: 'red' },
            { name: 'blue', value: 'blue' },
          ],
        },
        { type: 10, name: 'much', description: 'How much', required: false, min_value: -1.5, max_value: 90 },
        { type: 4, name: 'many', description: 'How many', required: false, min_value: 1, max_value: 9 },
        { type: 5, name: 'really', description: 'Whether', required: false },
        { type: 6, name: 'who', description: 'Whom', required: false },
      ],
    });
  });

  it("offers a manager's command in servers alone, to those with Manage Server", () => {
    expect(commandPayloads([clubSite])[0]).toMatchObject({
      contexts: [0],
      integration_types: [0],
      default_member_permissions: 32,
    });
  });

  it('adds the two menu entries once there is a walk to start', () => {
    expect(commandPayloads([sample]).map(({ type }) => type)).toEqual([1]);
    expect(commandPayloads([sample, triage]).slice(2)).toEqual([
      { type: 2, name: 'Help with connection', integration_types: [0, 1], contexts: [0, 1, 2] },
      { type: 3, name: 'Help with connection', integration_types: [0, 1], contexts: [0, 1, 2] },
    ]);
  });
});
