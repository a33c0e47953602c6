/** An error's text, as a cell shows it. */
export const isError = (found: unknown): found is string =>
  typeof found === 'string' && /^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!)$/u.test(found);
