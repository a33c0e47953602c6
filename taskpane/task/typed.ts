/** Figures by the name of what they count, exactly as typed; a name that is absent was never typed. */
export type Typed = Readonly<Record<string, string>>;

/** The figure typed by that name: a maker may call a thing what every object has, such as "constructor". */
export const typedAt = (typed: Typed, name: string): string | undefined =>
  Object.hasOwn(typed, name) ? typed[name] : undefined;

/** The figures with one typed; `undefined` takes it away again. */
export function typedWith(typed: Typed, name: string, figure: string | undefined): Typed {
  const others = Object.entries(typed).filter(([known]) => known !== name);
  return Object.fromEntries(figure === undefined ? others : [...others, [name, figure]]);
}
