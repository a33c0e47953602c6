import { exact, hundred, one, zero } from '../../domain/kernel/exact.ts';
import { nameKey } from '../../domain/kernel/names.ts';
import type { Material, Mold } from '../../domain/book/book.ts';
import { assume, noteSmall, type Reading, optional } from './context.ts';
import type { Rows } from './rows.ts';
import type { Buying } from './suppliers.ts';

export function readMaterials(
  rows: Rows<'materials'>,
  { termsOf, breaksOf }: Buying,
  reading: Reading,
): void {
  for (const row of rows) {
    const terms = termsOf(row);
    const material: Material = {
      name: row.material,
      kind: row.kind,
      unit: row.unit,
      densityGPerMl: optional(row.densityGPerMl),
      dropsPerMl: optional(row.dropsPerMl),
      packSize: optional(row.packSize),
      packPrice: optional(row.packPrice),
      leadDays: optional(row.leadDays) ?? terms?.leadDays,
      leadDaysSd: optional(row.leadDaysSd),
      servicePercent: optional(row.servicePercent),
      leastPacks: optional(row.leastPacks),
      priceBreaks: breaksOf(row.material),
      maxPercent: optional(row.maxPercent),
      inci: row.inci ?? '',
      allergens: row.allergens ?? '',
      supplier: row.supplier ?? '',
      staysShare: row.staysPercent === undefined ? one : exact(row.staysPercent).div(hundred),
      terms,
    };
    reading.materials.set(nameKey(row.material), material);
    noteSmall(reading, 'percent', row.material, `Max % of ${row.material}`, row.maxPercent ?? 0);
    noteSmall(
      reading,
      'percent',
      row.material,
      `Stays % of ${row.material}`,
      row.staysPercent ?? 0,
    );
    if (material.kind === 'base' && material.unit === 'each') {
      reading.findings.add(
        'Materials',
        row.row,
        'Unit',
        `is "each", but ${row.material} is a base, which is weighed. Use g, or another unit of weight or volume`,
      );
    }
  }
}

export function readMolds(rows: Rows<'molds'>, reading: Reading): void {
  for (const row of rows) {
    if (row.fillG === undefined && row.makes !== 'bars') {
      reading.findings.add(
        'Molds',
        row.row,
        'Fill g',
        'is blank. Weigh one full fill and type its grams',
      );
      reading.findings.excuse('Molds', row.mold);
      continue;
    }
    const mold: Mold = {
      name: row.mold,
      makes: row.makes,
      cavities: exact(row.cavities),
      fillG: optional(row.fillG) ?? zero,
      scrapeG: optional(row.scrapeG) ?? zero,
      sections: optional(row.sections),
      price: optional(row.price),
      lifeFills: optional(row.lifeFills),
      setMinutes: optional(row.setMinutes),
      lossShare: exact(row.lossPercent ?? 0).div(hundred),
    };
    noteSmall(reading, 'percent', row.mold, `Loss % of ${row.mold}`, row.lossPercent ?? 0);
    if (mold.makes === 'bars' && !mold.lossShare.isZero()) {
      const sentence = `Loss % of ${row.mold} is not used, since it makes bars: bars that fail are told by Yield % in Designs.`;
      assume(reading, { kind: 'percent', about: row.mold, sentence });
    }
    reading.molds.set(nameKey(row.mold), mold);
  }
}
