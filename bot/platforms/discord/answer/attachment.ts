/** A Discord attachment as a file a command may read. */
import type { APIAttachment } from 'discord-api-types/v10';
import type { MemberFile } from '../../../ground/member-file.js';
import { tidy } from '../../../ground/tidy.js';
import type { Bot } from '../connect/bot.js';
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

type Sent = Pick<APIAttachment, 'filename' | 'size' | 'url'>;

/** `turn`: waited for between fetching and reading, which may be much to read. */
export const memberFile = (
  { filename, size, url }: Sent,
  apiUrl: string | undefined,
  turn: () => Promise<void> = async () => undefined,
): MemberFile => ({
  name: tidy(filename, NAME_LIMIT),
  sizeBytes: size,
  load: async () => {
    const fetched = await fetchFile({ url, origins: originsFor(apiUrl) });
    await turn();
    return fetched;
  },
});

/** One member's files, however many they send at once, are read by turns with what others ask. */
export const filesOf =
  ({ context, takeTurn }: Bot, memberId: string) =>
  (sent: Sent): MemberFile =>
    memberFile(sent, context.settings.discord?.apiUrl, () => takeTurn(memberId));
