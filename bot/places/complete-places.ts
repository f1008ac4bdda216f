import type { Places } from './load-places.js';

/** One suggestion: `value` resolves to the place alone; `label` (≤ 100 characters) is what a member sees. */
export interface PlaceCompletion { readonly value: string; readonly label: string }

export function completePlaces(_places: Places, partial: string, _limit = 25): readonly PlaceCompletion[] {
  throw new Error(`not yet: ${partial}`);
}
