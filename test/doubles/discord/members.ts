/** Members who ask: each method does what a person does in Discord and returns what that person then sees. */
import type { GatewayServer } from './gateway-server.js';
import {
  commonParts,
  menuOnMessage,
  menuOnPerson,
  newInteraction,
  offeredCommand,
  slashData,
} from './interaction-payloads.js';
import { upload, type OptionValue, type SentFile } from './people-and-files.js';
import { pressData, submitData } from './press-payloads.js';
import { messagePayload } from './rest-message.js';
import type { RestLog } from './rest-server.js';
import { snowflake } from './snowflake.js';
import {
  addMessage,
  directChannel,
  visibleTo,
  type Channel,
  type Interaction,
  type Message,
  type Person,
  type World,
} from './world.js';

export interface Where {
  readonly in?: Channel | 'direct';
  /** How long to wait for an answer; default 20,000. */
  readonly timeoutMs?: number;
  /** `quiet` (default): all has been said; `first`: the first thing that can be read (for load). */
  readonly until?: 'quiet' | 'first';
}

export interface Seen {
  readonly interactionId: string;
  /** 4 answered, 5 acknowledged first, 7 changed in place, 8 suggestions. */
  readonly firstResponseType: number;
  readonly firstResponseMs: number;
  /** From asking to the end of waiting. */
  readonly totalMs: number;
  /** What the member can read of the answer, in order. */
  readonly messages: readonly Message[];
  /** The last of them. */
  readonly message: Message;
}

export interface Suggestions {
  readonly choices: readonly { readonly name: string; readonly value: string }[];
  readonly afterMs: number;
}

export interface Member {
  readonly person: Person;
  readonly slash: (name: string, options?: Readonly<Record<string, OptionValue>>, where?: Where) => Promise<Seen>;
  readonly complete: (
    name: string,
    option: string,
    partial: string,
    others?: Readonly<Record<string, OptionValue>>,
    where?: Where,
  ) => Promise<Suggestions>;
  /** Presses a button, or picks from a select menu, by its label. */
  readonly press: (message: Message, label: string, where?: Where) => Promise<Seen>;
  /** Presses a button that opens a form, fills the form in by its fields' ids and sends it. */
  readonly fillIn: (
    message: Message,
    label: string,
    values: Readonly<Record<string, string | SentFile>>,
    where?: Where,
  ) => Promise<Seen>;
  readonly menu: (name: string, target: Member | Message, where?: Where) => Promise<Seen>;
  /** Writes an ordinary message (the bot, having no such intent, is not told). */
  readonly write: (text: string, channel: Channel, files?: readonly SentFile[]) => Message;
  readonly sees: (channel: Channel | 'direct') => readonly Message[];
}

export class NotAnswered extends Error {}

/**
 * Quiet for so many looks in a row, so long apart: the bot runs in the same process, and on a busy machine milliseconds pass in which
 * it had no turn.
 */
const QUIET_LOOKS = 6;
const LOOK_EVERY_MS = 10;

interface Asking {
  /** Discord's number for this kind of interaction. */
  readonly kind: number;
  readonly data: object;
  /** For the complaint where no answer comes. */
  readonly what: string;
  /** The message whose button, option or form it is. */
  readonly pressed?: Message;
}

export const createMember = (
  world: World,
  gateway: GatewayServer,
  log: RestLog,
  person: Person,
  usual: Channel,
): Member => {
  const channelOf = ({ in: where }: Where = {}): Channel =>
    where === 'direct' ? directChannel(world, person.id) : (where ?? usual);

  /**
   * Looks again after each request, and between them, as quiet makes no sound; with an interaction, after what answers it alone:
   * of a thousand who wait at once, each request must not wake all.
   */
  const until = async (
    done: () => boolean,
    timeoutMs: number,
    what: string,
    answering?: Interaction,
  ): Promise<void> => {
    const event = answering?.id ?? 'change';
    const end = Date.now() + timeoutMs;
    while (!done()) {
      const left = end - Date.now();
      if (left <= 0) throw new NotAnswered(`${person.name} got no answer to ${what} within ${timeoutMs} ms`);
      await new Promise<void>((resolve) => {
        const finish = (): void => {
          clearTimeout(timer);
          world.changes.off(event, finish);
          resolve();
        };
        const timer = setTimeout(finish, answering === undefined ? Math.min(left, LOOK_EVERY_MS) : left);
        world.changes.once(event, finish);
      });
    }
  };

  const readable = (interaction: Interaction): Message[] =>
    interaction.messageIds
      .flatMap((id) => world.messages.get(id) ?? [])
      .filter(
        (message) =>
          !message.isDeleted && !message.isPending && (message.onlyFor === null || message.onlyFor === person.id),
      );

  const ask = async (
    { kind, data, what, pressed }: Asking,
    channel: Channel,
    { timeoutMs = 20_000, until: end = 'quiet' }: Where,
  ): Promise<Seen> => {
    const interaction = newInteraction(world, person, channel, pressed?.id ?? null);
    const startedMs = performance.now();
    gateway.dispatch('INTERACTION_CREATE', channel.guildId, {
      ...commonParts(world, person, channel, interaction),
      type: kind,
      data,
      ...(pressed === undefined ? {} : { message: messagePayload(world, pressed) }),
    });
    const answered = (): boolean =>
      interaction.firstResponse !== null && (readable(interaction).length > 0 || interaction.firstResponse.type === 7);
    let quiet = { since: 0, looks: 0 };
    const isQuiet = (): boolean => {
      const same = log.underWay === 0 && quiet.since === log.lastMs;
      quiet = { since: log.lastMs, looks: same ? quiet.looks + 1 : 0 };
      return quiet.looks >= QUIET_LOOKS && Date.now() - log.lastMs >= QUIET_LOOKS * LOOK_EVERY_MS;
    };
    await until(
      () => answered() && (end === 'first' || isQuiet()),
      timeoutMs,
      what,
      end === 'first' ? interaction : undefined,
    );
    const messages = readable(interaction);
    const message = messages.at(-1) ?? pressed;
    if (interaction.firstResponse === null || message === undefined)
      throw new NotAnswered(`${person.name} sees no answer to ${what}`);
    return {
      interactionId: interaction.id,
      firstResponseType: interaction.firstResponse.type,
      firstResponseMs: interaction.firstResponse.afterMs,
      totalMs: performance.now() - startedMs,
      messages,
      message,
    };
  };

  return {
    person,
    slash: async (name, options = {}, where = {}) => {
      const channel = channelOf(where);
      const data = slashData(world, offeredCommand(world, person, channel, 1, name), options);
      return ask({ kind: 2, data, what: `/${name}` }, channel, where);
    },
    complete: async (name, option, partial, others = {}, where = {}) => {
      const channel = channelOf(where);
      const data = slashData(
        world,
        offeredCommand(world, person, channel, 1, name),
        { ...others, [option]: partial },
        option,
      );
      const interaction = newInteraction(world, person, channel);
      gateway.dispatch('INTERACTION_CREATE', channel.guildId, {
        ...commonParts(world, person, channel, interaction),
        type: 4,
        data,
      });
      await until(
        () => interaction.suggestions !== null,
        where.timeoutMs ?? 20_000,
        `typing in /${name}`,
        where.until === 'first' ? interaction : undefined,
      );
      return { choices: interaction.suggestions ?? [], afterMs: interaction.firstResponse?.afterMs ?? 0 };
    },
    press: async (message, label, where = {}) => {
      const channel = world.channels.get(message.channelId) ?? usual;
      const data = pressData(message, label);
      return ask({ kind: 3, data, what: `pressing ${label}`, pressed: message }, channel, where);
    },
    fillIn: async (message, label, values, where = {}) => {
      const channel = world.channels.get(message.channelId) ?? usual;
      const pressed = newInteraction(world, person, channel, message.id);
      gateway.dispatch('INTERACTION_CREATE', channel.guildId, {
        ...commonParts(world, person, channel, pressed),
        type: 3,
        data: pressData(message, label),
        message: messagePayload(world, message),
      });
      await until(() => pressed.firstResponse !== null, where.timeoutMs ?? 20_000, `pressing ${label}`);
      if (pressed.firstResponse?.type !== 9) throw new Error(`${label} opens no form`);
      const data = submitData(world, pressed.firstResponse.data, values);
      return ask({ kind: 5, data, what: `the form of ${label}`, pressed: message }, channel, where);
    },
    menu: async (name, target, where = {}) => {
      const channel = 'person' in target ? channelOf(where) : (world.channels.get(target.channelId) ?? usual);
      offeredCommand(world, person, channel, 'person' in target ? 2 : 3, name);
      const author = 'person' in target ? undefined : world.people.get(target.authorId);
      const data =
        'person' in target
          ? menuOnPerson(name, target.person)
          : menuOnMessage(
              world,
              name,
              target,
              author ?? {
                id: world.applicationId,
                name: 'pierhand',
                isManager: false,
                isBot: true,
                takesDirectMessages: false,
              },
            );
      return ask({ kind: 2, data, what: name }, channel, where);
    },
    write: (text, channel, files = []) =>
      addMessage(world, {
        channelId: channel.id,
        authorId: person.id,
        content: text,
        attachments: files.map((file) => upload(world, file)),
      }),
    sees: (where) => visibleTo(world, (where === 'direct' ? directChannel(world, person.id) : where).id, person.id),
  };
};

export const newPerson = (world: World, name: string, parts: Partial<Person> = {}): Person => {
  const person: Person = { id: snowflake(), name, isManager: false, isBot: false, takesDirectMessages: true, ...parts };
  world.people.set(person.id, person);
  return person;
};
