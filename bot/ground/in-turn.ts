/** Pieces of work on one thing, each begun when the one before has ended, well or badly; on different things at once. */
export type InTurn = <T>(of: string, work: () => Promise<T>) => Promise<T>;

export const createInTurn = (): InTurn => {
  const chains = new Map<string, Promise<unknown>>();
  return (of, work) => {
    const result = (chains.get(of) ?? Promise.resolve()).then(work);
    const ended = result.catch(() => undefined);
    chains.set(of, ended);
    // Nothing is kept of what nobody waits for.
    void ended.then(() => {
      if (chains.get(of) === ended) chains.delete(of);
    });
    return result;
  };
};
