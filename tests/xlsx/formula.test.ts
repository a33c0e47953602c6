import { describe, expect, it } from 'vitest';
import {
  columnIndex,
  columnName,
  parseRange,
  parseSheetRange,
  rangeName,
} from '../../src/xlsx/address.ts';
import { shiftFormula } from '../../src/xlsx/formula/formula-shift.ts';
import { mayFillCells, storedFormula, typedFormula } from '../../src/xlsx/formula/formula-text.ts';

describe('stored and typed formulas', () => {
  it.each([
    ['_xldudf_POUR_BOOK(Lots[#All],Moves[#All])', '=POUR.BOOK(Lots[#All],Moves[#All])'],
    ['_xldudf_POUR_BOOK(Lots[[#Headers],[#Data]])', '=POUR.BOOK(Lots[[#Headers],[#Data]])'],
    ['_xldudf_pour_onhand("a",Book)', '=POUR.ONHAND("a",Book)'],
    ['IF(A1="_xldudf_POUR_BOOK(","_xlfn.X",1)', '=IF(A1="_xldudf_POUR_BOOK(","_xlfn.X",1)'],
    ['_xldudf_OTHER_GET(1)', '=_xldudf_OTHER_GET(1)'],
    ['_xlfn._xlws.SORT(_xlfn.UNIQUE(A1:A9))', '=SORT(UNIQUE(A1:A9))'],
    ['SUM(_xlfn.ANCHORARRAY(Sheet2!$B$3))', '=SUM(Sheet2!$B$3#)'],
    ['_xlfn.SINGLE(Lots[Paid])', '=@Lots[Paid]'],
    ['Lots[[#This Row],[Paid]]*2', '=Lots[@Paid]*2'],
    ['SUM(Lots[[#This Row],[Paid]:[Best before]])', '=SUM(Lots[@[Paid]:[Best before]])'],
    ['_xlfn.LET(_xlpm.a,1,_xlpm.a+1)', '=LET(a,1,a+1)'],
    ['_xlfn.LAMBDA(_xlpm.x,_xlpm.x*2)(3)', '=LAMBDA(x,x*2)(3)'],
  ])('%s reads as %s', (stored, typed) => {
    expect(typedFormula(stored)).toBe(typed);
    expect(storedFormula(typed).toUpperCase()).toBe(stored.toUpperCase());
  });

  it.each([
    ['POUR.BOOK(A1)', false],
    ['POUR.STOCKLIST(Book)', true],
    ['SUM(A1:A9)', false],
    ['SORT(A1:A9)', true],
    ['"POUR.STOCKLIST("', false],
    ['A1#', true],
    ['INDEX(POUR.FAIR($A3,Book),2,2)', false],
    ['IFERROR(INDEX(POUR.COSTLINES(A1,Book,MAX(1,B1)),3,1),"")', false],
    ['INDEX(POUR.FAIR(A3,Book),0,2)', true],
    ['INDEX(POUR.FAIR(A3,Book),B1,2)', true],
    ['INDEX(POUR.FAIR(A3,Book),2,2)+POUR.STOCKLIST(Book)', true],
  ])('%s may fill cells: %s', (typed, may) => {
    expect(mayFillCells(storedFormula(typed))).toBe(may);
  });
});

describe('moved formulas', () => {
  it.each([
    ['A1+$A$1+A$1+$A1', 2, 3, 'D3+$A$1+D$1+$A3'],
    ['LOG10(A1)+"A1"+\'A1\'!B2+Lots[A1]', 1, 1, 'LOG10(B2)+"A1"+\'A1\'!C3+Lots[A1]'],
    ['SUM(A:B)+SUM($2:3)', 1, 1, 'SUM(B:C)+SUM($2:4)'],
    ['A1', -1, 0, '#REF!'],
    ['XFD1', 0, 1, '#REF!'],
    ['AB12_total+tax1.rate', 1, 1, 'AB12_total+tax1.rate'],
  ])('%s by %i, %i is %s', (formula, rows, columns, moved) => {
    expect(shiftFormula(formula, rows, columns)).toBe(moved);
  });
});

describe('addresses', () => {
  it('count columns as letters', () => {
    for (const [index, name] of [
      [0, 'A'],
      [25, 'Z'],
      [26, 'AA'],
      [701, 'ZZ'],
      [702, 'AAA'],
      [16_383, 'XFD'],
    ] as const) {
      expect(columnName(index)).toBe(name);
      expect(columnIndex(name)).toBe(index);
    }
  });

  it.each(['XFE1', 'A1048577', 'A0', '1A', 'A1:B2:C3', '', 'A-1'])('%j is no range', (text) => {
    expect(parseRange(text)).toBeUndefined();
  });

  it('read ranges in any order, with sheets', () => {
    expect(
      rangeName(
        parseRange('$C$4:$A$2') ?? { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 },
      ),
    ).toBe('A2:C4');
    expect(parseSheetRange("'Maker''s notes'!$A$1:$B$2")).toEqual({
      sheet: "Maker's notes",
      range: { startRow: 0, startColumn: 0, endRow: 1, endColumn: 1 },
    });
  });
});
