import { describe, expect, it } from 'vitest';
import { CellFailure } from '../../../functions/failure.ts';
import type { WorksheetFunction } from '../../../functions/index.ts';
import { register } from '../../../src/hosts/excel/register.ts';

/** As the host's own: a code and a message. */
class HostError {
  readonly code: string;
  readonly message: string | undefined;

  constructor(code: string, message?: string) {
    this.code = code;
    this.message = message;
  }
}

function registered(answer: WorksheetFunction): WorksheetFunction {
  const found = new Map<string, WorksheetFunction>();
  register(
    { associate: (id, fn) => found.set(id, fn), Error: HostError as never },
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
    expect(thrown).toBeInstanceOf(HostError);
    expect(thrown).toEqual(new HostError(code, 'No material "Tael". Did you mean "Teal"?'));
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
