import type { Book, Design } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { allergenChecks } from './allergen-checks.ts';
import { type CheckLine, unknownLine } from './check-line.ts';
import { compositionOf } from './composition.ts';
import { limitChecks } from './limit-checks.ts';
import { lotChecks } from './lot-checks.ts';
import { moldChecks } from './mold-check.ts';
import { nameChecks } from './name-checks.ts';
import { weightChecks } from './weight-checks.ts';

/**
 * Everything that can be held against a figure before a design is sold, as of a day. An aid, not an
 * approval: what has no figure is `unknown`, and the last line says who decides. Fails where the
 * design has no layers.
 */
export function checksOf(book: Book, design: Design, today: Day): Result<readonly CheckLine[]> {
  return andThen(compositionOf(book, design), (composition) =>
    answer([
      ...limitChecks(composition),
      ...nameChecks(composition),
      ...allergenChecks(book, design, composition),
      ...weightChecks(design, composition),
      ...moldChecks(design, composition),
      ...lotChecks(book, design, composition, today),
      unknownLine(
        'Fit to be sold',
        'not decided here',
        'Your local rules and a licensed assessor decide; these checks only help',
      ),
    ]),
  );
}
