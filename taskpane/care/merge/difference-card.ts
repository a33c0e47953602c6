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
  const { kind, id, differs, mine, theirs, keeps, mayChoose } = difference;
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
      ${mayChoose ? choice(difference, onChosen) : html`<p class="small quiet">Kept: ${keeps}${kept(kind)}</p>`}
    </div>
  </section>`;
}

const choice = (
  { key, id, keeps }: Difference,
  onChosen: (key: string, side: Side) => void,
): TemplateResult =>
  html`<div class="actions" role="radiogroup" aria-label="Which ${id} to keep">
    ${sides.map(
      (side) =>
        html`<label class="check">
          <input
            type="radio"
            name=${key}
            .checked=${keeps === side}
            @change=${() => {
              onChosen(key, side);
            }}
          />
          <span>Keep ${side === 'this copy' ? 'this' : 'the other'}</span>
        </label>`,
    )}
  </div>`;

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
