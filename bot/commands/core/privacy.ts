/**
 * Privacy by construction: a request remembers whether a member's own row was read or written for it, and dispatch then makes
 * whatever comes of it, answer or problem, the asker's alone. No command says so itself, and none can forget to.
 */
import type { Store } from '../../store/store.js';

export interface Privacy {
  /** Makes the outcome of this request the asker's alone. */
  readonly markPersonal: () => void;
  readonly isPersonal: () => boolean;
  /** The saved sites could not be read, and the answer holds for what stands here instead; dispatch says so before all else. */
  readonly markUnread: (standsIn: string) => void;
  readonly standsIn: () => string | null;
  /**
   * The store without the mark, for looking whether a name is one of the member's own. Who finds that it is calls `markPersonal`.
   * The linter allows it in bot/commands/asking alone.
   */
  readonly unmarked: Store;
}

/** `over` laid over `base`, which may be of any make: what is not overlaid reaches it as before. */
const overlaid = <T extends object>(base: T, over: Partial<T>): T => Object.assign(Object.create(base) as T, over);

/**
 * The privacy of one request, and the store to run it with. A member's saved sites and reminders and the export of all that
 * is kept are their own, and so is what they observe with (`gear`): asking for them makes the outcome the asker's, whether there are
 * any or not. The walks of troubleshooting are not: helpers speak in them.
 */
export const openPrivacy = (store: Store): { readonly privacy: Privacy; readonly store: Store } => {
  let personal = false;
  const markPersonal = (): void => void (personal = true);
  let standsIn: string | null = null;
  const privacy: Privacy = {
    markPersonal,
    isPersonal: () => personal,
    markUnread: (instead) => void (standsIn = instead),
    standsIn: () => standsIn,
    unmarked: store,
  };
  const marked: Partial<Store> = {
    get sites() {
      const { sites } = store;
      return overlaid(sites, {
        list: (owner) => {
          if (owner.kind === 'member') markPersonal();
          return sites.list(owner);
        },
        put: (owner, site) => {
          if (owner.kind === 'member') markPersonal();
          return sites.put(owner, site);
        },
      });
    },
    get reminders() {
      const { reminders } = store;
      return overlaid(reminders, {
        list: (memberId) => {
          markPersonal();
          return reminders.list(memberId);
        },
        cancel: (memberId, id) => {
          markPersonal();
          return reminders.cancel(memberId, id);
        },
        add: (reminder) => {
          if (reminder.to !== 'channel') markPersonal();
          return reminders.add(reminder);
        },
      });
    },
    get gear() {
      const { gear } = store;
      return overlaid(gear, {
        get: (memberId) => {
          markPersonal();
          return gear.get(memberId);
        },
        put: (memberId, saved) => {
          markPersonal();
          return gear.put(memberId, saved);
        },
      });
    },
    exportMember: (memberId) => {
      markPersonal();
      return store.exportMember(memberId);
    },
  };
  return {
    privacy,
    store: Object.create(store, Object.getOwnPropertyDescriptors(marked)) as Store,
  };
};
