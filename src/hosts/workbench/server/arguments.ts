/** What the maker asked for on the command line. */
export type Arguments =
  | {
      readonly kind: 'serve';
      /** The workbook to open; undefined opens the working copy of the starter. */
      readonly file: string | undefined;
      /** The port asked for; undefined leaves it to us. */
      readonly port: number | undefined;
      /** Start the working copy anew. */
      readonly fresh: boolean;
    }
  | { readonly kind: 'refused'; readonly sentence: string };

const usage = 'Usage: server.js [path/to/book.xlsx] [--port N] [--fresh]';

/** Reads the arguments after the script's name. */
export function parseArguments(given: readonly string[]): Arguments {
  let file: string | undefined;
  let port: number | undefined;
  let fresh = false;
  for (let at = 0; at < given.length; at += 1) {
    const argument = given[at] ?? '';
    const inline = /^--port=(.*)$/.exec(argument)?.[1];
    if (argument === '--fresh') fresh = true;
    else if (argument === '--port' || inline !== undefined) {
      const text = inline ?? given[(at += 1)] ?? '';
      port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
      if (!(port >= 0 && port <= 65_535)) return refused(`"${text}" is no port (0 to 65535).`);
    } else if (argument.startsWith('-')) return refused(`"${argument}" is not known.`);
    else if (file !== undefined) return refused('Only one workbook can be open at a time.');
    else file = argument;
  }
  if (fresh && file !== undefined)
    return refused('--fresh is for the demo copy, not for your file.');
  return { kind: 'serve', file, port, fresh };
}

function refused(sentence: string): Arguments {
  return { kind: 'refused', sentence: `${sentence} ${usage}` };
}
