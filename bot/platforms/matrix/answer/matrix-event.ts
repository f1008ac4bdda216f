/** Matrix events as they come from the server: every field inside `content` is a stranger's and may be anything. */

export type Content = Readonly<Record<string, unknown>>;

export interface MatrixEvent {
  readonly type: string;
  readonly event_id: string;
  readonly sender: string;
  /** Set by the sender's server, ms. */
  readonly origin_server_ts: number;
  readonly content: Content;
  readonly state_key?: string;
  readonly unsigned?: Content;
}

export const isRecord = (value: unknown): value is Content =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const recordAt = (record: Content | undefined, key: string): Content => {
  const value = record?.[key];
  return isRecord(value) ? value : {};
};

export const textAt = (record: Content | undefined, key: string): string | null => {
  const value = record?.[key];
  return typeof value === 'string' ? value : null;
};

/** The event if it has the shape of one, with a `content` that is at least a record. */
export const asEvent = (value: unknown): MatrixEvent | null => {
  if (!isRecord(value)) return null;
  const { type, event_id: eventId, sender, origin_server_ts: sentMs } = value;
  if (
    typeof type !== 'string' ||
    typeof eventId !== 'string' ||
    typeof sender !== 'string' ||
    typeof sentMs !== 'number'
  )
    return null;
  return { ...value, type, event_id: eventId, sender, origin_server_ts: sentMs, content: recordAt(value, 'content') };
};

export const eventsIn = (value: unknown): readonly MatrixEvent[] =>
  Array.isArray(value) ? value.map(asEvent).filter((event) => event !== null) : [];

const relation = (event: MatrixEvent): Content => recordAt(event.content, 'm.relates_to');

/** The first event of the thread this one stands in. */
export const threadRootOf = (event: MatrixEvent): string | null =>
  textAt(relation(event), 'rel_type') === 'm.thread' ? textAt(relation(event), 'event_id') : null;

/** The event this one answers by the member's own choice; a thread's stand-in for older clients does not count. */
export const repliedTo = (event: MatrixEvent): string | null => {
  const rel = relation(event);
  if (textAt(rel, 'rel_type') === 'm.thread' && rel['is_falling_back'] === true) return null;
  return textAt(recordAt(rel, 'm.in_reply_to'), 'event_id');
};

export const isEdit = (event: MatrixEvent): boolean => textAt(relation(event), 'rel_type') === 'm.replace';

/** Places an answer: in the asker's thread, or else as a reply. */
export const answerRelation = (asked: MatrixEvent): Content => relationTo(asked.event_id, threadRootOf(asked));

export const relationTo = (eventId: string, threadRoot: string | null): Content =>
  threadRoot === null
    ? { 'm.in_reply_to': { event_id: eventId } }
    : { rel_type: 'm.thread', event_id: threadRoot, is_falling_back: true, 'm.in_reply_to': { event_id: eventId } };
