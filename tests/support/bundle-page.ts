import { fileURLToPath } from 'node:url';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import webpack from 'webpack';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Bundles scripts for a browser into `folder`, one file an entry, unminified and without eval. */
export async function bundleForBrowser(
  entry: Readonly<Record<string, string>>,
  folder: string,
): Promise<void> {
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
