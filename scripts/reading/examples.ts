/** Lines of examples/*.jsonl: a sentence that tells one thing or nothing, or a message with what each piece of it tells. */

export interface Example {
  readonly text: string;
  /** Label ("check.answer") and the piece of the text that tells it. */
  readonly facts: readonly { readonly label: string; readonly quote: string }[];
  /** It is one saying, however many clauses it has. */
  readonly whole: boolean;
}

interface Raw {
  readonly text: string;
  readonly what?: string;
  /** null: near a telling of `what`, and none. */
  readonly answer?: string | null;
  readonly facts?: readonly { readonly label: string; readonly quote: string }[];
}

/** @param isAnswer whether a label is one of today's answers; others are passed over */
export const readExamples = (lines: string, isAnswer: (label: string) => boolean): readonly Example[] =>
  lines
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line) as Raw)
    .flatMap(({ text, what, answer, facts }): Example[] => {
      if (what === undefined) {
        const known = (facts ?? []).filter(({ label, quote }) => isAnswer(label) && text.includes(quote));
        return [{ text, facts: known, whole: false }];
      }
      if (answer === null) return [{ text, facts: [], whole: true }];
      const label = `${what}.${answer}`;
      return isAnswer(label) ? [{ text, facts: [{ label, quote: text }], whole: true }] : [];
    });
