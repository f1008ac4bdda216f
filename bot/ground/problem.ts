/** The one shape of failure: what was asked for, or a record whose `problem` is a code; with its words it is a Problem. */

/**
 * Something the member may pick next. Picking it runs `run` as if it had been typed, so choices need no memory
 * and survive restarts. At most 25 a reply; `label` ≤ 80 characters, `run` ≤ 90 (platform limits: see fittingChoices).
 */
export interface Choice {
  readonly label: string;
  /** A command line in the text grammar, without prefix: `up NGC 7331 site:Calgary`. */
  readonly run: string;
  /** Opens this form of the command that `run` names; what is typed there is added to `run`. */
  readonly form?: string;
  /** Beside `form`, for platforms without forms: one sentence on what to type, such as "Type them in one line: lst 5:12, alt 40". */
  readonly invitation?: string;
  /** Where several choices stand together, the one most people want. */
  readonly preferred?: boolean;
  /**
   * Where choices are written as text, such of one kind as follow one another share a line: a way out, beside the answers; or an answer
   * that is the same on every card, and known by its place.
   */
  readonly beside?: boolean | 'answer';
}

/** Who may read an answer. `asker`: shown to the one who asked alone (a member's own site, personal data). */
export type Audience = 'everyone' | 'asker';

/** Something was wrong with what was asked. `message` says what was wrong and what would be right, ≤ 400 characters. */
export interface Problem {
  readonly problem: string;
  readonly message: string;
  readonly choices?: readonly Choice[];
  /** Set by dispatch, as a Reply's is; absent: everyone. */
  readonly audience?: Audience;
}

export const MESSAGE_LIMIT = 400;

/** Makes a Problem; the code is kebab-case ("unknown-target"). Over-long messages are cut at the limit. */
export const problem = (code: string, message: string, choices?: readonly Choice[]): Problem => ({
  problem: code,
  message: message.length <= MESSAGE_LIMIT ? message : `${message.slice(0, MESSAGE_LIMIT - 1)}…`,
  ...(choices === undefined || choices.length === 0 ? {} : { choices }),
});

/**
 * Tells a failure from any value that is none: a Problem, or what a parser or a look-up found wrong, a code with its facts
 * (`{ problem: 'ambiguous-place', candidates }`), whose sentence is made where it is said.
 */
export const isProblem = <T>(value: T): value is Extract<T, { readonly problem: string }> =>
  // eslint-disable-next-line no-restricted-syntax -- the one place that asks
  typeof value === 'object' && value !== null && 'problem' in value;
