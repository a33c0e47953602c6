import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { records } from '../../functions/records/index.ts';
import { inProject } from './folders.ts';
import { functionsMetadata } from './functions-metadata.ts';
import { LOCAL_HOST, manifestFor } from './manifest-host.ts';
import { putMapsApart } from './source-maps.ts';
import { thirdPartyNotices } from './third-party.ts';

/**
 * The build's last step, after webpack: functions.json, manifest.xml, icons and notices, in dist/; the source maps go to maps/. The
 * environment's POUR_LEDGER_HOST says where dist/ will be served from.
 */
const host = process.env['POUR_LEDGER_HOST'] ?? LOCAL_HOST;

const metadata = functionsMetadata(records);
writeFileSync(inProject('dist/functions.json'), metadata);
// The workbench's formula helper reads it too.
writeFileSync(inProject('dist/workbench/page/functions.json'), metadata);
writeFileSync(
  inProject('dist/manifest.xml'),
  manifestFor(readFileSync(inProject('manifest.xml'), 'utf8'), host),
);
mkdirSync(inProject('dist/icons'), { recursive: true });
for (const size of [16, 32, 64, 80, 128]) {
  cpSync(
    inProject(`src/hosts/excel/icons/icon-${size}.png`),
    inProject(`dist/icons/icon-${size}.png`),
  );
}
putMapsApart(inProject('.'));
writeFileSync(inProject('dist/THIRD-PARTY.txt'), thirdPartyNotices(inProject('.')));
