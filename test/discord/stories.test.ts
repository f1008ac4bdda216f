/** The two whole stories on Discord: slash commands, buttons and threads against the double, a bot started anew on the same store. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ApplicationCommandType } from 'discord-api-types/v10';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { parseLine } from '../../bot/commands/core/grammar.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { openStore } from '../../bot/store/open-store.js';
import type { Member } from '../doubles/discord/members.js';
import { typedOptions } from '../doubles/discord/typed-options.js';
import type { Channel, Message } from '../doubles/discord/world.js';
import { connectionWalk } from '../stories/connection-walk.js';
import { lookThrough } from '../stories/look-through.js';
import { memberLife } from '../stories/member-life.js';
import { EVENING, type Actor, type Shown, type Stage } from '../stories/stage.js';
import { labelsOn } from './labels-on.js';
import { start, startBot, type Started } from './start-bot.js';

interface Seen extends Shown {
  readonly message: Message;
}

let dataFolder: string;
let at: Started;
/** The bot as it runs now; `at` holds the double, and the first of them. */
let now: Pick<Started, 'bot' | 'store'>;
let clockUtcMs = EVENING;

beforeEach(async () => {
  dataFolder = mkdtempSync(path.join(tmpdir(), 'pierhand-discord-'));
  clockUtcMs = EVENING;
  at = await start({ store: await openStore({ dataFolder }), now: () => clockUtcMs });
  now = at;
});
afterEach(async () => {
  expect(at.double.rest.violations).toEqual([]);
  await now.bot.stop();
  await now.store.close();
  await at.double.close();
  rmSync(dataFolder, { recursive: true, force: true });
});

const plain = (text: string): string => text.replace(/\\([^\p{L}\p{N}\s])/gu, '$1');
const wordsOn = ({ content, embeds }: Message): string =>
  plain(
    [
      content,
      ...embeds.flatMap(({ title, description, fields = [] }) => [
        title,
        description,
        ...fields.map(({ name, value }) => `${name}: ${value}`),
      ]),
    ]
      .filter((part) => part !== undefined && part !== '')
      .join('\n'),
  );

const person = (name: string): Actor<Seen> & { readonly self: () => Member } => {
  const self = (): Member => at.double.member(name);
  const seenBy = (message: Message): Seen => ({
    message,
    text: wordsOn(message),
    labels: labelsOn(message),
    isPrivate: message.onlyFor === self().person.id,
  });
  /** A walk goes on in its thread, where there is one. */
  const placeFor = (command: string): Channel =>
    (command === 'triage' ? [...at.double.world.channels.values()].find(({ type }) => type === 11) : undefined) ??
    at.double.channel;
  return {
    name,
    self,
    get memberId() {
      return `discord:${self().person.id}`;
    },
    asks: async (line) => {
      const parsed = parseLine(line, allCommands);
      if ('problem' in parsed) throw new Error(parsed.message);
      const {
        command: { name: command },
        raw,
      } = parsed;
      const payload = at.double.world.commands
        .get('everywhere')
        ?.find((known) => known.name === command && known.type === ApplicationCommandType.ChatInput);
      const { message } = await self().slash(
        command,
        typedOptions(payload, raw, (who) => at.double.member(who).person),
        { in: placeFor(command) },
      );
      // The thread that a message opens has the message's id.
      const thread = at.double.world.channels.get(message.id);
      return seenBy((thread === undefined ? undefined : self().sees(thread).at(-1)) ?? message);
    },
    picks: async ({ message }, label) => seenBy((await self().press(message, label)).message),
    wasTold: async () => self().sees('direct').map(wordsOn),
  };
};

const stage: Stage<Seen> = {
  helper: person('Odalys'),
  member: person('Tamsin'),
  get clubId() {
    return `discord:${at.double.guild.id}`;
  },
  store: () => now.store,
  get dataFolder() {
    return dataFolder;
  },
  restart: async () => {
    await now.bot.stop();
    await now.store.close();
    now = await startBot(at.double, { store: await openStore({ dataFolder }), now: () => clockUtcMs });
    await at.double.waitFor(() => now.bot.health().ok, 'the second bot');
  },
  clockTo: async (utcMs) => {
    clockUtcMs = utcMs;
    await lookThrough(now.store, now.bot, () => clockUtcMs);
  },
};

it('a connection walk, by a helper for another member, from the first message to the verified cure, across a restart', async () => {
  const { person: tamsin } = at.double.member('Tamsin');
  await connectionWalk(stage);
  const threads = [...at.double.world.channels.values()].filter(({ type }) => type === 11);
  expect(threads).toHaveLength(1);
  expect([...(threads[0]?.threadMembers ?? [])]).toContain(tamsin.id);
});

it('a member adds a site by place name, sets a horizon, is reminded, exports and forgets', () => memberLife(stage));
