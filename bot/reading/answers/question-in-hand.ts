/** A question with the answers it offers, and the one that a member's words mean. */
export interface AnswerLabel {
  readonly id: string;
  /** As a member reads it. */
  readonly label: string;
}

export interface QuestionInHand {
  /** The check's. */
  readonly id: string;
  /** "Not sure" aside. */
  readonly answers: readonly AnswerLabel[];
  /** The answer of a sound set-up, where the question has one. */
  readonly good?: string | undefined;
  /** The sound answer lets gear be put to use that a wrong one would destroy: a guess is not enough for it. */
  readonly guards?: boolean | undefined;
  /** The words told something else already: they answer this too only where they use the answer's own words. */
  readonly isAside?: boolean | undefined;
}

export interface AnswerMeant {
  readonly id: string;
  readonly label: string;
  /** 0 to 1: how far the answer's own words were said. */
  readonly score: number;
  /** Said well enough to be taken; else only the nearest. */
  readonly isSure: boolean;
}
