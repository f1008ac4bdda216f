/** A plain question back on the step in hand ("what speed? where do I see that?"), which deserves the how-to and not the menu again. */

/** Longer than this is a story, whatever it asks. */
const LONGEST = 120;
const ASKS =
  /^(?:(?:sorry|ok|okay|but|and|hm+|er+|um+|uh)[,. ]+)*(?:what|where|which|how|why|who|when|is that|is it|do i|do you|can you|should i|meaning)\b|\?\s*$/iu;

export const asksBack = (text: string): boolean => text.length <= LONGEST && ASKS.test(text.trim());

/** Said in place of "I could not read a sure sign". */
export const ASKED_BACK = {
  notes: ['Here is how, once more. “Not sure” or “Could not do it” is an answer too.'],
  choices: [],
};
