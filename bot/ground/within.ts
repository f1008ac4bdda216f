/** Waits for work only so long. */

/** What the work gives, or `late` when it has given nothing after `ms`; the work itself goes on. Rejects as the work does. */
export const within = async <T, L>(work: Promise<T>, ms: number, late: L): Promise<T | L> => {
  let timer: NodeJS.Timeout | undefined;
  try {
    return await Promise.race([
      work,
      new Promise<L>((resolve) => {
        timer = setTimeout(resolve, ms, late);
      }),
    ]);
  } finally {
    clearTimeout(timer);
  }
};
