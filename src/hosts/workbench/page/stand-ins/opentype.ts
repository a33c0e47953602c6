/** Stands in for the grid's reader of font files: the page loads none, so none is ever read. */
export function parse(): never {
  throw new Error('The workbench reads no font files.');
}
