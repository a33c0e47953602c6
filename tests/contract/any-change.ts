import fc from 'fast-check';
import type { Append, Cell, Change, Removal, RowToWrite, Update } from '../../src/workbook/port.ts';
import type { Tables } from '../support/small-book.ts';

/** Few ids, each spelled in several ways, so that rows of a change often stand already. */
const anyId = fc.constantFrom<Cell>(17, '17', 'M-1', 'm-1 ', 'M-2', ' M-2', 'M  3');
const anyCell = fc.constantFrom<Cell>(3, '3', 0.3, 0.1 + 0.2, -250, true, 'Foam', 'Foam ', '=1+1');
const orBlank = (cells: fc.Arbitrary<Cell>, blanks = 3): fc.Arbitrary<Cell> =>
  fc.oneof({ weight: 10, arbitrary: cells }, { weight: blanks, arbitrary: fc.constant('') });

const anyRow = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(orBlank(anyId), orBlank(anyCell, 6), orBlank(anyCell, 20)) },
  { weight: 1, arbitrary: fc.constant<readonly Cell[]>(['', '', '']) },
);
const rowsUnder = (header: string): fc.Arbitrary<readonly (readonly Cell[])[]> =>
  fc.array(anyRow, { maxLength: 5 }).map((rows) => [[header, 'Quantity', 'Note'], ...rows]);

/** Two tables, with rows that share ids, lack one or are blank. */
const anyTables: fc.Arbitrary<Tables> = fc.record({
  Moves: rowsUnder('Entry'),
  Lots: rowsUnder('Lot'),
});

const places = [
  { name: 'Moves', table: 'Moves', idColumn: 'Entry' },
  { name: 'Lots', table: 'lots', idColumn: ' LOT' },
] as const;
type Place = (typeof places)[number];

const rowOf = ({ idColumn }: Place, [id = '', Quantity = '', Note = '']: readonly Cell[]) => ({
  [idColumn]: id,
  Quantity,
  Note,
});

const anyNamed: fc.Arbitrary<readonly Cell[]> = fc.tuple(
  orBlank(anyId, 1),
  orBlank(anyCell),
  orBlank(anyCell),
);

const withIds = (tables: Tables, { name }: Place): (readonly Cell[])[] =>
  tables[name]?.slice(1).filter(([id]) => id !== '') ?? [];

/** Rows to append: new ones, and some that stand in the table already. */
const anyAppend = (tables: Tables): fc.Arbitrary<Append> =>
  fc.constantFrom(...places).chain((place) => {
    const standing = withIds(tables, place);
    const row = fc.oneof(anyNamed, standing.length > 0 ? fc.constantFrom(...standing) : anyNamed);
    return fc
      .tuple(fc.boolean(), fc.array(row, { maxLength: 3 }))
      .map(([isShared, rows]): Append => ({
        table: place.table,
        idColumn: place.idColumn,
        ...(isShared ? { shareIds: true } : {}),
        rows: rows.map((cells): RowToWrite => rowOf(place, cells)),
      }));
  });

const anyStanding = (tables: Tables, place: Place): fc.Arbitrary<readonly Cell[]> => {
  const standing = withIds(tables, place);
  return standing.length > 0
    ? fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...standing) }, anyNamed)
    : anyNamed;
};

const anyUpdate = (tables: Tables): fc.Arbitrary<Update> =>
  fc.constantFrom(...places).chain((place) =>
    fc
      .tuple(
        anyStanding(tables, place),
        fc.option(fc.nat({ max: 1 }), { freq: 2 }),
        fc.record({ Quantity: orBlank(anyCell), Note: orBlank(anyCell) }, { requiredKeys: [] }),
      )
      .map(([[id], nth, set]) => ({
        table: place.table,
        idColumn: place.idColumn,
        id: String(id),
        set,
        ...(nth === null ? {} : { nth }),
      })),
  );

const anyRemoval = (tables: Tables): fc.Arbitrary<Removal> =>
  fc.constantFrom(...places).chain((place) =>
    anyStanding(tables, place).map((row) => ({
      table: place.table,
      idColumn: place.idColumn,
      id: String(row[0]),
      was: rowOf(place, row),
    })),
  );

/** Tables, and a change of every part for them: many fit, some find no room. */
export const anyChange: fc.Arbitrary<readonly [Tables, Change]> = anyTables.chain((tables) =>
  fc
    .record({
      appends: fc.array(anyAppend(tables), { maxLength: 2 }),
      updates: fc.array(anyUpdate(tables), { maxLength: 2 }),
      removals: fc.array(anyRemoval(tables), { maxLength: 1 }),
    })
    .map((change) => [tables, change] as const),
);
