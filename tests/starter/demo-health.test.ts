import { expect, it } from 'vitest';
import { healthCheck } from '../../src/domain/health/health-check.ts';
import { readDay } from '../../src/domain/kernel/day.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import { readTablesOf } from '../../taskpane/read-workbook.ts';

it('the health check finds the demo sound', () => {
  const read = readTablesOf(demoWorkbook().tables);
  if (read.kind !== 'ready') throw new Error(read.findings.join('\n'));
  expect(healthCheck(read.book, readDay('2026-11-25') ?? 0, '').map(({ says }) => says)).toEqual(
    [],
  );
});
