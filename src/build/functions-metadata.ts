import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';

/**
 * Answers the text of functions.json: what each doc-tagged function in a folder tells of itself. The generator also
 * asks for data types (entities, pictures in cells), which no function here takes and no one-time purchase of Excel
 * has: there every function would answer #VALUE!.
 */
export async function functionsMetadata(folder: string): Promise<string> {
  const tagged = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => join(folder, file))
    .filter((file) => /@customfunction\b/i.test(readFileSync(file, 'utf8')))
    .sort();
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(tagged);
  if (errors.length > 0) {
    throw new Error(`The functions' doc tags do not hold:\n${errors.join('\n')}`);
  }
  if (metadataJson === '') throw new Error(`No function in ${folder} has a @customfunction tag.`);
  const { functions } = JSON.parse(metadataJson) as { readonly functions: unknown };
  return `${JSON.stringify({ functions }, null, 4)}\n`;
}
