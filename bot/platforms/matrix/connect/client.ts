/** The SDK's client over our own HTTP calls, with sends whose transaction id we choose. */
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { isRecord, textAt } from '../answer/matrix-event.js';
import type { Call, Homeserver } from './homeserver-call.js';
import type { Encryption } from './encryption.js';
import { MatrixClient } from './sdk.js';

/** The SDK's parameters, in its order. */
type SdkRequest = [
  method: Call['method'],
  path: string,
  query?: unknown,
  body?: unknown,
  timeoutMs?: number,
  raw?: boolean,
  contentType?: string,
];

/** A class because the SDK is extended by inheritance: all its requests go through `doRequest`. */
export class PierhandMatrixClient extends MatrixClient {
  /** Null where encrypted rooms cannot be read. */
  encryption: Encryption | null = null;

  constructor(
    url: string,
    accessToken: string,
    readonly homeserver: Homeserver,
  ) {
    super(url, accessToken);
  }

  override doRequest(
    ...[method, path, query, body, timeoutMs = 60_000, , contentType = 'application/json']: SdkRequest
  ): Promise<unknown> {
    return this.homeserver.call({
      method,
      path,
      body,
      timeoutMs,
      contentType,
      ...(isRecord(query) ? { query: query as NonNullable<Call['query']> } : {}),
    });
  }

  /** Sends once for a transaction id: the server drops a repeat. Encrypts where the room is encrypted and encryption works. */
  async sendWithTransaction(
    roomId: string,
    type: string,
    content: Content,
    transactionId: string,
    patienceMs: number,
  ): Promise<string> {
    // Reactions stay readable in encrypted rooms, as their relation must be in the clear anyway.
    const lock = type === 'm.reaction' ? null : await this.lockFor(roomId);
    const [sentType, sentContent] =
      lock === null
        ? [type, content]
        : ['m.room.encrypted', withRelation(await lock.lock(roomId, type, content), content)];
    const answer = await this.homeserver.call({
      method: 'PUT',
      body: sentContent,
      patienceMs,
      path: `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/send/${encodeURIComponent(sentType)}/${encodeURIComponent(transactionId)}`,
    });
    return (isRecord(answer) ? textAt(answer, 'event_id') : null) ?? '';
  }

  /** The encryption to use for what is sent to a room, or null where the room is in the clear or nothing can be encrypted. */
  async lockFor(roomId: string): Promise<Encryption | null> {
    return this.encryption !== null && (await this.encryption.isRoomEncrypted(roomId)) ? this.encryption : null;
  }

  /** An encrypted event opened, or the event as it is where it cannot be. */
  async opened(roomId: string, event: MatrixEvent): Promise<MatrixEvent> {
    if (event.type !== 'm.room.encrypted' || this.encryption === null) return event;
    const clear = await this.encryption.open(roomId, event);
    if (clear === null) return event;
    // Relations travel outside the ciphertext.
    const relation = event.content['m.relates_to'];
    return relation === undefined || 'm.relates_to' in clear.content
      ? clear
      : { ...clear, content: { ...clear.content, 'm.relates_to': relation } };
  }
}

/** Servers and clients find threads by the relation, so it stands beside the ciphertext. */
const withRelation = (encrypted: Content, clear: Content): Content =>
  clear['m.relates_to'] === undefined ? encrypted : { ...encrypted, 'm.relates_to': clear['m.relates_to'] };
