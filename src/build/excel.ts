import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:https';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { getHttpsServerOptions } from 'office-addin-dev-certs';
import { today } from '../../functions/clock.ts';
import { demoFile } from '../starter/file/starter-file.ts';
import { inProject } from './folders.ts';
import { LOCAL_HOST } from './manifest-host.ts';
import { sideloading } from './sideload.ts';
import { staticFiles } from './static-files.ts';

/** `npm run excel`: serves dist/ to Excel on this machine and makes Excel find the add-in. */
async function serveToExcel(): Promise<void> {
  const manifest = inProject('dist/manifest.xml');
  const text = readFileSync(manifest, 'utf8');
  if (!text.includes(`"${LOCAL_HOST}/`)) {
    throw new Error(`${manifest} names another host. Run this without POUR_LEDGER_HOST.`);
  }
  const { cert, key } = await certificate();
  const server = createServer({ cert, key }, staticFiles(inProject('dist')));
  const port = Number(new URL(LOCAL_HOST).port);
  await new Promise<void>((ready, failed) => {
    server.once('error', failed).listen(port, '127.0.0.1', ready);
  });
  // Excel opens the one in dist/: its season, too, begins when it is first looked at.
  writeFileSync(inProject('dist/pour-ledger.xlsx'), demoFile(today()));
  sideload(text, manifest);
  console.log(`Serving ${LOCAL_HOST}/ until you press Ctrl+C.`);
}

/** Excel loads add-ins over https only, so this machine needs a certificate of its own. */
async function certificate(): Promise<{ readonly cert: Buffer; readonly key: Buffer }> {
  console.log('A certificate for this machine is looked up; the first time it is made, and');
  console.log('the system asks you to trust it.');
  try {
    return await getHttpsServerOptions();
  } catch (problem) {
    const folder = join(homedir(), '.office-addin-dev-certs');
    const [cert, key] = [join(folder, 'localhost.crt'), join(folder, 'localhost.key')];
    if (!existsSync(cert) || !existsSync(key)) throw problem;
    console.log(sentenceOf(problem).trim());
    console.log('The certificate is there, but this system does not trust it yet. Excel will load');
    console.log(`nothing until you have your system or browser trust ${join(folder, 'ca.crt')}`);
    return { cert: readFileSync(cert), key: readFileSync(key) };
  }
}

const sentenceOf = (problem: unknown): string =>
  problem instanceof Error ? problem.message : String(problem);

function sideload(text: string, manifest: string): void {
  const id = /<Id>([^<]+)<\/Id>/.exec(text)?.[1] ?? '';
  const { copyTo, command, next } = sideloading(process.platform, homedir(), id, manifest);
  if (copyTo !== undefined) {
    mkdirSync(dirname(copyTo), { recursive: true });
    cpSync(manifest, copyTo);
    console.log(`Copied the manifest to ${copyTo}`);
  }
  if (command !== undefined) {
    const [program, ...args] = command;
    execFileSync(program, args, { stdio: 'ignore' });
    console.log(`Registered the manifest: ${command.join(' ')}`);
  }
  for (const line of next) console.log(line);
}

serveToExcel().catch((problem: unknown) => {
  console.error(sentenceOf(problem));
  process.exitCode = 1;
});
