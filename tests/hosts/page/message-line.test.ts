import { describe, expect, it } from 'vitest';
import { createFailures } from '../../../src/hosts/workbench/page/failures.ts';
import { messageOf } from '../../../src/hosts/workbench/page/message-line.ts';

const place = { sheetId: 'sheet-0', row: 6, column: 1 };

describe('the message line', () => {
  it('says why a cell shows an error', () => {
    const content = { value: '#DIV/0!', formula: '=1/0' };
    expect(messageOf(place, content, createFailures())).toBe(
      'B7 shows #DIV/0!: the formula divides by nothing.',
    );
  });

  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty'])(
    'says nothing of the text %s',
    (value) => {
      const content = { value, formula: `="${value}"` };
      expect(messageOf(place, content, createFailures())).toBe('');
    },
  );
});
