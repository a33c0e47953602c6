import { copyFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import webpack from 'webpack';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Bundles the page around the test's own functions into `folder`, unminified and without eval. */
export async function buildPage(folder: string): Promise<void> {
  const compiler = webpack({
    mode: 'development',
    devtool: false,
    context: root,
    entry: { start: './tests/hosts/page/entry.ts' },
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
  await writeFile(`${folder}/functions.json`, JSON.stringify(HELP));
  await copyFile(`${root}/src/hosts/workbench/page/index.html`, `${folder}/index.html`);
}

/** As the metadata generator writes it, for one of the test's functions. */
const HELP = {
  functions: [
    {
      id: 'SHARE',
      description: 'What share one amount is of another.',
      parameters: [
        { name: 'part', description: 'The smaller amount.', type: 'any' },
        { name: 'wholeAmount', description: 'All of it.', optional: true, type: 'any' },
      ],
    },
  ],
};
