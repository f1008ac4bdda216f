/** Faces and thumbs beside words say nothing that the words do not. */
const FACES = /\p{Extended_Pictographic}|\p{Emoji_Modifier}|\u200d|\ufe0f|[:;]-?[)dp](?=\s|$)/giu;
/** Longer than this, or of several lines, it may be a log with marks of its own. */
const LONGEST = 300;

/** A thumb up or a tick alone is a yes. */
const YES = /^(?:\p{Emoji_Modifier}|\ufe0f|[\s👍✅✔🎉🥳])+$/u;

/** @returns the words of a line without them; as it was where nothing else would be left */
export const withoutFaces = (text: string): string => {
  if (text.length > LONGEST || text.includes('\n')) return text;
  if (YES.test(text) && text.trim() !== '') return 'yes';
  const bare = text.replace(FACES, ' ').replace(/\s+/gu, ' ').trim();
  return bare === '' ? text : bare;
};
