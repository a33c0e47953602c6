import { nameKey } from '../../domain/kernel/names.ts';

/** One thing to mend in a table: where it stands and what to do. */
export interface Finding {
  readonly table: string;
  /** 1 is the first row under the headers; undefined where the whole table is meant. */
  readonly row: number | undefined;
  readonly column: string | undefined;
  /** What is wrong there and what to do, as the end of the sentence. */
  readonly says: string;
}

/** As many as a person can mend at a sitting, and a message can hold. */
const MOST_SHOWN = 20;

/** Collects findings; one bad row never hides the next. */
export class Findings {
  private readonly found: (() => Finding)[] = [];
  private readonly excusedNames = new Set<string>();

  /** Words that take long to find (the nearest known name) may be given as a function: few are ever shown. */
  add(
    table: string,
    row: number | undefined,
    column: string | undefined,
    says: string | (() => string),
  ): void {
    this.found.push(() => ({
      table,
      row,
      column,
      says: typeof says === 'string' ? says : says(),
    }));
  }

  /** A name whose own row has findings: rows that use it are not blamed as well. */
  excuse(table: string, name: string): void {
    this.excusedNames.add(`${table} ${nameKey(name)}`);
  }

  excused(table: string, name: string): boolean {
    return this.excusedNames.has(`${table} ${nameKey(name)}`);
  }

  get none(): boolean {
    return this.found.length === 0;
  }

  get list(): readonly Finding[] {
    return this.found.map((finding) => finding());
  }

  /** All of them, up to 20, as one message. */
  message(): string {
    const shown = this.found.slice(0, MOST_SHOWN).map((finding) => findingSentence(finding()));
    const more = this.found.length - shown.length;
    if (more > 0) shown.push(`And ${more} more.`);
    return shown.join('\n');
  }
}

export function findingSentence({ table, row, column, says }: Finding): string {
  const place = [table, row === undefined ? [] : `row ${row}`, column === undefined ? [] : column];
  return `${place.flat().join(', ')} ${says.replace(/([^.?!])$/u, '$1.')}`;
}
