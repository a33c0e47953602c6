import { html, type TemplateResult } from 'lit';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { type TableKind, tables } from '../../../src/workbook/schema.ts';
import type { Difference, Side } from '../../../src/workbook/sharing/merge-into.ts';
import { cellOf, type NamedRow } from '../../../src/workbook/sharing/table-keys.ts';
import { day } from '../../format.ts';

const sides: readonly Side[] = ['this copy', 'other copy'];

/** Both versions side by side, which one is kept, and the choice where there is one. */
export function differenceCard(
  difference: Difference,
  onChosen: (key: string, side: Side) => void,
): TemplateResult {
  const { kind, id, differs, mine, theirs, mayChoose } = difference;
  const keeps = keptSide(difference);
  const rows =
    differs.length > 0 ? cellRows(difference) : [['Lines', recipe(mine), recipe(theirs)]];
  return html`<section class="card" aria-label="${tables[kind].name}, ${id}">
    <header><h3>${tables[kind].name}: ${id}</h3></header>
    <div class="body stack tight">
      <table>
        <thead>
          <tr>
            <th scope="col">Column</th>
            ${sides.map((side) => html`<th scope="col">${titleOf(side)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([header, here, there]) =>
              html`<tr>
                <th scope="row">${header}</th>
                <td>${keeps === 'this copy' ? html`<strong>${here}</strong>` : here}</td>
                <td>${keeps === 'other copy' ? html`<strong>${there}</strong>` : there}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${mayChoose ? choice(difference, onChosen) : html`<p class="small quiet">Kept: ${difference.keeps}${kept(kind)}</p>`}
    </div>
  </section>`;
}

/** Undefined while it waits to be chosen: nothing is chosen for the maker. */
const keptSide = ({ keeps, isOpen }: Difference): Side | undefined => (isOpen ? undefined : keeps);

const choice = (
  difference: Difference,
  onChosen: (key: string, side: Side) => void,
): TemplateResult =>
  html`<div class="stack tight" role="radiogroup" aria-label="Which ${difference.id} to keep">
    ${sides.map(
      (side) =>
        html`<label class="check">
          <input
            type="radio"
            name=${difference.key}
            .checked=${keptSide(difference) === side}
            @change=${() => {
              onChosen(difference.key, side);
            }}
          />
          <span>${meaning(difference, side)}</span>
        </label>`,
    )}
  </div>`;

/** What keeping a side means: what stands here afterwards, and what goes by it. */
function meaning(difference: Difference, side: Side): string {
  const rows = cellRows(difference);
  const [here, there] = [1, 2].map((at) =>
    rows.map((row) => `${row[0] ?? ''} ${row[at] ?? ''}`).join(', '),
  );
  return side === 'this copy'
    ? `Keep this book’s: ${here ?? ''}. Nothing changes here; the other’s stays in its own file only.`
    : `Take the other’s: ${there ?? ''}. It is written over this book’s, and ${goesBy[difference.kind] ?? 'what is worked out from it goes'} by it from then on.`;
}

/** What goes by the lines of a table. */
const goesBy: Partial<Readonly<Record<TableKind, string>>> = {
  settings: 'all costs, prices and plans go',
  materials: 'costs, orders and labels go',
  molds: 'what is weighed out and what bars cost go',
  designs: 'plans, costs and prices go',
  plan: 'the calendar and what to order go',
  fairs: 'the fair’s result goes',
  suppliers: 'what to order together goes',
};

const titleOf = (side: Side): string => (side === 'this copy' ? 'This copy' : 'Other copy');

const kept = (kind: TableKind): string =>
  kind === 'colours' || kind === 'layers'
    ? ', since recipes are not replaced.'
    : ', by the same rule on both sides: the fuller line, and undone before recorded.';

const cellRows = ({ kind, differs, mine, theirs }: Difference): string[][] =>
  differs.map((header) => [
    header,
    shown(kind, header, cellOf(mine[0], header)),
    shown(kind, header, cellOf(theirs[0], header)),
  ]);

function shown(kind: TableKind, header: string, cell: Cell): string {
  const column = Object.values(tables[kind].columns).find(
    (known) => nameKey(known.header) === nameKey(header),
  );
  const read = column?.format === 'date' ? readDay(cell) : undefined;
  if (read !== undefined) return day(read);
  return cell === '' ? 'blank' : String(cell);
}

/** The lines of a recipe without its name, one after the other. */
const recipe = (rows: readonly NamedRow[]): string =>
  rows
    .map((row) =>
      [...row.values()]
        .slice(1)
        .filter((cell) => cell !== '')
        .join(' '),
    )
    .join('; ');
