import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { OfficeAddinManifest } from 'office-addin-manifest';
import { describe, expect, it } from 'vitest';
import { REQUIREMENTS } from '../../src/hosts/excel/requirements.ts';
import { inProject } from '../support/in-project.ts';
import { built } from './built.ts';

const SCHEMAS = inProject('tests/build/schemas');
const hasXmllint = spawnSync('xmllint', ['--version']).error === undefined;
const manifest = readFileSync(inProject('manifest.xml'), 'utf8');

const attributes = (pattern: RegExp, text = manifest): string[] =>
  [...text.matchAll(pattern)].map((match) => match[1] ?? '');

/** Inside of the one element of this name. */
function inside(element: string, text = manifest): string {
  const found = [...text.matchAll(new RegExp(`<${element}\\b[^>]*>(.*?)</${element}>`, 'gs'))];
  expect(found, element).toHaveLength(1);
  return found[0]?.[1] ?? '';
}

const resource = (id: string): string | undefined =>
  new RegExp(`id="${id.replaceAll('.', '\\.')}" DefaultValue="([^"]*)"`).exec(manifest)?.[1];

describe('manifest.xml by the published schemas', () => {
  it.skipIf(!hasXmllint)('is valid, as far as they go', () => {
    const folder = mkdtempSync(join(tmpdir(), 'pour-ledger-schemas-'));
    try {
      laySchemas(folder);
      const older = schemaAge(manifest);
      expect(validate(folder, older)).toBe('');
      expect(validate(folder, older.replace('<Permissions>', '<Permissions>X'))).not.toBe('');
      expect(validate(folder, older.replace('size="16"', 'size="sixteen"'))).not.toBe('');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it.skipIf(!hasXmllint)('takes every text that a person sees in another language too', () => {
    const folder = mkdtempSync(join(tmpdir(), 'pour-ledger-schemas-'));
    try {
      laySchemas(folder);
      const other = translated(schemaAge(manifest));
      expect([...other.matchAll(/Locale="de-DE"/g)]).toHaveLength(8);
      expect(validate(folder, other)).toBe('');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('is read by the vendor’s own manifest reader', async () => {
    const info = await OfficeAddinManifest.readManifestFile(inProject('manifest.xml'));
    expect(info).toMatchObject({
      officeAppType: 'TaskPaneApp',
      providerName: 'Pour Ledger',
      displayName: 'Pour Ledger',
      hosts: ['Workbook'],
      permissions: 'ReadWriteDocument',
      defaultLocale: 'en-US',
    });
    expect(info.id).toMatch(
      /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    );
  });
});

describe('texts', () => {
  it('all stand where a language can override them, and only in the language there is', () => {
    const [, overrides = ''] = manifest.split('<VersionOverrides');
    const bare = [...overrides.matchAll(/>([^<>]*[^\s<>][^<>]*)</g)].map(([, text]) => text);
    // An id, which nobody sees.
    expect(bare).toEqual(['PourLedger.Pane']);
    expect(manifest).toContain('<DefaultLocale>en-US</DefaultLocale>');
    expect(manifest).not.toContain('Override Locale');
  });
});

describe('requirements', () => {
  it('are those that are checked at the start, where what is missing is said', () => {
    const declared = [
      ...inside('Requirements').matchAll(/<Set Name="([^"]+)" MinVersion="([^"]+)"\/>/g),
    ].map(([, set, version]) => `${set} ${version}`);
    expect(declared.sort()).toEqual(
      REQUIREMENTS.map(({ set, version }) => `${set} ${version}`).sort(),
    );
  });
});

describe('what the schemas are too old for', () => {
  it('has one long-lived runtime: the pane’s page, which runs the functions too', () => {
    const runtimes = [...manifest.matchAll(/<Runtime resid="([^"]+)" lifetime="([^"]+)"\/>/g)];
    expect(runtimes.map(([, resid, lifetime]) => [resid, lifetime])).toEqual([
      ['Pane.Url', 'long'],
    ]);
    const pane = /<SourceLocation resid="([^"]+)"/;
    expect(pane.exec(inside('Page'))?.[1]).toBe('Pane.Url');
    expect(pane.exec(inside('Action'))?.[1]).toBe('Pane.Url');
    expect(resource('Pane.Url')).toBe('https://localhost:3000/taskpane.html');
    expect(inside('Requirements')).toContain('<Set Name="SharedRuntime" MinVersion="1.1"/>');
  });

  it('names the functions’ script, page, metadata and namespace', () => {
    const point = inside('AllFormFactors');
    expect(point).toContain('<ExtensionPoint xsi:type="CustomFunctions">');
    const resid = (element: string): string =>
      /resid="([^"]+)"/.exec(inside(element, point))?.[1] ?? '';
    expect(resource(resid('Script'))).toBe('https://localhost:3000/functions.js');
    expect(resource(resid('Metadata'))).toBe('https://localhost:3000/functions.json');
    const namespace = /<Namespace resid="([^"]+)"\/>/.exec(point)?.[1] ?? '';
    expect(resource(namespace)).toBe('POUR');
  });
});

describe('resources', () => {
  it('defines every id that is used and uses every id that is defined', () => {
    const used = new Set(attributes(/resid="([^"]+)"/g));
    const defined = attributes(/<bt:(?:Image|Url|String) id="([^"]+)"/g);
    expect([...used].sort()).toEqual([...defined].sort());
    expect(new Set(defined).size).toBe(defined.length);
  });

  it.each([
    // OfficeAppBasicTypesV1_0.xsd: ids 32, short strings 125, long strings 250, addresses 2048.
    [/<bt:\w+ id="([^"]+)"/g, 32],
    [/resid="([^"]+)"/g, 32],
    [
      /(?<=<bt:ShortStrings>.*)<bt:String id="[^"]+" DefaultValue="([^"]*)"(?=.*<\/bt:ShortStrings>)/gs,
      125,
    ],
    [/<(?:DisplayName) DefaultValue="([^"]*)"/g, 125],
    [/(?<=<bt:LongStrings>.*)<bt:String id="[^"]+" DefaultValue="([^"]*)"/gs, 250],
    [/<Description DefaultValue="([^"]*)"/g, 250],
    [/"(https:[^"]*)"/g, 2048],
  ])('%# keeps within the length limits', (pattern, limit) => {
    const texts = attributes(pattern);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text.length, text).toBeLessThanOrEqual(limit);
  });

  it('gives each icon its true size', () => {
    const icons = [
      ...[...manifest.matchAll(/<bt:Image size="(\d+)" resid="([^"]+)"/g)].map(
        ([, size, resid]) => [size, resource(resid ?? '')] as const,
      ),
      // The store's sizes for a task pane add-in: 32, and 64 where the screen is sharp.
      ['32', /<IconUrl DefaultValue="([^"]+)"/.exec(manifest)?.[1]] as const,
      ['64', /<HighResolutionIconUrl DefaultValue="([^"]+)"/.exec(manifest)?.[1]] as const,
    ];
    expect(icons).toHaveLength(8);
    for (const [size, address] of icons) {
      const file = address?.replace('https://localhost:3000/icons/', 'src/hosts/excel/icons/');
      expect(pixelsOf(inProject(file ?? '')), file).toEqual([Number(size), Number(size)]);
    }
  });

  it('points at nothing outside its own host', () => {
    const hosts = new Set(
      attributes(/DefaultValue="(https?:[^"]*)"/g).map((address) => new URL(address).origin),
    );
    expect([...hosts]).toEqual(['https://localhost:3000']);
  });
});

describe('dist/manifest.xml', () => {
  it('points at files that the build writes', () => {
    const text = built('dist/manifest.xml');
    const files = attributes(/"https:\/\/localhost:3000\/([^"]+)"/g, text);
    expect(new Set(files)).toContain('taskpane.html');
    for (const file of new Set(files)) {
      expect(existsSync(inProject(`dist/${file}`)), file).toBe(true);
    }
  });
});

/** Copies the schemas with what keeps any validator from reading them put right. */
function laySchemas(folder: string): void {
  for (const file of readdirSync(SCHEMAS).filter((name) => name.endsWith('.xsd'))) {
    const schema = readFileSync(join(SCHEMAS, file), 'utf8')
      // The namespace of XML Schema begins with http, not https.
      .replaceAll('"https://www.w3.org/2001/XMLSchema"', '"http://www.w3.org/2001/XMLSchema"')
      // XML Schema's patterns know no lazy repetition.
      .replaceAll('{0,3}?', '{0,3}');
    writeFileSync(join(folder, file), schema);
  }
  for (const kind of ['Mail', 'Content']) {
    const space = `http://schemas.microsoft.com/office/${kind.toLowerCase()}appversionoverrides`;
    writeFileSync(
      join(folder, `${kind}AppVersionOverridesV1_0.xsd`),
      `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="${space}"><xs:element name="VersionOverrides"/></xs:schema>`,
    );
  }
}

/** The manifest without what its published schemas do not know yet: custom functions, shared runtimes. */
const schemaAge = (text: string): string =>
  text
    .replace(/<Runtimes>.*?<\/Runtimes>/s, '')
    .replace(/<AllFormFactors>.*?<\/AllFormFactors>/s, '');

/** The manifest with every text that a person sees said in a second language. */
const translated = (text: string): string =>
  text
    .replace(
      /<(DisplayName|Description) (DefaultValue="[^"]*")\/>/g,
      '<$1 $2><Override Locale="de-DE" Value="anders"/></$1>',
    )
    .replace(
      /<bt:String (id="[^"]*" DefaultValue="[^"]*")\/>/g,
      '<bt:String $1><bt:Override Locale="de-DE" Value="anders"/></bt:String>',
    );

/** What xmllint finds wrong; "" for nothing. */
function validate(folder: string, text: string): string {
  const file = join(folder, 'manifest.xml');
  writeFileSync(file, text);
  const schema = join(folder, 'OfficeAppManifestV1_1.xsd');
  try {
    execFileSync('xmllint', ['--nonet', '--noout', '--schema', schema, file], { stdio: 'pipe' });
    return '';
  } catch (problem) {
    return String((problem as { readonly stderr?: unknown }).stderr ?? problem);
  }
}

/** Width and height from a PNG file's header. */
function pixelsOf(file: string): [number, number] {
  const bytes = readFileSync(file);
  expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}
