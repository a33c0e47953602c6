import { noteSources } from './built-from.ts';
import { inProject } from './folders.ts';

/** The last step of a whole build: tests that load dist/ can tell whether it still goes with the sources. */
noteSources(inProject('.'));
