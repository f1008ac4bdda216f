/** What reading a time or a date can come to; the sentences live in wording.ts. */

/** A date on the calendar of a zone's clocks. */
export interface LocalDate {
  readonly year: number;
  /** 1..12. */
  readonly month: number;
  /** 1..31. */
  readonly day: number;
}

export type TimeProblem = {
  readonly problem: 'bad-time' | 'date-out-of-range';
  /** One sentence or two, ≤ 400 characters, ready to show. */
  readonly message: string;
};

/** `utcMs` as Date.getTime; `note` says where daylight saving skipped or repeated the local time, and which reading was taken. */
export type TimeResolution = { readonly utcMs: number; readonly note?: string } | TimeProblem;

export type DateResolution = { readonly date: LocalDate } | TimeProblem;
