/** The labels a member may press or pick on a message. */
import { offeredOn } from '../../bot/platforms/discord/write/write-choices.js';
import type { Message } from '../doubles/discord/world.js';

export const labelsOn = (message: Message | undefined): string[] =>
  message === undefined ? [] : offeredOn({ components: message.components as never }).map(({ label }) => label);
