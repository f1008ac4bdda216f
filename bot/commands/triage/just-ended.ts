/** When somebody's last walk here ended: what they say next is no answer to one they left before it. In this process's memory alone, bounded. */
import { onceOf } from '../../ground/once.js';
import type { UtcMs } from '../../sky/types.js';
import type { Store } from '../../store/store.js';
import type { Asker } from '../core/command.js';
import type { Walk } from './walk-keeper.js';
import { putNewest } from '../../ground/remember.js';

type Where = Pick<Asker, 'memberId' | 'clubId' | 'channelId'>;

const endsIn = onceOf((_: Store['walks']) => new Map<string, UtcMs>());
const MOST_KEPT = 1000;

const keyOf = ({ memberId, clubId, channelId }: Where): string => JSON.stringify([memberId, clubId, channelId]);

/** Keeps it where a turn ended the walk: as it was before, and after. */
export const keepEnd = ({ walks }: Store, asker: Where, [before, after]: readonly [Walk, Walk], now: UtcMs): void => {
  if (before.endedUtcMs !== null || after.endedUtcMs === null) return;
  putNewest(endsIn(walks), keyOf(asker), now, MOST_KEPT);
};

/** Whether a walk was left before another of the asker's ended here, and not gone back to since. */
export const isLeftBehind = ({ walks }: Store, asker: Where, { updatedUtcMs }: Walk): boolean =>
  updatedUtcMs <= (endsIn(walks).get(keyOf(asker)) ?? -Infinity);

export const forgetEnds = ({ walks }: Store, memberId: string): void => {
  const ends = endsIn(walks);
  for (const key of ends.keys()) if ((JSON.parse(key) as readonly string[])[0] === memberId) ends.delete(key);
};
