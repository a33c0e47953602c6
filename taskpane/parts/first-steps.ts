import { css, html, type TemplateResult } from 'lit';
import type { Book } from '../../src/domain/book/book.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { firstTables, type TableKind, tables } from '../../src/workbook/schema.ts';
import { asRead } from '../as-read.ts';
import { placeLink } from './place-link.ts';

/** How much a book holds of each; of what is not counted there is none yet. */
const held: Partial<Readonly<Record<TableKind, (book: Book) => string>>> = {
  materials: ({ materials }) => count(materials.size, 'material'),
  lots: ({ lots }) => count(lots.length, 'lot'),
  molds: ({ molds }) => count(molds.size, 'mold'),
  colours: ({ colours }) => count(colours.size, 'colour'),
  designs: ({ designs }) => count(designs.size, 'design'),
};

export const firstStepsLooks = css`
  ol.first {
    padding-left: 24px;
    list-style: decimal;
  }
  ol.first li {
    padding: 6px 0;
  }
`;

/** The tables to fill before there is anything to pour, with what stands in each and the way there. */
export function firstSteps(from: HTMLElement, book: Book): TemplateResult {
  return html`<p>First say what you have and how a bar is made, table by table:</p>
    <ol class="first">
      ${firstTables.map((kind) => {
        const { name, help } = tables[kind];
        return html`<li>
          <strong>${asRead(name)}</strong>: ${asRead(help)}
          <span class="quiet">${held[kind]?.(book) ?? 'None'} so far.</span>
          ${placeLink(from, { kind }, 'Type there', name)}
        </li>`;
      })}
    </ol>
    <p class="quiet">
      What you don’t know may stay blank; a cell that must be filled in is named here as you type.
    </p>`;
}
