import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import webpack from 'webpack';

const root = fileURLToPath(new URL('../..', import.meta.url));
const cache = join(root, 'node_modules/.cache/test-pages');

/**
 * Bundles a script for a browser, unminified and without eval, as `<name>.js` in the returned folder,
 * with the files that go `beside` it. What the very same sources gave is made once and found again, by
 * other test files too.
 */
export async function bundleForBrowser(
  name: string,
  entry: string,
  beside: Readonly<Record<string, string>> = {},
): Promise<string> {
  const folder = join(cache, `${name}-${await hashOfSources()}`);
  if (existsSync(folder)) return folder;
  await mkdir(cache, { recursive: true });
  const fresh = await mkdtemp(join(cache, 'fresh-'));
  await bundle({ [name]: entry }, fresh);
  for (const [file, text] of Object.entries(beside)) await writeFile(join(fresh, file), text);
  // Whole or not at all: two test files may have begun the same bundle.
  await rename(fresh, folder).catch(() => rm(fresh, { recursive: true }));
  return folder;
}

async function hashOfSources(): Promise<string> {
  const hash = createHash('sha256').update(await readFile(join(root, 'package-lock.json')));
  for (const folder of ['src', 'functions', 'taskpane', 'tests']) {
    const names = await readdir(join(root, folder), { recursive: true });
    for (const name of names.filter((known) => /\.(ts|css)$/u.test(known)).sort()) {
      if (name.endsWith('.test.ts')) continue;
      hash.update(name).update(await readFile(join(root, folder, name)));
    }
  }
  return hash.digest('hex').slice(0, 16);
}

async function bundle(entry: Readonly<Record<string, string>>, folder: string): Promise<void> {
  const compiler = webpack({
    mode: 'development',
    devtool: false,
    context: root,
    entry: { ...entry },
    target: ['web', 'es2022'],
    output: { path: folder, filename: '[name].js', chunkFilename: '[name].js', publicPath: '' },
    module: {
      rules: [
        {
          test: /\.ts$/,
          loader: 'ts-loader',
          options: {
            transpileOnly: true,
            compilerOptions: { noEmit: false, allowImportingTsExtensions: false },
          },
        },
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
      ],
    },
    plugins: [new MiniCssExtractPlugin()],
    performance: { hints: false },
  });
  await new Promise<void>((resolve, reject) => {
    compiler.run((error, stats) => {
      if (error) reject(error);
      else if (stats?.hasErrors()) reject(new Error(stats.toString('errors-only')));
      else resolve();
    });
  });
}
