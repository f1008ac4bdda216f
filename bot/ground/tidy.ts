/** Text from members made safe to read and to echo. */

// Control characters, bidirectional overrides, invisible joiners and halves of characters have no place in a question.
// eslint-disable-next-line no-control-regex -- these are what is taken out
const UNSEEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Cf}\p{Cs}]/gu;

/** What calls a whole channel or room on one platform or another. */
const CALL_TO_ALL = /@+(?=everyone|here|room|channel)/giu;

/** Without characters that nobody sees; tabs and line feeds stay. */
export const withoutUnseen = (text: string): string => text.replace(UNSEEN, '');

/** Text from a member made safe to echo: unseen characters and calls to all gone, white space folded, at most `limit` characters. */
export const tidy = (text: string, limit = 60): string => {
  const clean = withoutUnseen(text).replace(CALL_TO_ALL, '').replace(/\s+/gu, ' ').trim();
  const characters = Array.from(clean);
  return characters.length <= limit ? clean : `${characters.slice(0, limit - 1).join('')}…`;
};
