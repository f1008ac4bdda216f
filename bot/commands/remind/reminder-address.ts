/** To whom a reminder goes, and who may send one to a channel. */
import { problem, type Problem } from '../../ground/problem.js';
import type { NewReminder } from '../../store/store.js';
import type { Asker } from '../core/command.js';

export type To = NewReminder['to'];

/** In a direct message the channel is the member alone. */
export const toOf = (asker: Asker, given: 'me' | 'channel' | undefined): To | Problem => {
  if (given !== 'channel' || asker.isPrivate) return 'member';
  return asker.isManager
    ? 'channel'
    : problem(
        'not-allowed',
        "Reminders for a channel are set by those who may change the club's settings here. Leave to:channel out to be told yourself.",
      );
};

export const addressOf = (
  asker: Asker,
  to: To,
): Pick<NewReminder, 'memberId' | 'clubId' | 'platform' | 'channelId' | 'to'> => ({
  memberId: asker.memberId,
  clubId: asker.clubId,
  platform: asker.platform,
  channelId: asker.channelId,
  to,
});
