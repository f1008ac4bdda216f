/** The SDK's client over our own HTTP calls, with sends whose transaction id we choose. */
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { asEvent, isRecord, textAt } from '../answer/matrix-event.js';
import type { Call, Homeserver } from './homeserver-call.js';
import { EncryptedRoomEvent, MatrixClient } from './sdk.js';
import type { RustSdkCryptoStorageProvider } from './sdk.js';

/** A class because the SDK is extended by inheritance: its encryption engine makes its requests through `doRequest`. */
export class PierhandMatrixClient extends MatrixClient {
  constructor(
    url: string,
    accessToken: string,
    crypto: RustSdkCryptoStorageProvider | null,
    readonly homeserver: Homeserver,
  ) {
    super(url, accessToken, null as never, crypto as never);
  }

  override doRequest(
    method: Call['method'],
    endpoint: string,
    query: unknown = null,
    body: unknown = null,
    timeoutMs = 60_000,
    _raw = false,
    contentType = 'application/json',
  ): Promise<unknown> {
    return this.homeserver.call({
      method,
      path: endpoint,
      body,
      timeoutMs,
      contentType,
      ...(isRecord(query) ? { query: query as NonNullable<Call['query']> } : {}),
    });
  }

  get hasCrypto(): boolean {
    return (this.crypto as unknown) !== undefined;
  }

  /** Hands a sync's device messages and key counts to the encryption engine; its rooms are read elsewhere. */
  async takeInKeys(sync: Content): Promise<void> {
    await this.processSync({ ...sync, rooms: undefined, account_data: undefined });
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
    const encrypt = this.hasCrypto && type !== 'm.reaction' && (await this.crypto.isRoomEncrypted(roomId));
    const [sentType, sentContent] = encrypt
      ? [
          'm.room.encrypted',
          withRelation((await this.crypto.encryptRoomEvent(roomId, type, content)) as unknown as Content, content),
        ]
      : [type, content];
    const answer = await this.homeserver.call({
      method: 'PUT',
      body: sentContent,
      patienceMs,
      path: `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/send/${encodeURIComponent(sentType)}/${encodeURIComponent(transactionId)}`,
    });
    return (isRecord(answer) ? textAt(answer, 'event_id') : null) ?? '';
  }

  /** An encrypted event opened, or the event as it is where it cannot be. */
  async opened(roomId: string, event: MatrixEvent): Promise<MatrixEvent> {
    if (event.type !== 'm.room.encrypted' || !this.hasCrypto) return event;
    try {
      const decrypted = await this.crypto.decryptRoomEvent(new EncryptedRoomEvent(event), roomId);
      const clear = asEvent(decrypted.raw);
      if (clear === null) return event;
      // Relations travel outside the ciphertext.
      const relation = event.content['m.relates_to'];
      return relation === undefined || 'm.relates_to' in clear.content
        ? clear
        : { ...clear, content: { ...clear.content, 'm.relates_to': relation } };
    } catch {
      return event;
    }
  }
}

/** Servers and clients find threads by the relation, so it stands beside the ciphertext. */
const withRelation = (encrypted: Content, clear: Content): Content =>
  clear['m.relates_to'] === undefined ? encrypted : { ...encrypted, 'm.relates_to': clear['m.relates_to'] };
