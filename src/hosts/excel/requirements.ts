/** What of Excel the add-in cannot do without; manifest.xml asks for the same. */
export const REQUIREMENTS = [
  {
    set: 'ExcelApi',
    version: '1.9',
    without: 'filters cannot be seen, and cells not worked out again',
  },
  {
    set: 'SharedRuntime',
    version: '1.1',
    without: 'the worksheet functions cannot start with the workbook',
  },
  {
    set: 'CustomFunctionsRuntime',
    version: '1.3',
    without: 'cell errors cannot say what to mend',
  },
] as const;

/** Says what this Excel lacks, and what to do; undefined where it lacks nothing. */
export function whatIsMissing(
  isSetSupported: (set: string, version: string) => boolean,
): string | undefined {
  const missing = REQUIREMENTS.filter(({ set, version }) => !isSetSupported(set, version));
  if (missing.length === 0) return undefined;
  const lacks = missing.map(
    ({ set, version, without }) => `${without} (it lacks ${set} ${version})`,
  );
  return `This Excel is too old for Pour Ledger: ${lacks.join('; ')}. Update it, or use Excel on the web.`;
}
