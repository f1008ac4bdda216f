/** `causes`: what a club has counted of confirmed causes, for its managers to look at and, where it went wrong, to begin afresh. */
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { defineCommand, flag, optional } from './core/command.js';
import { MOST_COUNTED } from './triage/walk-keeper.js';

const MOST_SHOWN = 20;

export const causes = defineCommand({
  name: 'causes',
  summary: "What this club's walks have confirmed; a manager may begin the count afresh",
  access: 'manager',
  options: { reset: optional(flag('yes: forget all counts of this club; they cannot be brought back')) },
  examples: ['causes', 'causes reset:yes'],
  run: async (deps, { options, asker }): Promise<Outcome> => {
    if (options.reset === true) {
      const removed = await deps.store.outcomes.reset(asker.clubId);
      return reply({
        title: 'Causes confirmed here',
        summary: removed === 0 ? 'Nothing had been counted.' : 'Forgotten; the count begins afresh.',
        pointsAt: NOWHERE,
        data: { removed },
      });
    }
    const counts = await deps.store.outcomes.counts(asker.clubId);
    const model = deps.triage();
    const rows = Object.entries(counts).sort(([a, timesA], [b, timesB]) => timesB - timesA || a.localeCompare(b));
    return reply({
      title: 'Causes confirmed here',
      summary: rows.length === 0 ? 'None yet.' : 'Each makes its cause a little likelier in walks of this club.',
      facts: rows.slice(0, MOST_SHOWN).map(([faultId, times]) => ({
        label: model.fault(faultId)?.title ?? faultId,
        value: times === 1 ? 'once' : `${times} times`,
      })),
      notes: [
        `A member counts once for a cause and month, and no cause weighs more than ${MOST_COUNTED}.`,
        ...(rows.length > MOST_SHOWN ? [`${rows.length - MOST_SHOWN} rarer ones are not shown.`] : []),
      ],
      choices: rows.length === 0 ? [] : [{ label: 'Begin afresh', run: 'causes reset:yes' }],
      pointsAt: NOWHERE,
      data: { counts: { ...counts } },
    });
  },
});
