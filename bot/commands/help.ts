/** `help`: the list of commands, or one command in full; made from the declarations themselves. */
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { defineCommand, optional, text, type Command, type OptionSpec } from './core/command.js';
import { bareOption, unknownCommand } from './core/grammar.js';

const range = (spec: OptionSpec): string => {
  if (spec.choices !== undefined) return ` One of ${spec.choices.join(', ')}.`;
  return spec.min === undefined ? '' : ` From ${spec.min} to ${spec.max}.`;
};

const oneCommand = (command: Command): Outcome =>
  reply({
    title: command.name,
    summary: command.summary,
    facts: [
      ...Object.entries(command.options).map(([name, spec]) => ({
        label: `${name}:`,
        value: `${spec.description}.${range(spec)}${spec.required ? '' : ' Optional.'}${name === bareOption(command) ? ` "${name}:" itself may be left out.` : ''}`,
      })),
      ...command.examples.map((example) => ({ label: 'Example', value: example })),
    ],
    notes: command.access === 'manager' ? ["For those who may change the club's settings."] : [],
    pointsAt: NOWHERE,
    data: {
      command: command.name,
      summary: command.summary,
      options: Object.keys(command.options),
      examples: command.examples,
    },
  });

export const help = defineCommand({
  name: 'help',
  summary: 'What can be asked, and how',
  options: { command: optional(text('One command, to see its options', { complete: 'command', maxLength: 40 })) },
  bare: 'command',
  examples: ['help', 'help altitude'],
  run: async ({ commands }, { options }): Promise<Outcome> => {
    if (options.command !== undefined) {
      const wanted = options.command.toLowerCase();
      const command = commands.find(({ name }) => name === wanted);
      return command === undefined ? unknownCommand(options.command, commands) : oneCommand(command);
    }
    return reply({
      title: 'Pierhand',
      summary: 'Answers for the night and help with mounts that will not connect.',
      facts: commands.map(({ name, summary }) => ({ label: name, value: summary })),
      notes: [
        'A question is a name, then what it is about, then options: altitude Vega at:"tonight 22:30" site:Cork. Plain words will often do. More on one: help altitude.',
        'Never point at the Sun without a proper filter on the front; ask sun first.',
      ],
      pointsAt: NOWHERE,
      data: { commands: commands.map(({ name }) => name) },
    });
  },
});
