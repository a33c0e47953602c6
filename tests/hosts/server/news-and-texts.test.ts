import { closeSync, ftruncateSync, openSync, renameSync, writeFileSync, writeSync } from 'node:fs';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { BackupNews } from '../../../src/hosts/workbench/protocol.ts';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { again, JSON_TYPE, save, workbench } from './served.ts';
import { ask, bookBytes, bytesAt, listen, saveRequest } from './support.ts';

const post = async (address: string, path: string, body: string): Promise<string> =>
  (await ask(address, path, { method: 'POST', headers: JSON_TYPE, body })).body;

describe('a served workbook', () => {
  it('tells every listening page what stands in the file’s place, and each change once', async () => {
    const { address, root, path } = await workbench();
    const stands = () =>
      `data: ${JSON.stringify({ kind: 'stands', version: versionOf(bytesAt(path)) })}\n\n`;
    const pages = [await listen(address, root), await listen(address, root)];
    const heard = () => Promise.all(pages.map((page) => page.next()));
    expect(await heard()).toEqual([stands(), stands()]);
    const asked = saveRequest(versionOf(bytesAt(path)), 'mine');
    const mine = await save(address, root, JSON.stringify(asked));
    expect(JSON.parse(mine.body)).toMatchObject({ kind: 'saved' });
    expect(await heard()).toEqual([stands(), stands()]);
    writeFileSync(`${path}.theirs`, bookBytes('theirs'));
    renameSync(`${path}.theirs`, path);
    expect(await heard()).toEqual([stands(), stands()]);
    for (const page of pages) page.stop();
  });

  it('tells what another program writes into a state that was replaced, until that is settled', async () => {
    const { address, root, path } = await workbench();
    const old = openSync(path, 'r+');
    onTestFinished(() => {
      closeSync(old);
    });
    const page = await listen(address, root);
    await page.next();
    await save(address, root, JSON.stringify(saveRequest(versionOf(bytesAt(path)), 'mine')));
    await page.next();
    const theirs = bookBytes('theirs');
    ftruncateSync(old);
    writeSync(old, theirs, 0, theirs.length, 0);
    // The server looks every few seconds.
    const news = JSON.parse((await page.next()).replace('data: ', '')) as BackupNews;
    expect(news).toMatchObject({ kind: 'backups', writtenInto: { until: expect.any(Number) } });
    const late = await listen(address, root);
    const first = await late.next();
    expect(first.includes('"backups"') ? first : await late.next()).toContain('"writtenInto"');
    const askFor = (what: string, body: unknown) =>
      post(address, `${root}api/${what}-backup`, JSON.stringify(body));
    expect(await askFor('take', { until: 'now' })).toContain('"refused"');
    expect(await askFor('take', { until: 1 })).toContain('"refused"');
    expect(await askFor('leave', { until: news.writtenInto?.until })).toBe('{"kind":"left"}');
    expect(await page.next()).toBe('data: {"kind":"backups"}\n\n');
    for (const listening of [page, late]) listening.stop();
  });

  it('keeps the pane’s texts, for this workbook and for the next server', async () => {
    const first = await workbench();
    const { address, root } = first;
    const other = await workbench();
    const keep = async (texts: unknown) =>
      (
        await ask(address, `${root}api/texts`, {
          method: 'POST',
          headers: JSON_TYPE,
          body: JSON.stringify(texts),
        })
      ).body;
    expect(await keep({ 'pour draft': '{"a":1}', gone: 'soon', ['__proto__']: 'x' })).toBe(
      '{"kind":"kept"}',
    );
    await Promise.all([keep({ gone: null }), keep({ 'sell draft': 'b' })]);
    expect(await keep(['no', 'texts'])).toContain('"refused"');
    expect(await keep({ n: 1 })).toContain('"refused"');
    await first.close();
    const second = await again(first);
    const held = JSON.parse((await ask(second.address, `${root}api/texts`)).body) as object;
    expect(Object.entries(held)).toEqual([
      ['pour draft', '{"a":1}'],
      ['__proto__', 'x'],
      ['sell draft', 'b'],
    ]);
    expect((await ask(other.address, `${other.root}api/texts`)).body).toBe('{}');
  });

  it('says of a damaged file until when its backup was it, and takes that back', async () => {
    const { address, root, path } = await workbench();
    const before = bytesAt(path);
    await save(address, root, JSON.stringify(saveRequest(versionOf(before), 'new')));
    writeFileSync(path, bytesAt(path).subarray(0, 200));
    const book = await ask(address, `${root}api/book`);
    expect(book.status).toBe(422);
    expect(JSON.parse(book.body)).toMatchObject({ kind: 'lost', backup: expect.any(Number) });
    const post = { method: 'POST', headers: JSON_TYPE, body: '{}' };
    const taken = await ask(address, `${root}api/take-backup`, post);
    expect(JSON.parse(taken.body)).toEqual({ kind: 'taken' });
    expect(versionOf(bytesAt(path))).toBe(versionOf(before));
  });

  it('does not start on a damaged file, and says how to go back to its backup', async () => {
    const first = await workbench();
    const { address, root, path, pageRoot, data } = first;
    await save(address, root, JSON.stringify(saveRequest(versionOf(bytesAt(path)), 'new')));
    await first.close();
    writeFileSync(path, bytesAt(path).subarray(0, 200));
    const started = await startWorkbench(path, pageRoot, data);
    expect('kind' in started && started.sentence).toMatch(
      /\nIts state until .+ is kept\. To go back to it: npm start -- --take 1 ".*book\.xlsx"$/,
    );
  });
});
