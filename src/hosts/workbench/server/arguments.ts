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
  | {
      readonly kind: 'backups';
      /** The workbook asked about; undefined means the working copy of the starter. */
      readonly file: string | undefined;
      /** The number of the backup to go back to; undefined only lists them. */
      readonly take: number | undefined;
    }
  | { readonly kind: 'refused'; readonly sentence: string };

const usage = 'Usage: server.js [path/to/book.xlsx] [--port N] [--fresh] [--backups] [--take N]';

/** Reads the arguments after the script's name. */
export function parseArguments(given: readonly string[]): Arguments {
  let file: string | undefined;
  let port: number | undefined;
  let [fresh, backups] = [false, false];
  let take: number | undefined;
  for (let at = 0; at < given.length; at += 1) {
    const argument = given[at] ?? '';
    const inline = /^--port=(.*)$/.exec(argument)?.[1];
    if (argument === '--fresh') fresh = true;
    else if (argument === '--backups') backups = true;
    else if (argument === '--take') {
      const text = given[(at += 1)] ?? '';
      if (!/^[1-9]\d{0,3}$/.test(text)) return refused(`"${text}" is no number of a backup.`);
      take = Number(text);
    } else if (argument === '--port' || inline !== undefined) {
      const text = inline ?? given[(at += 1)] ?? '';
      port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
      if (!(port >= 0 && port <= 65_535)) return refused(`"${text}" is no port (0 to 65535).`);
    } else if (argument.startsWith('-')) return refused(`"${argument}" is not known.`);
    else if (file !== undefined) return refused('Only one workbook can be open at a time.');
    else file = argument;
  }
  if (fresh && file !== undefined)
    return refused('--fresh is for the demo copy, not for your file.');
  if (!backups && take === undefined) return { kind: 'serve', file, port, fresh };
  if (fresh || port !== undefined)
    return refused('Looking at backups takes neither --fresh nor --port.');
  return { kind: 'backups', file, take };
}

function refused(sentence: string): Arguments {
  return { kind: 'refused', sentence: `${sentence} ${usage}` };
}
