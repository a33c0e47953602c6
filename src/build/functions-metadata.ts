import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';

/** Answers the text of functions.json: what each doc-tagged function in a folder tells of itself. */
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
  return `${metadataJson}\n`;
}
