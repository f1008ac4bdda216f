/** Values made fit for both databases: PostgreSQL keeps no zero character and no half of a surrogate pair, integers are whole. */
import type { UtcMs } from '../../sky/types.js';

export const storable = (text: string): string => text.replaceAll('\u0000', '').replace(/\p{Surrogate}/gu, '\ufffd');

export const wholeMs = (utcMs: UtcMs): number => Math.round(utcMs);
export const wholeMsOrNull = (utcMs: UtcMs | null): number | null => (utcMs === null ? null : Math.round(utcMs));

/** A `like` pattern for texts that begin with `prefix`, to be used with `escape '\'`. */
export const beginsWith = (prefix: string): string => `${storable(prefix).replace(/[\\%_]/gu, '\\$&')}%`;
