/** A Discord attachment as a file a command may read. */
import type { APIAttachment } from 'discord-api-types/v10';
import type { MemberFile } from '../../../ground/member-file.js';
import { tidy } from '../../../ground/tidy.js';
import { fetchFile } from '../../shared/fetch-file.js';

/** Where Discord keeps attachments (developer documentation, "Image Formatting" and "CDN Endpoints"). */
const MEDIA = ['https://cdn.discordapp.com', 'https://media.discordapp.net'];
const NAME_LIMIT = 80;

/** `apiUrl`: a double on this machine, set in place of Discord, hands out its files itself. */
const originsFor = (apiUrl: string | undefined): readonly string[] => {
  if (apiUrl === undefined || !URL.canParse(apiUrl)) return MEDIA;
  const { origin, hostname } = new URL(apiUrl);
  return hostname === '127.0.0.1' || hostname === 'localhost' ? [...MEDIA, origin] : MEDIA;
};

export const memberFile = (
  { filename, size, url }: Pick<APIAttachment, 'filename' | 'size' | 'url'>,
  apiUrl: string | undefined,
): MemberFile => ({
  name: tidy(filename, NAME_LIMIT),
  sizeBytes: size,
  load: () => fetchFile({ url, origins: originsFor(apiUrl) }),
});
