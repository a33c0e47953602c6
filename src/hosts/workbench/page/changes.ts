import type { CellEdit, SheetEdits, TableImage, WorkbookImage } from '../../../xlsx/image.ts';
import type { LiveTables } from './live-tables.ts';
import type { CellPlace } from './places.ts';
import type { Content, SheetCells } from './sheet-cells.ts';
import { sheetIdAt } from './sheet-ids.ts';

/** What must be written to the file: cells typed or written, formulas whose answer moved, tables. */
export interface Changes {
  /** Whether anyone changed a cell since the last save; new formula answers alone do not count. */
  readonly isWaiting: boolean;
  /** Takes what is waiting. Give it back with `returned` when it could not be saved. */
  take(): TakenEdits;
  /** What was typed or written of that, without the answers it moved; nothing is taken. */
  typed(): readonly SheetEdits[];
  onChange(listener: () => void): void;
}

export interface TakenEdits {
  readonly edits: readonly SheetEdits[];
  /** The file holds it now. */
  saved(): void;
  /** The file does not hold it: it waits again. */
  returned(): void;
}

/** Follows the cells from the state that the image describes. */
export function createChanges(
  sheets: SheetCells,
  tables: LiveTables,
  image: WorkbookImage,
): Changes {
  let dirty = new Map<string, CellPlace>();
  const answers = createAnswers(sheets, image);
  const listeners = new Set<() => void>();
  sheets.onEdit((cells) => {
    for (const cell of cells) dirty.set(keyOf(cell), cell);
    for (const listener of listeners) listener();
  });
  const grownTables = () =>
    tables
      .all()
      .filter(({ name }) => tables.changed().includes(name))
      .map((table) => ({ sheetId: table.sheetId, image: tables.image(table) }));
  const read = (places: ReadonlyMap<string, CellPlace>) =>
    [...places.values()].map((place) => ({ place, content: sheets.read(place) }));
  return {
    get isWaiting() {
      return dirty.size > 0 || tables.changed().length > 0;
    },
    typed: () => editsOf(sheets, read(dirty), grownTables()),
    onChange(listener) {
      listeners.add(listener);
    },
    take() {
      const taken = dirty;
      dirty = new Map();
      const typed = read(taken);
      const cells = new Map(
        [...typed, ...answers.moved(typed)].map((cell) => [keyOf(cell.place), cell]),
      );
      const images = grownTables();
      return {
        edits: editsOf(sheets, [...cells.values()], images),
        saved() {
          tables.markSaved(images.map((table) => table.image));
          answers.saved([...cells.values()]);
        },
        returned() {
          dirty = new Map([...taken, ...dirty]);
        },
      };
    },
  };
}

interface ReadCell {
  readonly place: CellPlace;
  readonly content: Content;
}

/** Which formula answers the file holds, and which have moved since. */
function createAnswers(sheets: SheetCells, image: WorkbookImage) {
  const answers = answersOf(image);
  const typedFormulas = new Set<string>();
  return {
    moved(typed: readonly ReadCell[]): readonly ReadCell[] {
      for (const { place, content } of typed) {
        if (content.formula === undefined) answers.delete(keyOf(place));
        else typedFormulas.add(keyOf(place));
      }
      return sheets
        .formulas()
        .map((place) => ({ place, content: sheets.read(place) }))
        .filter(({ place, content }) => {
          const key = keyOf(place);
          if (answers.get(key) === answerOf(content)) return false;
          return !isUnknownHere(content) || typedFormulas.has(key);
        });
    },
    saved(cells: readonly ReadCell[]) {
      for (const { place, content } of cells) {
        if (content.formula !== undefined) answers.set(keyOf(place), answerOf(content));
      }
    },
  };
}

/**
 * A function the grid does not know shows #NAME? here but has a good answer in the file, which is
 * kept as it is.
 */
const isUnknownHere = (content: Content): boolean => content.value === '#NAME?';

const keyOf = ({ sheetId, row, column }: CellPlace): string =>
  `${sheetId}!${String(row)}!${String(column)}`;

const answerOf = ({ value, formula, spill }: Content): string =>
  JSON.stringify([formula, spill ?? value]);

/** The cached answers the file holds. A spilling one is written afresh: its rows are not listed. */
function answersOf(image: WorkbookImage): Map<string, string> {
  const answers = new Map<string, string>();
  image.sheets.forEach((sheet, index) => {
    for (const { row, column, value, formula, spill } of sheet.cells) {
      if (formula === undefined || spill !== undefined) continue;
      answers.set(keyOf({ sheetId: sheetIdAt(index), row, column }), answerOf({ value, formula }));
    }
  });
  return answers;
}

function editsOf(
  sheets: SheetCells,
  cells: readonly ReadCell[],
  tables: readonly { readonly sheetId: string; readonly image: TableImage }[],
): SheetEdits[] {
  const edits = new Map<string, { cells: CellEdit[]; tables: TableImage[] }>();
  const sheetOf = (sheetId: string) => {
    const sheet = edits.get(sheetId) ?? { cells: [], tables: [] };
    edits.set(sheetId, sheet);
    return sheet;
  };
  for (const { place, content } of cells) {
    sheetOf(place.sheetId).cells.push({ row: place.row, column: place.column, ...content });
  }
  for (const { sheetId, image } of tables) sheetOf(sheetId).tables.push(image);
  return [...edits].map(([sheetId, own]) => ({ sheet: sheets.sheetName(sheetId), ...own }));
}
