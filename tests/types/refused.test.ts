import { readdirSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { inProject } from '../support/in-project.ts';

const folder = inProject('tests/types/refused');
const { config } = ts.readConfigFile(inProject('tsconfig.json'), ts.sys.readFile.bind(ts.sys)) as {
  config: unknown;
};
const { options } = ts.parseJsonConfigFileContent(config, ts.sys, inProject('.'));

describe('what must not compile', () => {
  const files = readdirSync(folder).map((file) => `${folder}/${file}`);
  const program = ts.createProgram(files, { ...options, noEmit: true });
  it.each(files)('%s', (file) => {
    const source = program.getSourceFile(file);
    const problems = ts.getPreEmitDiagnostics(program, source);
    const last = source?.text.split('\n').findLastIndex((line) => line !== '');
    const lines = problems.map(
      ({ start = 0 }) => source?.getLineAndCharacterOfPosition(start).line,
    );
    // Just where figures of two kinds meet, and nowhere else.
    expect(lines).toEqual([last]);
    expect(ts.flattenDiagnosticMessageText(problems[0]?.messageText, ' ')).toMatch(
      /Measured|Money/u,
    );
  });
});
