/** Runs the Discord double by itself, so that the bot can be tried as a Discord bot without an account: `npm run discord:double`. */
import { createInterface } from 'node:readline';
import { ApplicationCommandType } from 'discord-api-types/v10';
import { parseLine } from '../../../bot/commands/core/grammar.js';
import { allCommands } from '../../../bot/commands/all-commands.js';
import { isProblem } from '../../../bot/ground/problem.js';
import { offeredOn } from '../../../bot/platforms/discord/write/write-choices.js';
import { startDiscordDouble } from './discord-double.js';
import type { Suggestions } from './members.js';
import { typedOptions } from './typed-options.js';
import type { Message } from './world.js';

const PORT = 8790;
const double = await startDiscordDouble({ port: PORT, token: 'a-made-up-token' }).catch((error: unknown) => {
  const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
  if (!isTaken) throw error;
  process.stderr.write(
    `Port ${PORT} is taken here: does another stand-in still run? End it with "quit", then start this again.\n`,
  );
  return process.exit(2);
});

process.stdout.write(`A stand-in for Discord listens on ${double.apiUrl}. In another terminal start the bot on it:

  DISCORD_TOKEN=${double.token} DISCORD_API_URL=${double.apiUrl} PIERHAND_SITE=52.71,0.12 npm start

Then type here what a member would:
  up NGC 7331             ask (every command of the bot; where it has several options name each, as Discord does:
                          site action:add name:home position:52.7,0.1)
  2                       press the second choice of the last answer
  up target: ngc 73 ?     what would be suggested while typing (end with a question mark)
  as Tamsin               be another member; direct: write to the bot alone; channel: back to the club's channel
  manager Ines            be a member who may change the club's settings
  help-with Tamsin        the entry "Help with connection" in that member's menu
  quit
What the bot says unasked (a reminder, a warning) appears by itself. Several processes: start each with DISCORD_SHARD_COUNT=2, the same
DATABASE_URL, and its own DISCORD_SHARD_RANGE, 0 or 1.
`);

let who = 'Odalys';
let where: 'direct' | 'channel' = 'channel';
let last: Message | undefined;

const plain = (text: string): string => text.replace(/\\([^\p{L}\p{N}\s])/gu, '$1');

const shown = new Set<string>();
let isAnswering = false;

const show = (message: Message): string => {
  shown.add(message.id);
  const { content, embeds, attachments, onlyFor } = message;
  return [
    `${onlyFor === null ? '' : `(only ${who} sees this) `}${plain(content)}`,
    ...embeds.flatMap(({ author, title, description, fields = [], footer }) => [
      `[${author?.name ?? ''}] ${plain(title ?? '')}`,
      plain(description ?? ''),
      ...fields.map(({ name, value }) => `  ${plain(name)}: ${plain(value)}`),
      ...(footer === undefined ? [] : [footer.text]),
    ]),
    ...attachments.map(
      ({ filename, description, bytes }) => `  ${filename}, ${Math.ceil(bytes.length / 1024)} kB: ${description}`,
    ),
    ...offeredOn({ components: message.components as never }).map(({ label }, index) => `  ${index + 1}. ${label}`),
  ]
    .filter((line) => line.trim() !== '')
    .join('\n');
};

const registered = (command: string) =>
  double.world.commands
    .get('everywhere')
    ?.find(({ name, type }) => name === command && type === ApplicationCommandType.ChatInput);

type Asked = Promise<{ readonly messages: readonly Message[]; readonly message: Message }>;

const seen = async (asked: Asked): Promise<string> => {
  const { messages, message } = await asked;
  last = messages.at(-1) ?? message;
  const threads = [...double.world.channels.values()].filter(({ id }) => id === message.id);
  const inThread = threads.flatMap(({ id, name }) =>
    double
      .member(who)
      .sees({ ...double.channel, id })
      .map((step) => {
        last = step;
        return `— thread "${name}" —\n${show(step)}`;
      }),
  );
  return [...messages.map(show), ...inThread].join('\n');
};

const speakAs = (name: string): string => {
  who = name || who;
  return `You are ${who}.`;
};

const speakAsManager = (name: string): string => {
  const { person } = double.member(name || 'Ines', { isManager: true });
  if (!person.isManager) return `${person.name} has been an ordinary member here; name somebody new.`;
  who = person.name;
  return `You are ${who}, who may change the club's settings.`;
};

const writeIn = (place: typeof where): string => {
  where = place;
  return `You write ${where === 'direct' ? 'to the bot alone' : 'in the channel'}.`;
};

const placeNow = () => ({ in: where === 'direct' ? ('direct' as const) : double.channel });

const pressed = async (message: Message, number: number): Promise<string> => {
  const offered = offeredOn({ components: message.components as never })[number - 1];
  return offered === undefined ? 'There is no such choice.' : seen(double.member(who).press(message, offered.label));
};

/** A command; with a question mark at the end, what would be suggested for its last option. */
const asked = async (line: string): Promise<string> => {
  const member = double.member(who);
  const asksSuggestions = line.endsWith('?');
  const parsed = parseLine(asksSuggestions ? line.slice(0, -1) : line, allCommands);
  if (isProblem(parsed)) return parsed.message;
  const { name: command } = parsed.command;
  if (double.world.commands.size === 0)
    return double.gateway.liveSessions() === 0
      ? 'The bot is not here yet: start it as told above.'
      : 'The bot is connected, but its commands are not here: it is sending them, or they were refused (then a line above says why).';
  const options = typedOptions(registered(command), parsed.raw, (name) => double.member(name).person);
  if (!asksSuggestions) return seen(member.slash(command, options, placeNow()));
  const typing = [...parsed.raw].at(-1);
  if (typing === undefined) return 'Name an option and begin its value before the question mark.';
  const { choices }: Suggestions = await member.complete(command, typing[0], typing[1], options, placeNow());
  return choices.map(({ name }) => `  ${name}`).join('\n') || '  (nothing to suggest)';
};

/** What is typed here that is no command of the bot. */
const OWN_WORDS = new Map<string, (rest: string) => string | Promise<string>>([
  ['as', speakAs],
  ['manager', speakAsManager],
  ['direct', () => writeIn('direct')],
  ['channel', () => writeIn('channel')],
  [
    'help-with',
    (name: string) => seen(double.member(who).menu('Help with connection', double.member(name), placeNow())),
  ],
]);

const answer = async (line: string): Promise<string> => {
  const [word = '', rest = ''] = /^(\S+)\s*(.*)$/u.exec(line)?.slice(1) ?? [];
  const own = OWN_WORDS.get(word);
  if (own !== undefined) return own(rest.trim());
  return /^\d+$/u.test(line) && last !== undefined ? pressed(last, Number(line)) : asked(line);
};

/** What the bot has said that no question asked for, each once. */
const unasked = (): string[] =>
  [...double.world.messages.values()]
    .filter(
      ({ id, authorId, interactionId, isDeleted }) =>
        authorId === double.world.applicationId && interactionId === null && !isDeleted && !shown.has(id),
    )
    .map((message) => {
      const { name } = double.world.channels.get(message.channelId) ?? { name: 'a channel' };
      return `— unasked, in "${name}" —\n${show(message)}`;
    });

const tellRefused = (): void => {
  for (const violation of double.rest.violations.splice(0))
    process.stdout.write(`! Discord would refuse: ${violation}\n`);
};

const input = createInterface({ input: process.stdin, prompt: '> ' });
let wasReady = false;
const watch = setInterval(() => {
  if (!isAnswering) tellRefused();
  if (wasReady && !isAnswering) for (const said of unasked()) process.stdout.write(`\n${said}\n`);
  if (wasReady || double.world.commands.size === 0) return;
  wasReady = true;
  process.stdout.write('\nThe bot has connected and registered its commands.\n');
  input.prompt();
}, 200);
for await (const line of input) {
  if (line.trim() === 'quit') break;
  isAnswering = true;
  if (line.trim() !== '')
    process.stdout.write(
      `${await answer(line.trim()).catch((error: unknown) => (error instanceof Error ? error.message : String(error)))}\n`,
    );
  isAnswering = false;
  tellRefused();
  input.prompt();
}
clearInterval(watch);
await double.close();
process.exit(0);
