import type { Package } from '../parts/package.ts';
import type { ShownSheet } from './shown-ranges.ts';
import type { SheetFeatures } from './sheet-features.ts';
import type { SheetPart, WorkbookParts } from '../parts/workbook-parts.ts';

/** Elements of a sheet that the page cannot show: how to name one and several. */
const ELEMENTS: readonly (readonly [element: string, one: string, many: string])[] = [
  ['hyperlink', 'link', 'links'],
  ['x14:sparkline', 'sparkline', 'sparklines'],
  ['oleObject', 'embedded object', 'embedded objects'],
  ['control', 'form control', 'form controls'],
];

const PARTS: readonly (readonly [kind: RegExp, one: string, many: string])[] = [
  [/^pivotTable$/, 'pivot table', 'pivot tables'],
  [/^slicer$/, 'slicer', 'slicers'],
  [/^queryTable$/, 'data query', 'data queries'],
];

/** What one sheet holds that the page cannot show, in plain words; all of it is kept on save. */
export function sheetNotShown(
  pack: Package,
  sheet: SheetPart,
  features: SheetFeatures & Pick<ShownSheet, 'tooFar'>,
): readonly string[] {
  const links = pack.links(sheet.part).filter((link) => !link.outside);
  const drawings = links
    .filter((link) => link.kind === 'drawing')
    .flatMap((link) => pack.links(link.target));
  const charts = drawings.filter((link) => /^chart(Ex)?$/.test(link.kind)).length;
  const pictures = drawings.filter((link) => link.kind === 'image').length;
  const said = [
    counted(charts, 'chart', 'charts'),
    counted(pictures, 'picture', 'pictures'),
    counted(comments(pack, sheet), 'comment', 'comments'),
    counted(features.otherFormats, 'conditional format', 'conditional formats'),
    ...ELEMENTS.map(([element, one, many]) =>
      counted(features.counts.get(element) ?? 0, one, many),
    ),
    ...PARTS.map(([kind, one, many]) =>
      counted(links.filter((link) => kind.test(link.kind)).length, one, many),
    ),
    counted(otherChecks(features), 'entry check', 'entry checks'),
    counted(
      features.tooFar,
      'merge, list or highlight that reaches too far',
      'merges, lists or highlights that reach too far',
    ),
    features.counts.get('sheetProtection') ? 'sheet protection' : '',
    features.counts.get('filterColumn') ? 'a filter' : '',
  ];
  return said.filter((text) => text !== '').map((text) => `${text} on ${sheet.name}`);
}

/** What the workbook as a whole holds that the page cannot show. */
export function workbookNotShown(parts: WorkbookParts): readonly string[] {
  const count = (kind: string) => parts.links.filter((link) => link.kind === kind).length;
  const outside = counted(count('externalLink'), 'other workbook', 'other workbooks');
  const odd = parts.sheets.filter((sheet) => sheet.kind !== 'worksheet');
  return [
    ...odd.map((sheet) => `the ${sheet.kind.replace('sheet', ' sheet')} "${sheet.name}"`),
    ...(outside ? [`links to ${outside}: kept, never opened from here`] : []),
    ...(count('connections') ? ['data connections: kept, never refreshed from here'] : []),
  ];
}

function comments(pack: Package, sheet: SheetPart): number {
  const parts = pack
    .links(sheet.part)
    .filter((link) => link.kind === 'comments' && pack.has(link.target));
  return parts.reduce(
    (sum, link) => sum + (pack.text(link.target).match(/<(\w+:)?comment[\s>]/g)?.length ?? 0),
    0,
  );
}

function otherChecks(features: SheetFeatures): number {
  const all =
    (features.counts.get('dataValidation') ?? 0) + (features.counts.get('x14:dataValidation') ?? 0);
  return all - features.validations.length;
}

function counted(count: number, one: string, many: string): string {
  return count === 0 ? '' : `${count} ${count === 1 ? one : many}`;
}
