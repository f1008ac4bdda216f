/** Who reads an answer, as far as Discord says it. Contexts: "Interaction Context Types" of Discord's developer documentation. */
import type { APIInteraction } from 'discord-api-types/v10';
import { expect, it } from 'vitest';
import { askerOf, memberMay } from '../../bot/platforms/discord/answer/read-interaction.js';

const from = (more: object): APIInteraction =>
  ({
    user: { id: '1', username: 'tamsin', global_name: 'Tamsin' },
    channel: { id: '2', type: 3 },
    ...more,
  }) as unknown as APIInteraction;

it.each([
  ['a direct message with the bot', { context: 1 }, true],
  ['a group conversation', { context: 2 }, false],
  ['a conversation that does not say what it is', {}, false],
])('%s', (_where, more, isPrivate) => {
  expect(askerOf(from(more)).isPrivate).toBe(isPrivate);
});

it("nobody gets more through the bot than their own role gives: Create Public Threads is bit 35, and an administrator's is bit 3", () => {
  const held = (bits: bigint): APIInteraction => from({ member: { permissions: bits.toString() } });
  expect(memberMay(held(1n << 35n), 1n << 35n)).toBe(true);
  expect(memberMay(held(1n << 3n), 1n << 35n)).toBe(true);
  expect(memberMay(held((1n << 35n) - 1n - (1n << 3n)), 1n << 35n)).toBe(false);
  expect(memberMay(from({}), 1n << 35n)).toBe(false);
});
