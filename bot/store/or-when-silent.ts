/** What stands in for the store while it cannot answer. */
import { StoreError } from './store.js';

/** What the store says; `whenSilent` where it cannot answer. Any other failure is passed on. */
export const orWhenSilent = async <T>(ask: () => Promise<T>, whenSilent: T): Promise<T> => {
  try {
    return await ask();
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return whenSilent;
  }
};
