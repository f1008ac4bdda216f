/** The fitted marks by number, so that a text is marked without writing their names. */
import { BY_NAME, type Naming } from './marks.js';

/** What is no fitted mark, or part of one. */
export const NO_MARK = -1;

/** @param names the mark's number is its place */
export const numberMarks = (names: readonly string[]): Naming<number, number> => {
  const alone = new Map<string, number>();
  const parts = new Map<string, number>();
  const numberOf = (part: string): number => {
    const number = parts.get(part) ?? parts.size;
    parts.set(part, number);
    return number;
  };
  const pairs: { readonly mark: number; readonly before: number; readonly own: number; readonly isApart: boolean }[] =
    [];
  for (const [mark, name] of names.entries()) {
    const words = name.split(' ');
    const [before, own] = [words[0] ?? '', words.at(-1) ?? ''];
    if (words.length === 1) alone.set(name, mark);
    else
      pairs.push({ mark, before: numberOf(before), own: numberOf(own), isApart: name === BY_NAME.apart(before, own) });
  }
  const count = parts.size;
  const next = new Map<number, number>();
  const apart = new Map<number, number>();
  for (const { mark, before, own, isApart } of pairs) (isApart ? apart : next).set(before * count + own, mark);
  const within =
    (marks: ReadonlyMap<number, number>) =>
    (before: number, own: number): number =>
      before === NO_MARK || own === NO_MARK ? NO_MARK : (marks.get(before * count + own) ?? NO_MARK);
  return {
    alone: (name) => alone.get(name) ?? NO_MARK,
    part: (name) => parts.get(name) ?? NO_MARK,
    next: within(next),
    apart: within(apart),
  };
};
