/** `forget`: removes everything kept about the member who asks, at once. */
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { defineCommand, flag, optional } from '../core/command.js';
import { forgetLastAsked } from '../asking/following/last-asked.js';
import { forgetEnds } from '../triage/just-ended.js';
import { forgetRemembered } from '../triage/walk-keeper.js';

export const forget = defineCommand({
  name: 'forget',
  summary: 'Remove everything I keep about you',
  options: { confirm: optional(flag('yes: really remove it; it cannot be brought back')) },
  examples: ['forget', 'forget confirm:yes'],
  run: async (deps, { options, asker }): Promise<Outcome> => {
    if (options.confirm !== true) {
      return reply({
        title: 'Forget me?',
        level: 'caution',
        audience: 'asker',
        summary:
          'This removes your sites, horizons, gear, reminders and troubleshooting walks. It cannot be undone; mydata shows them first.',
        notes: [
          'What belongs to the club stays, without your name: its own sites, and standing warnings you set for a channel.',
        ],
        choices: [
          // First, as a number typed by habit must not remove anything.
          { label: 'Show me what you keep', run: 'mydata', preferred: true },
          { label: 'Yes, forget me', run: 'forget confirm:yes' },
        ],
        pointsAt: NOWHERE,
        data: { removed: null },
      });
    }
    forgetLastAsked(deps.store, asker.memberId);
    forgetEnds(deps.store, asker.memberId);
    const removed = forgetRemembered(deps.store, asker.memberId) + (await deps.store.forgetMember(asker.memberId));
    return reply({
      title: 'Forgotten',
      level: 'good',
      audience: 'asker',
      pointsAt: NOWHERE,
      data: { removed },
      summary:
        removed === 0
          ? 'I kept nothing about you.'
          : `Removed everything I kept about you: ${removed === 1 ? '1 entry' : `${removed} entries`}.`,
      notes: [
        `Backups that the operator made before keep it until they are replaced. ${
          asker.platform === 'console'
            ? 'Lines typed at this console and its pictures stay in the data folder until they are deleted there.'
            : "Messages in this chat are the chat server's."
        }`,
      ],
    });
  },
});
