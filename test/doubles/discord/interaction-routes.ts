/** What the double does with answers to an interaction: the first response, and all that goes by the interaction's token after it. */
import type { Json } from './request-rules.js';
import {
  contentOf,
  edit,
  EPHEMERAL,
  messagePayload,
  refusal,
  UNKNOWN_INTERACTION,
  UNKNOWN_MESSAGE,
  UNKNOWN_WEBHOOK,
  type RestAnswer,
  type RestOptions,
  type RestRequest,
} from './rest-message.js';
import { addMessage, type Interaction, type Message, type World } from './world.js';

const isForAskerAlone = (data: Json): boolean => (Number(data.flags ?? 0) & EPHEMERAL) !== 0;

/** The message that a first response or a follow-up makes. */
const answerMessage = (
  world: World,
  request: RestRequest,
  interaction: Interaction,
  data: Json,
  isPending = false,
): Message =>
  addMessage(world, {
    channelId: interaction.channelId,
    authorId: world.applicationId,
    interactionId: interaction.id,
    onlyFor: isForAskerAlone(data) ? interaction.personId : null,
    ...contentOf(request, data),
    isPending,
  });

/** What came as the first response; its `type` is Discord's interaction callback type. */
interface FirstResponse {
  readonly type: number;
  readonly data?: Json;
}

/** Response types 4 and 5: an answer, or the word that one is coming. */
const answered = (
  world: World,
  request: RestRequest,
  interaction: Interaction,
  { type, data = {} }: FirstResponse,
): RestAnswer => {
  const message = answerMessage(world, request, interaction, data, type === 5);
  interaction.originalId = message.id;
  return request.query.get('with_response') === 'true'
    ? {
        status: 200,
        body: {
          interaction: { id: interaction.id, type: 2 },
          resource: { type, message: messagePayload(world, message) },
        },
      }
    : { status: 204 };
};

/** Types 6 and 7: the message that was pressed is the answer. */
const changeInPlace = (
  world: World,
  request: RestRequest,
  interaction: Interaction,
  { type, data = {} }: FirstResponse,
): void => {
  interaction.originalId = interaction.pressedMessageId;
  const pressed = world.messages.get(interaction.pressedMessageId ?? '');
  if (type === 7 && pressed !== undefined) edit(pressed, request, data);
};

export const callback = (
  world: World,
  request: RestRequest,
  [id = '', token = '']: readonly string[],
  { firstResponseMs }: RestOptions,
): RestAnswer => {
  const interaction = world.interactions.get(id);
  if (interaction?.token !== token) return UNKNOWN_INTERACTION;
  if (interaction.firstResponse !== null) return refusal(400, 40060, 'Interaction has already been acknowledged.');
  const afterMs = Date.now() - interaction.sentMs;
  if (afterMs > firstResponseMs) return UNKNOWN_INTERACTION;
  const response = request.body as FirstResponse;
  const { type, data = {} } = response;
  interaction.firstResponse = { type, afterMs, data };
  if (type === 4 || type === 5) return answered(world, request, interaction, response);
  if (type === 8) interaction.suggestions = (data.choices ?? []) as { name: string; value: string }[];
  if (type !== 8 && type !== 9) changeInPlace(world, request, interaction, response);
  return { status: 204 };
};

/** The double's tokens begin with their interaction's id. */
const byToken = (world: World, token: string): Interaction | undefined => {
  const interaction = world.interactions.get(token.split('.')[0] ?? '');
  return interaction?.token === token ? interaction : undefined;
};

const followUp = (world: World, request: RestRequest, interaction: Interaction): RestAnswer => {
  const original = world.messages.get(interaction.originalId ?? '');
  const data = (request.body ?? {}) as Json;
  // The first follow-up to an acknowledgement takes its place, and its openness, whatever its own flags say.
  if (original?.isPending === true) {
    edit(original, request, { content: null, ...data });
    return { status: 200, body: messagePayload(world, original) };
  }
  return { status: 200, body: messagePayload(world, answerMessage(world, request, interaction, data)) };
};

const TOKEN_LASTS_MS = 15 * 60_000;

export const webhook = (
  world: World,
  request: RestRequest,
  [, token = '', which = '']: readonly (string | undefined)[],
): RestAnswer => {
  const interaction = byToken(world, token);
  if (interaction?.firstResponse == null || Date.now() - interaction.sentMs > TOKEN_LASTS_MS) return UNKNOWN_WEBHOOK;
  if (request.method === 'POST') return followUp(world, request, interaction);
  const message = world.messages.get(which === '@original' ? (interaction.originalId ?? '') : which);
  if (message === undefined || message.isDeleted) return UNKNOWN_MESSAGE;
  if (request.method === 'PATCH') edit(message, request, (request.body ?? {}) as Json);
  if (request.method !== 'DELETE') return { status: 200, body: messagePayload(world, message) };
  message.isDeleted = true;
  return { status: 204 };
};
