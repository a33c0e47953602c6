import { nameKey } from '../../domain/kernel/names.ts';
import type { Failure } from '../../domain/kernel/result.ts';

/** One thing to mend in a table: where it stands and what to do. */
export interface Finding {
  readonly table: string;
  /** 1 is the first row under the headers; undefined where the whole table is meant. */
  readonly row: number | undefined;
  readonly column: string | undefined;
  /** What is wrong there and what to do, as the end of the sentence. */
  readonly says: string;
}

/** What a reading found to mend. `failure` says it as one message, for where only a text can be shown. */
export interface Unread {
  readonly ok: false;
  readonly failure: Failure;
  readonly findings: readonly Finding[];
}

/** As many as a person can mend at a sitting, and a message can hold. */
export const MOST_SHOWN = 20;

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

  /** Whether any row of a table has findings of its own. */
  excusesAny(table: string): boolean {
    return [...this.excusedNames].some((excused) => excused.startsWith(`${table} `));
  }

  get none(): boolean {
    return this.found.length === 0;
  }

  get list(): readonly Finding[] {
    return this.found.map((finding) => finding());
  }

  /** No book can be made of this; words are made once they are asked for. */
  unread(): Unread {
    const { found } = this;
    const list = () => this.list;
    return {
      ok: false,
      failure: {
        kind: 'wrong',
        get sentence() {
          const shown = found.slice(0, MOST_SHOWN).map((finding) => findingSentence(finding()));
          return [...shown, ...moreThanShown(found.length)].join('\n');
        },
      },
      get findings() {
        return list();
      },
    };
  }
}

/** What to say of the findings that are not shown. */
export const moreThanShown = (all: number): readonly string[] =>
  all > MOST_SHOWN ? [`And ${all - MOST_SHOWN} more.`] : [];

export const findingSentence = (finding: Finding): string =>
  `${placeWords(finding)} ${finding.says.replace(/([^.?!])$/u, '$1.')}`;

/** Where it stands: "Lots, row 3, Quantity". */
export const placeWords = ({ table, row, column }: Omit<Finding, 'says'>): string =>
  [table, row === undefined ? [] : `row ${row}`, column ?? []].flat().join(', ');
