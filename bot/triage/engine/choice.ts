/** What a walk may do next, with the expected minutes until the mount works or a person comes. */
export type Choice =
  | { readonly kind: 'ask'; readonly check: number; readonly again: boolean; readonly minutes: number }
  /** `otherwise`: the remedy's other way, after the first could not be done or did nothing. */
  | { readonly kind: 'try'; readonly fault: number; readonly otherwise: boolean; readonly minutes: number }
  | { readonly kind: 'handOn'; readonly minutes: number };
