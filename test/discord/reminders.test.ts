import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Reminder } from '../../bot/store/store.js';
import { sampleCommands } from './sample-commands.js';
import { start, type Started } from './start-bot.js';

let at: Started;
beforeEach(async () => {
  at = await start({ commands: sampleCommands });
});
afterEach(async () => {
  expect(at.double.rest.violations).toEqual([]);
  await at.stop();
});

const reminder = (parts: Partial<Reminder> = {}): Reminder => ({
  id: 'abcdefg',
  memberId: `discord:${at.double.member('Odalys').person.id}`,
  clubId: `discord:${at.double.guild.id}`,
  platform: 'discord',
  channelId: `discord:${at.double.channel.id}`,
  to: 'member',
  kind: 'sunrise',
  dueUtcMs: 1_800_000_000_000,
  staleUtcMs: null,
  repeat: null,
  text: '',
  ...parts,
});
const heard = (where: 'direct' | 'channel'): string[] =>
  at.double
    .member('Odalys')
    .sees(where === 'direct' ? 'direct' : at.double.channel)
    .map(({ content }) => content);

describe('a reminder on Discord', () => {
  it('to a member comes as a direct message, as plain text', async () => {
    expect(await at.bot.deliver(reminder(), 'Sunrise in 30 min: cap the tube. @everyone')).toBe('sent');
    expect(heard('direct')).toEqual(['Sunrise in 30 min: cap the tube. \\@everyone']);
    expect(heard('channel')).toEqual([]);
  });

  it('to a channel comes in that channel', async () => {
    expect(await at.bot.deliver(reminder({ to: 'channel' }), 'Sunrise in 30 min.')).toBe('sent');
    expect(heard('channel')).toEqual(['Sunrise in 30 min.']);
  });

  it('whose response is lost is sent again under the same key, and shown once', async () => {
    at.double.misbehave.rest({ status: 502, on: /POST \/channels/u, afterProcessing: true });
    expect(await at.bot.deliver(reminder(), 'Sunrise.')).toBe('sent');
    expect(at.double.rest.requests.filter(({ path }) => path.endsWith('/messages'))).toHaveLength(2);
    expect(heard('direct')).toEqual(['Sunrise.']);
    await at.bot.deliver(reminder({ dueUtcMs: 1_800_086_400_000 }), 'Sunrise, a day later.');
    expect(heard('direct')).toHaveLength(2);
  });

  it('to a member who takes none, or who is gone, is gone', async () => {
    at.double.member('Odalys').person.takesDirectMessages = false;
    expect(await at.bot.deliver(reminder(), 'Sunrise.')).toBe('gone');
    expect(await at.bot.deliver(reminder({ memberId: 'discord:100000000000000001' }), 'Sunrise.')).toBe('gone');
  });

  it('to a channel that is closed: a single one reaches its member instead, a standing one is gone', async () => {
    at.double.channel.isOpen = false;
    expect(await at.bot.deliver(reminder({ to: 'channel' }), 'Sunrise.')).toBe('sent');
    expect(heard('direct')).toEqual(['Sunrise.']);
    expect(await at.bot.deliver(reminder({ to: 'channel', repeat: { every: 'night' } }), 'Sunrise.')).toBe('gone');
  });

  it('while Discord fails is left to be tried later', async () => {
    at.double.misbehave.rest({ status: 500, times: 3, on: /POST \/channels/u });
    await expect(at.bot.deliver(reminder({ to: 'channel' }), 'Sunrise.')).rejects.toThrow();
    expect(heard('channel')).toEqual([]);
  });
});
