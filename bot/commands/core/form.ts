/**
 * What is typed rather than picked. A command declares its forms; a choice opens one. Discord shows it as a form of
 * fields; where there is only a line to type, the choice's invitation stands in the answer and the line is taken as it comes.
 */

export interface FormField {
  /** The option of the command that the value fills; without it, the value joins the form's own option as "id value". */
  readonly option?: string;
  /** 1–20 lower-case characters, unlike the others of the form. */
  readonly id: string;
  /** 1–45 characters. */
  readonly label: string;
  /** At most 100 characters: an example, or where to look. */
  readonly hint?: string;
  readonly kind: 'line' | 'paragraph' | 'file';
  readonly required?: boolean;
}

export interface Form {
  /** 1–45 characters. */
  readonly title: string;
  /** The option that fields without one of their own fill together, joined by "; ". */
  readonly into?: string;
  /** One to five (Discord's limit). */
  readonly fields: readonly FormField[];
}
