/** Says a reminder in a direct message or in the channel it was made for. */
import { Routes, type APIDMChannel } from 'discord-api-types/v10';
import { DiscordAPIError, type REST } from 'discord.js';
import { deliveryKey } from '../../../reminders/delivery-key.js';
import type { Reminder } from '../../../store/store.js';
import { bareId } from './read-interaction.js';
import { persist } from './respond.js';
import { writeNotice } from '../write/write-reply.js';

/** The reminder itself is tried again later; these bridge a hiccup. */
const DELAYS_MS = [200, 1000];
// Unknown channel, unknown user, unknown server; missing access, missing permission, a member who takes no direct messages.
const GONE = new Set<number | string>([10003, 10013, 10004, 50001, 50013, 50007, 50278]);
const isGone = (error: unknown): boolean => error instanceof DiscordAPIError && GONE.has(error.code);

const say = async (rest: REST, channelId: string, reminder: Reminder, text: string): Promise<void> => {
  await persist(
    () =>
      rest.post(Routes.channelMessages(channelId), {
        // Sent again under the same key after a lost response, it is shown once.
        body: { ...writeNotice(text, false).body, nonce: deliveryKey(reminder), enforce_nonce: true },
      }),
    DELAYS_MS,
  );
};

const sayToMember = async (rest: REST, reminder: Reminder, text: string): Promise<void> => {
  const channel = (await persist(
    () => rest.post(Routes.userChannels(), { body: { recipient_id: bareId(reminder.memberId) } }),
    DELAYS_MS,
  )) as APIDMChannel;
  await say(rest, channel.id, reminder, text);
};

/** Rejects with what may pass and be tried again. A channel that is closed to the bot sends the reminder to the member instead. */
export const deliverReminder = async (rest: REST, reminder: Reminder, text: string): Promise<'sent' | 'gone'> => {
  try {
    if (reminder.to === 'channel') {
      try {
        await say(rest, bareId(reminder.channelId), reminder, text);
        return 'sent';
      } catch (error) {
        // A standing reminder belongs to its channel; a single one is still worth something to its member.
        if (!isGone(error) || reminder.repeat !== null) throw error;
      }
    }
    await sayToMember(rest, reminder, text);
    return 'sent';
  } catch (error) {
    if (isGone(error)) return 'gone';
    throw error;
  }
};
