/** What a member is told who asks more than can be answered just now. */
export const tooManyWords = (waitSeconds: number): string =>
  `One moment, please: that was a lot of questions at once. Ask again in ${waitSeconds} s.`;

/** What a member is told while all members together ask more than can be answered in time. */
export const BUSY_WORDS = 'Many are asking me at this very moment, and I cannot keep up. Please ask again in a minute.';
