import { expect, it } from 'vitest';
import { createKeptTexts } from '../../../src/hosts/workbench/page/kept-texts.ts';
import type { KeepAnswer, TextsToKeep } from '../../../src/hosts/workbench/protocol.ts';

/** A server that answers each asking when told to. */
function bench(first: Readonly<Record<string, string>> = {}) {
  const asked: { readonly texts: TextsToKeep; readonly answer: (answer: KeepAnswer) => void }[] =
    [];
  let told: () => void = () => undefined;
  let isOpen = true;
  const texts = createKeptTexts(first, {
    keepTexts: (wanted) =>
      new Promise((answer) => {
        asked.push({ texts: wanted, answer });
      }),
    connection: {
      get isOpen() {
        return isOpen;
      },
      onChange: (listener) => {
        told = listener;
      },
      onNews: () => undefined,
      onBackups: () => undefined,
      end: () => undefined,
      opened: () => Promise.resolve(),
    },
  });
  return {
    texts,
    asked,
    line(open: boolean) {
      isOpen = open;
      told();
    },
  };
}

const kept: KeepAnswer = { kind: 'kept' };
const refused: KeepAnswer = { kind: 'refused', sentence: 'The disk is full.' };
/** Until whatever waits for what was answered has gone on. */
const goOn = () => new Promise((done) => setImmediate(done));

it('begins with what the server holds', () => {
  const { texts } = bench({ a: '1' });
  expect([texts.get('a'), texts.get('b'), texts.isWaiting]).toEqual(['1', undefined, false]);
});

it('sends each text at once, and what is set meanwhile together after it', async () => {
  const { texts, asked } = bench();
  texts.set('a', '1');
  texts.set('a', '2');
  texts.set('b', '3');
  texts.delete('c');
  expect(asked.map((one) => one.texts)).toEqual([{ a: '1' }]);
  asked[0]?.answer(kept);
  await goOn();
  expect(asked.slice(1).map((one) => one.texts)).toEqual([{ a: '2', b: '3', c: null }]);
  asked[1]?.answer(kept);
  await goOn();
  expect(texts.isWaiting).toBe(false);
});

it('is kept only once the last text set is', async () => {
  const { texts, asked } = bench();
  texts.set('a', '1');
  let isKept = false;
  const done = texts.kept().then(() => {
    isKept = true;
  });
  texts.set('a', '2');
  asked[0]?.answer(kept);
  await goOn();
  expect(isKept).toBe(false);
  asked[1]?.answer(kept);
  await done;
});

it('says why a text is not kept, and sends it again when asked or when the line is back', async () => {
  const { texts, asked, line } = bench();
  texts.set('a', '1');
  const first = expect(texts.kept()).rejects.toThrow('The disk is full.');
  asked[0]?.answer(refused);
  await first;
  expect(texts.isWaiting).toBe(true);
  texts.set('b', '2');
  asked[1]?.answer(refused);
  await goOn();
  line(false);
  expect(asked).toHaveLength(2);
  line(true);
  expect(asked[2]?.texts).toEqual({ a: '1', b: '2' });
  asked[2]?.answer(kept);
  await texts.kept();
  expect(texts.isWaiting).toBe(false);
});

it('sends what waits as the page goes, without the answer to what went before', async () => {
  const { texts, asked } = bench();
  texts.set('a', '1');
  texts.set('a', '2');
  texts.leave();
  expect(asked.map((one) => one.texts)).toEqual([{ a: '1' }, { a: '2' }]);
  // A page that comes back from the browser's own memory sends it once more, which changes nothing.
  asked[0]?.answer(kept);
  await goOn();
  expect(asked.slice(2).map((one) => one.texts)).toEqual([{ a: '2' }]);
});
