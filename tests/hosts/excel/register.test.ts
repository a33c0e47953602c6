import { describe, expect, it } from 'vitest';
import { CellFailure } from '../../../functions/failure.ts';
import type { WorksheetFunction } from '../../../functions/worksheet-function.ts';
import { register } from '../../../src/hosts/excel/register.ts';
import { ExcelHost } from './host/excel-host.ts';
import { officeClient } from './host/office-client.ts';
import { WorkbookModel } from './host/workbook-model.ts';

/** The host's own cell error, as the vendor's client script has it. */
const { CustomFunctions: host } = officeClient(new ExcelHost(new WorkbookModel()));

function registered(answer: WorksheetFunction): WorksheetFunction {
  const found = new Map<string, WorksheetFunction>();
  register(
    { associate: (id, fn) => found.set(id, fn), Error: host.Error as never },
    { TRY: answer },
  );
  const fn = found.get('TRY');
  if (fn === undefined) throw new Error('TRY was not associated.');
  return fn;
}

function thrownBy(run: () => unknown): unknown {
  try {
    run();
  } catch (problem) {
    return problem;
  }
  throw new Error('Nothing was thrown.');
}

describe('arguments', () => {
  const given = registered((...args) => args);
  const invocation = { functionName: 'TRY', address: 'Sheet1!A1' };

  it.each<[string, unknown[], unknown[]]>([
    ['are passed on as they are', ['a', 1, [['x']]], ['a', 1, [['x']]]],
    ['lose the object about the call', ['a', invocation], ['a']],
    ['left out come as nothing', ['a', null, null, invocation], ['a', undefined, undefined]],
    ['keep a last array of ranges', [[[['x']], [['y']]]], [[[['x']], [['y']]]]],
    [
      'keep a cell’s rich value, which is no fact about the call',
      [{ type: 'Entity', text: 'x' }],
      [{ type: 'Entity', text: 'x' }],
    ],
    ['keep zero, blank and FALSE', [0, '', false], [0, '', false]],
    ['may be none', [], []],
  ])('%s', (_, args, expected) => {
    expect(given(...args)).toEqual(expected);
  });
});

describe('failures', () => {
  it.each(['#VALUE!', '#N/A', '#DIV/0!'] as const)('%s becomes the host’s own error', (code) => {
    const fails = registered(() => {
      throw new CellFailure(code, 'No material "Tael". Did you mean "Teal"?');
    });
    const thrown = thrownBy(() => fails());
    expect(thrown).toBeInstanceOf(host.Error);
    expect(Object.values(host.ErrorCode)).toContain(code);
    expect(thrown).toMatchObject({ code, message: 'No material "Tael". Did you mean "Teal"?' });
  });

  it.each([
    ['#VALUE!', 'A sentence.'],
    ['#N/A', 'A sentence.'],
    // The client hands Excel no text with this one, whatever it is given.
    ['#DIV/0!', undefined],
  ] as const)('%s goes to Excel with the text %s', (code, message) => {
    const fails = registered(() => {
      throw new CellFailure(code, 'A sentence.');
    });
    const sent = JSON.parse(JSON.stringify(thrownBy(() => fails()))) as { message?: string };
    expect(sent).toMatchObject({ code, valueType: 'CustomFunctionError' });
    expect(sent.message).toBe(message);
  });

  it('a fault of our own is #VALUE! with a sentence that names the function and the fault', () => {
    const breaks = registered(() => {
      throw new TypeError('x is not a function');
    });
    expect(thrownBy(() => breaks())).toMatchObject({
      code: '#VALUE!',
      message: expect.stringMatching(/POUR\.TRY stopped.*x is not a function/) as string,
    });
  });
});
