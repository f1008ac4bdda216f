/** What is dear to make and stays as it is: made when first asked for, and kept. */

/** Null and undefined count as made. */
export const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** What is worked out of a thing, or belongs to it: once for each, and kept as long as the thing is. */
export const onceOf = <Thing extends object, Made>(make: (thing: Thing) => Made): ((thing: Thing) => Made) => {
  const known = new WeakMap<Thing, { readonly made: Made }>();
  return (thing) => {
    const before = known.get(thing);
    if (before !== undefined) return before.made;
    const made = make(thing);
    known.set(thing, { made });
    return made;
  };
};
