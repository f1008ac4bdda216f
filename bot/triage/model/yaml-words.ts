/** What is wrong with a YAML file, in the words of whoever wrote it in a text editor: one mistake, since the rest follows from it. */
import { isScalar, isSeq, visit, type LineCounter, type Node, type YAMLError } from 'yaml';

interface Misfit {
  /** 1-based. */
  readonly line: number;
  readonly message: string;
}

const TAB_BEFORE_TEXT = /^[ -]*\t/u;
const FIELD = /^\s*(?:- )?(?:[\w-]+:|-)\s+(\S.*)$/u;
const NO_SPACE_AFTER_COLON = /^\s*(?:- )?[a-z][\w-]*:[^\s/]/iu;
/** Whole in its quotes, with nothing but a remark behind it. */
const WELL_QUOTED = /^(?:'(?:[^']|'')*'|"(?:[^"\\]|\\.)*")\s*(?:#.*)?$/u;
const STARTS_A_FORM = /^[[{*&!|>%@`]/u;

/** What makes the text behind a key no text, where that can be told. */
const trouble = (value: string): string | null => {
  if (/^['"]/u.test(value) && !WELL_QUOTED.test(value))
    return `quotes at its start: put the whole text between quotes, '…', and write each ' within it twice`;
  if (!/^['"[{]/u.test(value) && /:(?:\s|$)/u.test(value))
    return `a colon in the text: put the whole text between quotes, such as 'Mode: EQ'`;
  const [first = ''] = value;
  if (STARTS_A_FORM.test(value) && !/^(?:\[.*\]|\{.*\})\s*(?:#.*)?$/u.test(value))
    return `the text starts with ${first}: put the whole text between quotes, '…'`;
  return null;
};

const lineTrouble = (line: string): string | null => {
  const value = FIELD.exec(line)?.[1];
  if (value !== undefined) return trouble(value);
  return NO_SPACE_AFTER_COLON.test(line) ? 'a space is wanted after the colon' : null;
};

/** The line of the mistake among those beside the one that the library names, where it can be told. */
const misfitBeside = (rows: readonly string[], line: number): Misfit | null => {
  // The library may notice only behind the mistake: an open quote, at the end of the file.
  const open = rows.findIndex((row) => /^['"]/u.test(FIELD.exec(row)?.[1] ?? '') && lineTrouble(row) !== null);
  for (const at of [line, line - 1, line + 1, open + 1]) {
    const message = lineTrouble(rows[at - 1] ?? '');
    if (message !== null) return { line: at, message };
  }
  return null;
};

const OF_INDENTS: ReadonlySet<string> = new Set(['BAD_INDENT', 'BLOCK_AS_IMPLICIT_KEY', 'MULTILINE_IMPLICIT_KEY']);

const libraryMessage = ({ code, message }: YAMLError, row: string): string => {
  if (OF_INDENTS.has(code)) return 'not as far in as the lines beside it, here or in the next line';
  if (code === 'DUPLICATE_KEY')
    return `${/^\s*(?:- )?([\w-]+):/u.exec(row)?.[1] ?? 'this'} stands there twice; leave one`;
  const [first = ''] = message.split('\n');
  return `not readable as YAML: ${first.replace(/ at line \d+, column \d+:?$/u, '')}`;
};

/** @param error the first that the YAML library found */
export const yamlMisfit = (text: string, error: YAMLError, lines: LineCounter): Misfit => {
  const rows = text.split(/\r?\n/u);
  const tab = rows.findIndex((row) => TAB_BEFORE_TEXT.test(row));
  if (tab >= 0) return { line: tab + 1, message: 'a tab; use spaces' };
  const { line } = lines.linePos(error.pos[0]);
  const beside = error.code === 'DUPLICATE_KEY' ? null : misfitBeside(rows, line);
  return beside ?? { line, message: libraryMessage(error, rows[line - 1] ?? '') };
};

/** Lists of sentences: an item of one begins with a capital, a figure or a sign. */
const SENTENCES: ReadonlySet<unknown> = new Set(['steps', 'otherwise', 'lasting']);

/** Steps between brackets that a comma within a sentence has parted in two, told by the small letter after it. */
export const partedSteps = (entry: Node): readonly { readonly at: Node; readonly message: string }[] => {
  const found: { readonly at: Node; readonly message: string }[] = [];
  visit(entry, {
    Pair: (_, { key, value }) => {
      if (!isScalar(key) || !SENTENCES.has(key.value) || !isSeq(value) || value.flow !== true) return;
      const part = value.items.find(
        (item, at) => at > 0 && isScalar(item) && item.type === 'PLAIN' && /^\p{Ll}/u.test(String(item.value)),
      );
      if (isScalar(part))
        found.push({
          at: part,
          message: `${String(key.value)}: a comma within [ ] parts the text before “${String(part.value)}”: put the whole sentence between quotes`,
        });
    },
  });
  return found;
};
