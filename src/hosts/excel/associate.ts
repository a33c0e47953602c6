import { onMissingBook } from '../../../functions/books.ts';
import { functions } from '../../../functions/index.ts';
import { offerMissingBooks } from './missing-books.ts';
import { type FunctionHost, register } from './register.ts';

/**
 * The script that spreadsheets load for the worksheet functions: needs no document, no Office and no
 * network, only a global that takes functions by id. Without that global there is nothing to do.
 */
const host = (globalThis as { readonly CustomFunctions?: FunctionHost }).CustomFunctions;
if (host !== undefined) {
  register(host, functions);
  offerMissingBooks(onMissingBook);
}
