import { afterEach, describe, expect, it, vi } from 'vitest';
import { openAsNew } from '../../../src/hosts/excel/open-as-new.ts';
import { WIRE } from './host/excel-host.ts';
import { open } from './host/open.ts';

describe('handing over a partner’s copy in Excel', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it.each([0, 1, 8191, 8192, 8193, 100_000])('opens all of %i bytes, unchanged', async (size) => {
    const { model, client } = open();
    vi.stubGlobal('Excel', client.Excel);
    const bytes = Uint8Array.from({ length: size }, (_, at) => (at * 31) % 256);
    const given = await openAsNew(bytes, 'copy.xlsx');
    expect(given.kind).toBe('given');
    expect(given.sentence).toContain('copy.xlsx');
    expect(model.opened).toEqual([Buffer.from(bytes).toString('base64')]);
  });

  it('says why Excel refuses, and the other way', async () => {
    const { model, client, host } = open();
    vi.stubGlobal('Excel', client.Excel);
    host.faults = [{ sync: 1, wire: WIRE.noCapability }];
    const given = await openAsNew(Uint8Array.of(1, 2, 3), 'copy.xlsx');
    expect(given.kind).toBe('refused');
    expect(given.sentence).toMatch(/^Excel did not open the copy: .*Make it in the workbench/u);
    expect(model.opened).toEqual([]);
  });
});
