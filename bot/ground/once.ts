/** What is dear to make and stays as it is: made when first asked for, and kept; null and undefined count as made. */
export const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};
