/** A club with its members over a real store: what the tests of sites, gear, reminders and privacy stand on. */
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { answer, realDeps, refusal } from '../commands/real-deps.js';

/** 2026-11-25, 18:00 UTC. */
export const NOW = Date.UTC(2026, 10, 25, 18);

const CLUB = 'discord:900000000000000001';
const member = (memberId: string, displayName: string, more: Partial<Asker> = {}): Asker => ({
  platform: 'discord',
  memberId,
  displayName,
  clubId: CLUB,
  channelId: 'discord:800000000000000001',
  isManager: false,
  isPrivate: false,
  ...more,
});
export const TAMSIN = member('discord:100000000000000001', 'Tamsin');
export const RAVI = member('discord:100000000000000002', 'Ravi');
/** May change the club's settings. */
export const MBALI = member('discord:100000000000000003', 'Mbali', { isManager: true });
/** The same member in a direct message. */
export const inPrivate = (asker: Asker): Asker => ({
  ...asker,
  clubId: asker.memberId,
  channelId: `dm ${asker.memberId}`,
  isPrivate: true,
});

export interface Club {
  readonly deps: Deps;
  readonly says: (line: string, asker?: Asker, nowUtcMs?: number) => ReturnType<typeof answer>;
  readonly refused: (line: string, asker?: Asker, nowUtcMs?: number) => ReturnType<typeof refusal>;
}

export const openClub = async (over: Partial<Deps> = {}): Promise<Club> => {
  const deps = await realDeps(over);
  return {
    deps,
    says: (line, asker = TAMSIN, nowUtcMs = NOW) => answer(deps, line, nowUtcMs, asker),
    refused: (line, asker = TAMSIN, nowUtcMs = NOW) => refusal(deps, line, nowUtcMs, asker),
  };
};

/** A store that answers nothing. */
export const brokenStore = (): Store => {
  const fail = (): Promise<never> =>
    Promise.reject(new StoreError('store-unavailable', 'My notebook cannot be reached just now.'));
  const part = new Proxy({}, { get: () => fail });
  return new Proxy(
    {},
    {
      get: (_target, name) => (['ping', 'close', 'exportMember', 'forgetMember'].includes(String(name)) ? fail : part),
    },
  ) as Store;
};
