import type { Design, Layer, Material, Mold, Soap } from '../../domain/book/book.ts';
import { findMaterial, findMold, findSoap } from '../../domain/book/find.ts';
import { type Exact, exact, hundred, one, sum, zero } from '../../domain/kernel/exact.ts';
import { compareNames, didYouMean, nameKey, quoted } from '../../domain/kernel/names.ts';
import { answer, type Result, andThen, wrong } from '../../domain/kernel/result.ts';
import { soapDensity } from '../../domain/recipe/density.ts';
import { convertNoting, noted, noteSmall, optional, type Reading } from './context.ts';
import { groupRows, type Rows } from './rows.ts';

type LayerRow = Rows<'layers'>[number];

/** What each part may be counted in. */
const measuresOf: Readonly<Record<LayerRow['part'], readonly LayerRow['per'][]>> = {
  tiles: ['each'],
  embed: ['each'],
  pour: ['g', 'ml'],
  scent: ['g', 'ml', 'drops', '%'],
  paint: ['g', 'ml', 'drops', 'each'],
  pack: ['g', 'ml', 'drops', 'each'],
};

/** Reads designs with their layers; a layer of an unknown design is a finding. */
export function readDesigns(
  designRows: Rows<'designs'>,
  layerRows: Rows<'layers'>,
  reading: Reading,
): void {
  refuseRepeats(layerRows, reading);
  const layersOf = groupRows(layerRows, (row) => row.design);
  for (const row of designRows) {
    const key = nameKey(row.design);
    if (reading.materials.has(key)) {
      reading.findings.add(
        'Designs',
        row.row,
        'Design',
        `is ${quoted(row.design)}, which is also a material. Give one another name`,
      );
    }
    const layers = readLayers(layersOf.get(key) ?? [], reading);
    reading.designs.set(key, readDesign(row, layers, reading));
    layersOf.delete(key);
  }
  const known = designRows.map((row) => row.design);
  for (const row of [...layersOf.values()].flat()) {
    if (reading.findings.excused('Designs', row.design)) continue;
    reading.findings.add(
      'Layers',
      row.row,
      'Design',
      () =>
        `is ${quoted(row.design)}, which is not a design in Designs.${didYouMean(row.design, known)}`,
    );
  }
}

/** A line that stands twice alike is far more often a slip than meant: which of the two, nobody can tell. */
function refuseRepeats(rows: readonly LayerRow[], reading: Reading): void {
  const firstRow = new Map<string, number>();
  for (const row of rows) {
    const names = [row.design, row.layer, row.part, row.item, row.mold ?? '', row.per].map(nameKey);
    const key = JSON.stringify([...names, row.perBar]);
    const first = firstRow.get(key);
    if (first === undefined) firstRow.set(key, row.row);
    else
      reading.findings.add(
        'Layers',
        row.row,
        'Layer',
        `is ${quoted(row.layer)}, and row ${first} says the same to the last cell. Clear one of the two, or put both amounts into one Per bar`,
      );
  }
}

function readDesign(row: Rows<'designs'>[number], layers: Layer[], reading: Reading): Design {
  const place = { table: 'Designs', row: row.row, column: 'Bar mold' };
  return {
    name: row.design,
    barMold:
      row.barMold === undefined ? undefined : moldThatMakes(row.barMold, 'bars', place, reading),
    labourMinutes: optional(row.labourMinutes) ?? zero,
    setupMinutes: optional(row.setupMinutes) ?? zero,
    yieldShare: row.yieldPercent === undefined ? one : exact(row.yieldPercent).div(hundred),
    price: optional(row.price),
    netG: optional(row.netG),
    handsOffHours: optional(row.handsOffHours) ?? zero,
    layers,
  };
}

function readLayers(rows: readonly LayerRow[], reading: Reading): Layer[] {
  const ordered = [...rows].sort(
    (a, b) =>
      compareNames(a.layer, b.layer) ||
      compareNames(a.part, b.part) ||
      compareNames(a.item, b.item) ||
      compareNames(a.mold ?? '', b.mold ?? '') ||
      compareNames(a.per, b.per) ||
      a.perBar - b.perBar,
  );
  const measured = ordered.filter((row) => {
    const allowed = measuresOf[row.part];
    if (allowed.includes(row.per)) return true;
    reading.findings.add(
      'Layers',
      row.row,
      'Per',
      `is ${quoted(row.per)}, but ${row.part} is counted in ${allowed.join(', ')}. Type ${allowed.length > 1 ? 'one of these' : allowed.join()}`,
    );
    return false;
  });
  const shapedOrPoured = measured.map((row) => readSoapLayer(row, reading));
  const pours = shapedOrPoured.filter((layer) => layer?.part === 'pour');
  const isWhole = pours.length === rows.filter((row) => row.part === 'pour').length;
  // Pour lines with findings have been told of; what takes a share of them is not blamed as well.
  const isExcused = rows.some((row) => reading.findings.excused('Layers', row.design));
  const pourG = isWhole && !isExcused ? sum(pours.map((layer) => layer.gPerBar)) : undefined;
  return measured
    .map((row, index) => shapedOrPoured[index] ?? readAddedLayer(row, pourG, reading))
    .filter((layer) => layer !== undefined);
}

function readSoapLayer(row: LayerRow, reading: Reading): Layer | undefined {
  if (row.part !== 'tiles' && row.part !== 'embed' && row.part !== 'pour') return undefined;
  const soap = knownItem(row, findSoap(reading, row.item), reading);
  if (row.part === 'pour') {
    if (soap === undefined) return undefined;
    const gPerBar = noted(
      reading,
      { table: 'Layers', row: row.row, column: 'Per' },
      pouredG(soap, exact(row.perBar), row.per),
    );
    return gPerBar === undefined ? undefined : { part: row.part, layer: row.layer, soap, gPerBar };
  }
  const place = { table: 'Layers', row: row.row, column: 'Mold' };
  if (row.mold === undefined) {
    reading.findings.add(
      'Layers',
      row.row,
      'Mold',
      `is blank. Name the mold that shapes ${row.item}`,
    );
    return undefined;
  }
  const mold = moldThatMakes(row.mold, row.part === 'tiles' ? 'tiles' : 'embeds', place, reading);
  if (soap === undefined || mold === undefined) return undefined;
  return { part: row.part, layer: row.layer, soap, mold, perBar: exact(row.perBar) };
}

function pouredG(soap: Soap, amount: Exact, per: LayerRow['per']): Result<Exact> {
  return per === 'g'
    ? answer(amount)
    : andThen(soapDensity(soap), (density) => answer(amount.times(density)));
}

function readAddedLayer(
  row: LayerRow,
  pourG: Exact | undefined,
  reading: Reading,
): Layer | undefined {
  if (row.part !== 'scent' && row.part !== 'paint' && row.part !== 'pack') return undefined;
  const material = knownItem(row, findMaterial(reading, row.item), reading);
  if (material === undefined) return undefined;
  if (row.part === 'scent' && material.kind !== 'fragrance') {
    reading.findings.add(
      'Layers',
      row.row,
      'Item',
      `is ${quoted(row.item)}, which has the kind ${material.kind}. A scent is a fragrance`,
    );
    return undefined;
  }
  const quantity = addedQuantity(row, material, pourG, reading);
  if (quantity === undefined) return undefined;
  const quantityPerBar = noted(reading, { table: 'Layers', row: row.row, column: 'Per' }, quantity);
  return quantityPerBar === undefined
    ? undefined
    : { part: row.part, layer: row.layer, material, quantityPerBar };
}

/** Stock units of a material in one bar; undefined where it is a share of pour lines that have findings. */
function addedQuantity(
  row: LayerRow,
  material: Material,
  pourG: Exact | undefined,
  reading: Reading,
): Result<Exact> | undefined {
  const amount = exact(row.perBar);
  if (row.per !== '%') return convertNoting(reading, amount, row.per, material.unit, material);
  noteSmall(reading, 'percent', row.design, `${row.item} in ${row.design}`, row.perBar);
  if (pourG === undefined) return undefined;
  if (pourG.isZero()) return wrong('% needs pour lines in this design to take a share of.');
  return convertNoting(reading, amount.div(hundred).times(pourG), 'g', material.unit, material);
}

/** The item, or undefined; an item whose own row has findings is not blamed a second time. */
function knownItem<T>(row: LayerRow, found: Result<T>, reading: Reading): T | undefined {
  if (
    !found.ok &&
    ['Materials', 'Colours'].some((table) => reading.findings.excused(table, row.item))
  )
    return undefined;
  return noted(reading, { table: 'Layers', row: row.row, column: 'Item' }, found);
}

function moldThatMakes(
  name: string,
  makes: Mold['makes'],
  place: { readonly table: string; readonly row: number; readonly column: string },
  reading: Reading,
): Mold | undefined {
  if (reading.findings.excused('Molds', name)) return undefined;
  const mold = noted(reading, place, findMold(reading, name));
  if (mold === undefined || mold.makes === makes) return mold;
  reading.findings.add(
    place.table,
    place.row,
    place.column,
    `is ${quoted(name)}, which makes ${mold.makes}. Name a mold that makes ${makes}`,
  );
  return undefined;
}
