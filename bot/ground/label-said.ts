/** A line shown beside the answers, typed rather than picked: "go back a step", "please show right entries", "3. why this". */

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .replace(/^[\s#(]*\d{1,2}[\s.):,-]+/u, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');

const POLITE = new Set('please pls plz ok okay thanks thank ta'.split(' '));
/** A word more or less that turns the sense round. */
const TURNS = new Set(
  'not no never nothing none isnt arent wasnt dont doesnt didnt cant cannot wont hardly nearly almost'.split(' '),
);

/** The one word that the longer has and the shorter lacks, all others in the same order; null where more differs. */
const wordBetween = (longer: readonly string[], shorter: readonly string[]): string | null => {
  if (longer.length !== shorter.length + 1) return null;
  const at = longer.findIndex((word, index) => word !== shorter[index]);
  return longer.slice(at + 1).every((word, index) => word === shorter[at + index]) ? (longer[at] ?? null) : null;
};

/** A label of so many words is known with one more, or one fewer; a shorter one would be another sentence. */
const FEWEST_FOR_ONE_MORE = 3;
const FEWEST_FOR_ONE_LESS = 4;

/** Whether a typed line is the label: its words in order, at most one more or less, whatever the case, marks and politeness. */
export const labelSaid = (label: string, line: string): boolean => {
  const shown = wordsOf(label);
  const said = wordsOf(line).filter((word) => shown.includes(word) || !POLITE.has(word));
  if (shown.length === 0) return false;
  if (said.join(' ') === shown.join(' ')) return true;
  const more = shown.length >= FEWEST_FOR_ONE_MORE ? wordBetween(said, shown) : null;
  const less = shown.length >= FEWEST_FOR_ONE_LESS ? wordBetween(shown, said) : null;
  const between = more ?? less;
  return between !== null && !TURNS.has(between);
};
