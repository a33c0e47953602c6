import { runInNewContext } from 'node:vm';
import { HostOfFunctions } from '../support/worksheet-functions.ts';
import { built } from './built.ts';

/** Loads dist/functions.js as a spreadsheet does (contract §6): where nothing is but a place to register, and a clock. */
export function loadBuilt(): HostOfFunctions {
  const host = new HostOfFunctions();
  runInNewContext(built('dist/functions.js'), { CustomFunctions: host, Date });
  return host;
}
