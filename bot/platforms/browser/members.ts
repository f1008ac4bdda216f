/** The two made-up members of the page: one who may change the club's settings, and one who may not. */
import type { Asker } from '../../commands/core/command.js';
import { tidy } from '../../ground/tidy.js';

const member = (key: string, displayName: string, isManager: boolean): Asker => ({
  platform: 'browser',
  memberId: `browser:${key}`,
  displayName,
  clubId: 'browser:club',
  channelId: 'browser:channel',
  isManager,
  isPrivate: false,
});

export const MEMBERS: ReadonlyMap<string, Asker> = new Map([
  ['tamsin', member('tamsin', 'Tamsin', true)],
  ['wilf', member('wilf', 'Wilf', false)],
]);

/** "Wilf", "@wilf" or "me"; undefined where there is nobody of that name. */
export const memberNamed = (given: string, me: Asker): Asker | undefined => {
  const key = tidy(given, 40).replace(/^@/u, '').toLowerCase();
  return key === 'me' ? me : MEMBERS.get(key);
};
