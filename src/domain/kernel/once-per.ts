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

/** The same for questions about a thing, told apart by a key; at most `most` answers are kept for each thing. */
export function oncePerKey<T extends object, A>(
  most = Infinity,
): (thing: T, key: string, work: () => A) => A {
  const answersOf = oncePer<T, Map<string, { readonly answer: A }>>(() => new Map());
  return (thing, key, work) => {
    const known = answersOf(thing);
    let found = known.get(key);
    if (found === undefined) {
      found = { answer: work() };
      if (known.size >= most) known.clear();
      known.set(key, found);
    }
    return found.answer;
  };
}
