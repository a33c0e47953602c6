import { describe, expect, it } from 'vitest';
import { sideloading } from '../../src/build/sideload.ts';

describe('sideloading', () => {
  it('copies the manifest where Excel for Mac looks', () => {
    const { copyTo, command } = sideloading(
      'darwin',
      '/Users/maker',
      'id-1',
      '/p/dist/manifest.xml',
    );
    expect(copyTo).toBe(
      '/Users/maker/Library/Containers/com.microsoft.Excel/Data/Documents/wef/id-1.manifest.xml',
    );
    expect(command).toBeUndefined();
  });

  it('registers the manifest for this user on Windows', () => {
    const { copyTo, command } = sideloading(
      'win32',
      'C:\\Users\\maker',
      'id-1',
      'C:\\p\\manifest.xml',
    );
    expect(copyTo).toBeUndefined();
    expect(command).toEqual([
      'reg',
      'add',
      'HKCU\\SOFTWARE\\Microsoft\\Office\\16.0\\Wef\\Developer',
      '/v',
      'id-1',
      '/t',
      'REG_SZ',
      '/d',
      'C:\\p\\manifest.xml',
      '/f',
    ]);
  });

  it('says on Linux that only Excel on the web works, and how', () => {
    const plan = sideloading('linux', '/home/maker', 'id-1', '/p/dist/manifest.xml');
    expect(plan.copyTo ?? plan.command).toBeUndefined();
    expect(plan.next.join(' ')).toMatch(
      /no Excel for this system.*on the web.*\/p\/dist\/manifest/,
    );
  });
});
