/** Works a thing's answer out once and keeps it as long as the thing itself; the thing must never change. */
export function oncePer<T extends object, A>(work: (thing: T) => A): (thing: T) => A {
  const known = new WeakMap<T, { readonly answer: A }>();
  return (thing) => {
    let found = known.get(thing);
    if (found === undefined) {
      found = { answer: work(thing) };
      known.set(thing, found);
    }
    return found.answer;
  };
}
