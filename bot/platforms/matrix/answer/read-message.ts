/** Finds what a member's message asks of the bot: a command line, a picked number, or nothing. Pure. */
import { numberIn, numberInWords, numberOfKeycap, type NumberInWords } from './choices.js';
import type { MatrixEvent } from './matrix-event.js';
import { isEdit, recordAt, repliedTo, textAt, threadRootOf } from './matrix-event.js';

export type Asked =
  /** `repliedTo`: a file that it speaks of may be there. */
  | { readonly kind: 'line'; readonly line: string; readonly repliedTo: string | null }
  /** A file or picture; `addressed`: in a direct room. */
  | { readonly kind: 'file'; readonly addressed: boolean; readonly threadRoot: string | null }
  /** Words in a thread, to nobody by name: the member's own where a walk of theirs waits there. */
  | { readonly kind: 'words'; readonly text: string; readonly threadRoot: string }
  /** A number, alone or with words round it. `addressed`: to the bot for certain; else it may be members talking among themselves. */
  | {
      readonly kind: 'number';
      readonly number: number;
      /** Where words stand round it. */
      readonly words: NumberInWords | null;
      readonly addressed: boolean;
      readonly repliedTo: string | null;
      readonly threadRoot: string | null;
    }
  | { readonly kind: 'reaction'; readonly number: number; readonly targetId: string };

export interface Me {
  readonly userId: string;
  /** Display names, as members may write them. */
  readonly names: readonly string[];
  /** `!pier`. */
  readonly prefix: string;
}

const BODY_LIMIT = 20_000;

/** Older clients put the message that is replied to before the reply, each line after "> ". */
const withoutQuote = (body: string): string => body.replace(/^(?:> .*(?:\n|$))+\n?/u, '');

const decoded = (html: string): string =>
  html
    .replace(/<[^>]*>/gu, '')
    .replace(/&lt;/gu, '<')
    .replace(/&gt;/gu, '>')
    .replace(/&quot;/gu, '"')
    .replace(/&#0*39;|&#x0*27;|&apos;/giu, "'")
    .replace(/&nbsp;/gu, ' ')
    .replace(/&amp;/gu, '&');

interface Pill {
  readonly userId: string;
  readonly text: string;
}

/** Mention pills: links to a member, in the order they stand. */
const pillsIn = (event: MatrixEvent): readonly Pill[] => {
  const html = textAt(event.content, 'formatted_body');
  if (html === null || textAt(event.content, 'format') !== 'org.matrix.custom.html') return [];
  const own = html.slice(0, BODY_LIMIT).replace(/<mx-reply>[\s\S]*?<\/mx-reply>/giu, '');
  return [
    ...own.matchAll(
      /<a\s[^>]{0,20}href=["']https:\/\/matrix\.to\/#\/([^"'?]{1,400})(?:\?[^"']{0,400})?["'][^>]{0,100}>([\s\S]{0,600}?)<\/a>/giu,
    ),
  ].flatMap(([, address = '', inner = '']) => {
    let userId: string;
    try {
      userId = decodeURIComponent(address);
    } catch {
      return [];
    }
    const text = decoded(inner).trim();
    return /^@[^\s:]+:\S+$/u.test(userId) && text !== '' ? [{ userId, text }] : [];
  });
};

/** The body with members' ids where pills stand, so that options that name a member can read them. */
const withIdsForPills = (body: string, pills: readonly Pill[]): string => {
  let from = 0;
  let text = body;
  for (const { userId, text: shown } of pills) {
    const at = text.indexOf(shown, from);
    if (at === -1) continue;
    text = text.slice(0, at) + userId + text.slice(at + shown.length);
    from = at + userId.length;
  }
  return text;
};

const mentions = (event: MatrixEvent, userId: string): boolean => {
  const ids = recordAt(event.content, 'm.mentions')['user_ids'];
  return Array.isArray(ids) && ids.includes(userId);
};

const startsWith = (text: string, start: string): boolean =>
  text.slice(0, start.length).toLowerCase() === start.toLowerCase();

/**
 * The part after the bot's prefix or name, or null where the message does not open with either. A bare name counts only
 * before a comma or colon: a sentence may well begin with it. A mention counts as it stands.
 */
const afterAddress = (body: string, me: Me, mentioned: boolean): string | null => {
  if (startsWith(body, me.prefix) && /^(?:[\s,:]|$)/u.test(body.slice(me.prefix.length)))
    return body.slice(me.prefix.length).replace(/^[\s,:]+/u, '');
  const localpart = me.userId.slice(1, me.userId.indexOf(':'));
  const names = [me.userId, ...me.names.filter((name) => name !== ''), localpart].sort((a, b) => b.length - a.length);
  for (const name of names) {
    for (const start of [name, `@${name}`]) {
      if (!startsWith(body, start)) continue;
      const rest = body.slice(start.length);
      const sure = mentioned || name === me.userId;
      if (sure ? /^(?:[\s,:]|$)/u.test(rest) : /^\s*[,:]/u.test(rest)) return rest.replace(/^[\s,:]+/u, '');
    }
  }
  return null;
};

/** The part of the body that is said to the bot for certain, or null. */
const saidToMe = (event: MatrixEvent, body: string, me: Me, isPrivate: boolean): string | null => {
  const pills = pillsIn(event);
  const withIds = withIdsForPills(body, pills);
  const isMentioned = mentions(event, me.userId);
  return (
    afterAddress(withIds, me, isMentioned || pills[0]?.userId === me.userId) ??
    // Where a pill's text could not be found the plain body still counts.
    afterAddress(body, me, isMentioned) ??
    (isPrivate ? withIds : null)
  );
};

const askedInText = (event: MatrixEvent, written: string, me: Me, isPrivate: boolean): Asked | null => {
  const body = withoutQuote(written.slice(0, BODY_LIMIT)).trim();
  const said = saidToMe(event, body, me, isPrivate);
  const bare = numberIn(said ?? body);
  // With words round it, in a room among others, it may be said to anyone.
  const isToMe = said !== null || threadRootOf(event) !== null || repliedTo(event) !== null;
  const inWords = bare === null && isToMe ? numberInWords(said ?? body) : null;
  const number = bare ?? inWords?.number;
  if (number !== undefined) {
    return {
      kind: 'number',
      number,
      words: inWords,
      addressed: said !== null,
      repliedTo: repliedTo(event),
      threadRoot: threadRootOf(event),
    };
  }
  if (said !== null) return { kind: 'line', line: said === '' ? 'help' : said, repliedTo: repliedTo(event) };
  const threadRoot = threadRootOf(event);
  return threadRoot === null || body === '' ? null : { kind: 'words', text: body, threadRoot };
};

/** @param isPrivate in a direct room everything is said to the bot, prefix or not */
export const askedIn = (event: MatrixEvent, me: Me, isPrivate: boolean): Asked | null => {
  if (event.sender === me.userId) return null;
  if (event.type === 'm.reaction') return reactionIn(event);
  // An edit of a question is not a new one.
  if (event.type !== 'm.room.message' || isEdit(event)) return null;
  const kind = textAt(event.content, 'msgtype');
  if (kind === 'm.file' || kind === 'm.image')
    return { kind: 'file', addressed: isPrivate, threadRoot: threadRootOf(event) };
  // Answers of bots are notices.
  const written = kind === 'm.text' ? textAt(event.content, 'body') : null;
  return written === null ? null : askedInText(event, written, me, isPrivate);
};

const reactionIn = (event: MatrixEvent): Asked | null => {
  const relation = recordAt(event.content, 'm.relates_to');
  const targetId = textAt(relation, 'event_id');
  const number = numberOfKeycap(textAt(relation, 'key') ?? '');
  return textAt(relation, 'rel_type') !== 'm.annotation' || targetId === null || number === null
    ? null
    : { kind: 'reaction', number, targetId };
};
