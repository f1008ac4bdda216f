/** Where else a controller may still take itself to be: the places its owner observes from, as far as the answer may speak of them. */
import { orWhenSilent } from '../../store/or-when-silent.js';
import type { StoredSite } from '../../store/store.js';
import type { Request } from '../core/command.js';
import { clubOwner, memberOwner } from './resolve-site.js';

/**
 * The club's sites; and the member's own where nobody else reads the answer, so that no answer in a channel differs by what
 * somebody saved. A store that does not answer costs only these.
 */
export const storedPlaces = async ({
  asker,
  privacy,
}: Pick<Request<unknown>, 'asker' | 'privacy'>): Promise<readonly StoredSite[]> => {
  const { sites } = privacy.unmarked;
  const isUnseen = asker.isPrivate || privacy.isPersonal();
  return orWhenSilent(async () => {
    const own = isUnseen ? await sites.list(memberOwner(asker)) : [];
    if (own.length > 0) privacy.markPersonal();
    return [...own, ...(await sites.list(clubOwner(asker)))];
  }, []);
};
