import { describe, expect, it } from 'vitest';
import { fullWorkshop } from '../support/full-workshop.ts';
import { ranges, table, type Tables, withRows } from '../support/small-book.ts';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

describe('FAIRLOAD', () => {
  const twoFairs = withRows(fullWorkshop, 'Fairs', ['Dock Fair', '2024-12-20', 30, 5, 0, 8]);

  it('says what to bring, in whole bars, and pours what is not there', () => {
    const load = call('FAIRLOAD', 'dock fair', bookOf(twoFairs));
    const [bring = 0] = column(load, 'Bring') as number[];
    const [have = 0] = column(load, 'Have') as number[];
    expect(column(load, 'Design')).toEqual(['Tide Pool']);
    expect(Number.isInteger(bring)).toBe(true);
    expect(column(load, 'Pour')).toEqual([Math.max(0, Math.ceil(bring - have))]);
  });

  it('has nothing to answer with before any fair has sales', () => {
    const error = errorOf(() => call('FAIRLOAD', 'Harbour Fair', bookOf(twoFairs)));
    expect(error.code).toBe('#N/A');
    expect(error.message).toContain('No fair before Harbour Fair has sales');
  });

  it('names the nearest fair to one that is none', () => {
    const error = errorOf(() => call('FAIRLOAD', 'Dock Far', bookOf(twoFairs)));
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toContain('Did you mean "Dock Fair"?');
  });
});

describe('ORDERPLAN', () => {
  const from = '2024-11-01';
  const terms = {
    Suppliers: table('Supplier | Carriage | Free from', ['Cove Supply', 12, '']),
    PriceBreaks: table('Material | From packs | Pack price', ['Box', 2, 18]),
  };
  const planned = withRows(fullWorkshop, 'Plan', ['P2', 'Tide Pool', 90, '2024-12-20', '']);

  it('orders all that SUPPLIES asks for, no later and with carriage once', () => {
    const asked = call('SUPPLIES', bookOf({ ...planned, ...terms }), from);
    const orders = call('ORDERPLAN', bookOf({ ...planned, ...terms }), from);
    const missing = (column(asked, 'Material') as string[]).filter(
      (_, at) => Number(column(asked, 'Net')[at]) > 0,
    );
    expect([...new Set(column(orders, 'Material'))].sort()).toEqual(missing.sort());
    (column(orders, 'Material') as string[]).forEach((name, at) => {
      const by = column(asked, 'Order by')[column(asked, 'Material').indexOf(name)] as string;
      expect((column(orders, 'Order by')[at] as string) <= by, name).toBe(true);
    });
    const carriage = (column(orders, 'Carriage') as number[]).reduce((sum, each) => sum + each, 0);
    const isFromCove = (column(orders, 'Supplier') as string[]).includes('Cove Supply');
    expect(carriage).toBe(isFromCove ? 12 : 0);
  });

  it('answers without the tables of terms as well, and then nobody asks for carriage', () => {
    const orders = call('ORDERPLAN', bookOf(planned), from);
    expect(column(orders, 'Carriage').every((carriage) => carriage === 0)).toBe(true);
  });

  it('has nothing to answer with where nothing is planned', () => {
    const error = errorOf(() => call('ORDERPLAN', bookOf(planned), '2030-01-01'));
    expect(error.code).toBe('#N/A');
  });
});
