/** What a member is told who asks more than can be answered just now. */
export const tooManyWords = (waitSeconds: number): string =>
  `One moment, please: that was a lot of questions at once. Ask again in ${waitSeconds} s.`;
