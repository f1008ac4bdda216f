/** A file or picture that a member sent, as a file a command may read: fetched from the homeserver's own media, opened where it is locked. */
import type { MemberFile } from '../../../ground/member-file.js';
import { isProblem, problem } from '../../../ground/problem.js';
import { tidy } from '../../../ground/tidy.js';
import { fetchFile } from '../../shared/fetch-file.js';
import type { TakeTurn } from '../../shared/take-turns.js';
import type { Encryption } from '../connect/encryption.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { recordAt, textAt } from './matrix-event.js';

const NAME_LIMIT = 80;
/** "mxc://server/id" (Matrix specification, "Matrix Content (mxc://) URIs"). */
const MXC = /^mxc:\/\/([A-Za-z0-9.:[\]-]{1,255})\/([A-Za-z0-9_-]{1,255})$/u;

const NOT_OPENED = problem(
  'file-not-opened',
  'That file does not open with its key. Send it again, or paste the lines themselves.',
);

export interface MediaParts {
  readonly homeserverUrl: string;
  readonly accessToken: string;
  readonly encryption: () => Encryption | null;
  /** Waited for between fetching and reading, which may be much to read: members by turns. */
  readonly takeTurn: TakeTurn;
}

/** Makes the file of a message; null where it holds none. */
export type FileReader = (event: MatrixEvent) => MemberFile | null;

const sizeIn = (content: Content): number | null => {
  const size = recordAt(content, 'info')['size'];
  return typeof size === 'number' && Number.isFinite(size) && size >= 0 ? size : null;
};

export const createFileReader =
  ({ homeserverUrl, accessToken, encryption, takeTurn }: MediaParts): FileReader =>
  ({ type, content, sender }) => {
    const kind = textAt(content, 'msgtype');
    if (type !== 'm.room.message' || (kind !== 'm.file' && kind !== 'm.image')) return null;
    const locked = recordAt(content, 'file');
    const isLocked = textAt(locked, 'url') !== null;
    const [, server, id] = MXC.exec(textAt(isLocked ? locked : content, 'url') ?? '') ?? [];
    if (server === undefined || id === undefined) return null;
    const path = `/_matrix/client/v1/media/download/${encodeURIComponent(server)}/${encodeURIComponent(id)}`;
    return {
      name: tidy(textAt(content, 'filename') ?? textAt(content, 'body') ?? '', NAME_LIMIT),
      sizeBytes: sizeIn(content),
      load: async () => {
        const bytes = await fetchFile({
          url: homeserverUrl + path,
          origins: [new URL(homeserverUrl).origin],
          headers: { Authorization: `Bearer ${accessToken}` },
        });
        await takeTurn(sender);
        if (isProblem(bytes) || !isLocked) return bytes;
        try {
          return encryption()?.openFile(bytes, locked) ?? NOT_OPENED;
        } catch {
          return NOT_OPENED;
        }
      },
    };
  };
