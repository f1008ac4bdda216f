/** Which published schema a request's body must fit, and the rules of Discord's documentation that no schema states. */
import * as spec from 'discord-api-spec/zod';
import type { $ZodType } from 'zod/v4/core';
import { deepStrict, faultsOf } from './strict-schema.js';

interface Rule {
  readonly method: string;
  readonly path: RegExp;
  /** Several: the body must fit one; null: no body. */
  readonly schemas: readonly $ZodType[] | null;
  readonly isList?: boolean;
  readonly extra?: (body: Json, fileCount: number) => readonly string[];
}

export type Json = Readonly<Record<string, unknown>>;

const records = (value: unknown): readonly Json[] => (Array.isArray(value) ? (value as Json[]) : []);
const lengthOf = (value: unknown): number => (typeof value === 'string' ? value.length : 0);

const embedFaults = (body: Json, embed: Json): readonly string[] => {
  const faults: string[] = [];
  if (lengthOf((embed.author as Json | undefined)?.name) > 256) faults.push('embeds.author.name: over 256');
  for (const field of records(embed.fields)) {
    if (lengthOf(field.name) === 0 || lengthOf(field.value) === 0)
      faults.push('embeds.fields: a name or value is empty');
  }
  const image = (embed.image as Json | undefined)?.url;
  if (
    typeof image === 'string' &&
    image.startsWith('attachment://') &&
    !records(body.attachments).some(({ filename }) => filename === image.slice('attachment://'.length))
  )
    faults.push(`embeds.image: ${image} names no attachment`);
  return faults;
};

const lettersIn = (embed: Json): number =>
  lengthOf(embed.title) +
  lengthOf(embed.description) +
  lengthOf((embed.footer as Json | undefined)?.text) +
  lengthOf((embed.author as Json | undefined)?.name) +
  records(embed.fields).reduce((sum, field) => sum + lengthOf(field.name) + lengthOf(field.value), 0);

const hasTwice = (values: readonly unknown[]): boolean => new Set(values).size !== values.length;

const componentFaults = (component: Json): readonly string[] => {
  const faults: string[] = [];
  if (component.type === 2 && lengthOf(component.label) === 0 && component.emoji === undefined)
    faults.push('components: a button without label');
  if (component.type === 2 && component.custom_id === undefined && component.url === undefined)
    faults.push('components: a button without custom_id');
  if (hasTwice(records(component.options).map(({ value }) => value)))
    faults.push('components: a select value is used twice');
  return faults;
};

const rowFaults = (body: Json): readonly string[] => {
  const rows = records(body.components);
  const components = rows.flatMap((row) => records(row.components));
  const ids = components.map(({ custom_id: id }) => id).filter((id) => id !== undefined);
  return [
    ...(rows.length > 5 ? [`components: ${rows.length} rows, at most 5`] : []),
    ...(hasTwice(ids) ? ['components: a custom_id is used twice'] : []),
    ...components.flatMap(componentFaults),
  ];
};

const attachmentFaults = (body: Json, fileCount: number): readonly string[] => {
  const attached = records(body.attachments);
  const missing = attached.filter(({ id }) => Number(id) < 100 && Number(id) >= fileCount);
  return [
    ...missing.map(({ id }) => `attachments: ${String(id)} has no file`),
    ...(fileCount > attached.length && attached.length > 0 ? ['attachments: a file is not listed'] : []),
  ];
};

/** "Embed Limits" and component rules of the developer documentation. */
const messageRules = (body: Json, fileCount: number): readonly string[] => {
  const embeds = records(body.embeds);
  const total = embeds.reduce((sum, embed) => sum + lettersIn(embed), 0);
  return [
    ...(total > 6000 ? [`embeds: ${total} characters over all, at most 6000`] : []),
    ...embeds.flatMap((embed) => embedFaults(body, embed)),
    ...rowFaults(body),
    ...attachmentFaults(body, fileCount),
  ];
};

const notEmpty = (body: Json, fileCount: number): readonly string[] =>
  lengthOf(body.content) > 0 || records(body.embeds).length > 0 || records(body.components).length > 0 || fileCount > 0
    ? []
    : ['Cannot send an empty message'];

const newMessage = (body: Json, fileCount: number): readonly string[] => [
  ...notEmpty(body, fileCount),
  ...messageRules(body, fileCount),
];

const callbackRules = (body: Json, fileCount: number): readonly string[] => {
  const data = (body.data ?? {}) as Json;
  if (body.type === 4) return newMessage(data, fileCount);
  return body.type === 7 ? messageRules(data, fileCount) : [];
};

const COMMAND_NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

const isName = (name: unknown): boolean =>
  COMMAND_NAME.test(String(name)) && String(name) === String(name).toLowerCase();

const optionFaults = (options: readonly Json[]): readonly string[] => {
  const faults: string[] = [];
  for (const option of options) {
    if (!isName(option.name)) faults.push(`option name: ${String(option.name)}`);
    if (option.autocomplete === true && records(option.choices).length > 0)
      faults.push(`option ${String(option.name)}: choices and autocomplete together`);
  }
  if (hasTwice(options.map(({ name }) => name))) faults.push('an option name is used twice');
  const firstOptional = options.findIndex(({ required }) => required !== true);
  if (firstOptional >= 0 && options.slice(firstOptional).some(({ required }) => required === true))
    faults.push('a required option comes after one that is not');
  return faults;
};

/** "Application Command Naming" and option order of the developer documentation. */
const commandRules = (command: Json): readonly string[] => {
  const options = records(command.options);
  const isDescribed = lengthOf(command.description) > 0;
  const isSlash = (command.type ?? 1) === 1;
  const faults: string[] = [];
  if (isSlash && !isName(command.name)) faults.push(`name: ${String(command.name)}`);
  if (isSlash && !isDescribed) faults.push('description: missing');
  if (!isSlash && (isDescribed || options.length > 0))
    faults.push('a menu entry takes neither description nor options');
  return [...faults, ...optionFaults(options)];
};

const callbacks = [
  spec.ApplicationCommandAutocompleteCallbackRequestSchema,
  spec.CreateMessageInteractionCallbackRequestSchema,
  spec.ModalInteractionCallbackRequestSchema,
  spec.PongInteractionCallbackRequestSchema,
  spec.UpdateMessageInteractionCallbackRequestSchema,
];

const RULES: readonly Rule[] = [
  {
    method: 'PUT',
    path: /^\/applications\/\d+(\/guilds\/\d+)?\/commands$/u,
    schemas: [spec.ApplicationCommandUpdateRequestSchema],
    isList: true,
    extra: commandRules,
  },
  { method: 'POST', path: /^\/interactions\/\d+\/[^/]+\/callback$/u, schemas: callbacks, extra: callbackRules },
  {
    method: 'POST',
    path: /^\/webhooks\/\d+\/[^/]+$/u,
    schemas: [spec.IncomingWebhookRequestPartialSchema],
    extra: newMessage,
  },
  {
    method: 'PATCH',
    path: /^\/webhooks\/\d+\/[^/]+\/messages\/[^/]+$/u,
    schemas: [spec.IncomingWebhookUpdateRequestPartialSchema],
    extra: messageRules,
  },
  {
    method: 'POST',
    path: /^\/channels\/\d+\/messages$/u,
    schemas: [spec.MessageCreateRequestSchema],
    extra: newMessage,
  },
  {
    method: 'PATCH',
    path: /^\/channels\/\d+\/messages\/\d+$/u,
    schemas: [spec.MessageEditRequestPartialSchema],
    extra: messageRules,
  },
  {
    method: 'POST',
    path: /^\/channels\/\d+\/messages\/\d+\/threads$/u,
    schemas: [spec.CreateTextThreadWithMessageRequestSchema],
  },
  { method: 'POST', path: /^\/users\/@me\/channels$/u, schemas: [spec.CreatePrivateChannelRequestSchema] },
  { method: 'PUT', path: /^\/channels\/\d+\/thread-members\/\d+$/u, schemas: null },
  { method: 'GET', path: /^\/gateway\/bot$/u, schemas: null },
  { method: 'DELETE', path: /^\/webhooks\/\d+\/[^/]+\/messages\/[^/]+$/u, schemas: null },
];

const strictly = new Map(RULES.map((rule) => [rule, rule.schemas?.map(deepStrict)]));

/** Every message says whom it may ping, and that is nobody. */
const pings = (value: unknown): readonly string[] => {
  if (typeof value !== 'object' || value === null) return [];
  const { content, embeds, allowed_mentions: allowed } = value as Json;
  if (content === undefined && embeds === undefined) return [];
  return JSON.stringify(allowed) === '{"parse":[]}' ? [] : [`allowed_mentions: ${JSON.stringify(allowed)}`];
};

/** What is wrong with a request; undefined when the route is not one the bot is meant to use. */
export const requestFaults = (
  method: string,
  path: string,
  body: unknown,
  fileCount: number,
): readonly string[] | undefined => {
  const rule = RULES.find((candidate) => candidate.method === method && candidate.path.test(path));
  if (rule === undefined) return undefined;
  const schemas = strictly.get(rule);
  if (schemas === undefined) return body === undefined ? [] : ['a body where none is taken'];
  const items = rule.isList === true && Array.isArray(body) ? (body as unknown[]) : [body];
  const listFaults = rule.isList === true && items.length > 130 ? [`${items.length} commands`] : [];
  return [
    ...listFaults,
    ...items.flatMap((item) => {
      const attempts = schemas.map((schema) => faultsOf(schema, item));
      const fits = attempts.some((faults) => faults.length === 0);
      // Of several forms, the one with this body's own type tells most.
      const told =
        attempts
          .filter((faults) => !faults.some((fault) => fault.startsWith('type:')))
          .sort((a, b) => a.length - b.length)[0] ??
        attempts[0] ??
        [];
      return [
        ...(fits ? [] : told),
        ...(fits ? (rule.extra?.(item as Json, fileCount) ?? []) : []),
        ...pings(item),
        ...pings((item as Json | undefined)?.data),
      ];
    }),
  ];
};
