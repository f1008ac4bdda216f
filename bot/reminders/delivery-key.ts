/** The name of one delivery of one reminder, the same however often it has to be tried. */
import type { Reminder } from '../store/store.js';

/**
 * A process may be killed after a chat server took a reminder and before that was written down; the reminder is then said
 * again. Platforms send under this key (Matrix: transaction id; Discord: enforced nonce), so that the server, which knows
 * the key, shows it once. Letters, digits and a hyphen; at most 25 characters.
 */
export const deliveryKey = ({ id, dueUtcMs }: Pick<Reminder, 'id' | 'dueUtcMs'>): string =>
  `${id}-${Math.round(dueUtcMs).toString(36)}`.slice(0, 25);
