/** What is worked out of a thing that stays as it is: once, and kept as long as the thing is. */

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
