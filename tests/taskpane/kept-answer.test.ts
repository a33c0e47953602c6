import { expect, it } from 'vitest';
import { keptAnswer } from '../../taskpane/task/kept-answer.ts';

it('works out what is asked again only when something asked of is another', () => {
  const worked: string[] = [];
  const ask = keptAnswer((tables: readonly string[], chosen: string | undefined) => {
    worked.push(`${tables.join()} ${String(chosen)}`);
    return { tables };
  });
  const [mine, theirs] = [['a'], ['a']];
  const first = ask(mine, undefined);
  expect(ask(mine, undefined)).toBe(first);
  expect(ask(mine, 'b')).not.toBe(first);
  expect(ask(theirs, 'b').tables).toBe(theirs);
  expect(ask(mine, undefined)).not.toBe(first);
  expect(worked).toEqual(['a undefined', 'a b', 'a b', 'a undefined']);
});
