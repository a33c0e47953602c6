import type { Day } from '../../domain/kernel/day.ts';
import type { TableData } from '../../workbook/port.ts';
import { settingsRows } from '../blocks/settings-rows.ts';
import { demoDesigns, demoLayers } from './designs.ts';
import { Diary } from './diary.ts';
import { liveThroughTheYear } from './history.ts';
import { demoMaterials } from './materials.ts';
import { demoColours, demoMolds } from './recipes.ts';
import { tablesMovedTo } from './moved-days.ts';
import { olderSales } from './older-sales.ts';
import { demoDay, demoFairs, demoPlan } from './season.ts';
import { demoSettings } from './settings.ts';
import { demoPriceBreaks, demoSuppliers } from './supplier-terms.ts';
import { demoPlaces, demoSets } from './trade.ts';

/**
 * Every table of the invented workshop: a year of its ledger, and sales of two more. The same on every
 * call for the same day: its days are moved by whole weeks, so that its season is about to begin then.
 */
export function demoTables(today: Day = demoDay): readonly TableData[] {
  const diary = new Diary({
    settings: settingsRows(demoSettings),
    materials: demoMaterials,
    lots: [],
    moves: [],
    molds: demoMolds,
    colours: demoColours,
    designs: demoDesigns,
    layers: demoLayers,
    batches: [],
    plan: demoPlan,
    fairs: demoFairs,
    sales: olderSales(),
    suppliers: demoSuppliers,
    priceBreaks: demoPriceBreaks,
    places: demoPlaces,
    sets: demoSets,
    // One maker, who shares with nobody.
    partners: [{}],
  });
  liveThroughTheYear(diary);
  return tablesMovedTo(today, diary.tables());
}
