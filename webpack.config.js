import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import MinimizerPlugin from 'minimizer-webpack-plugin';
import webpack from 'webpack';

/**
 * Bundles, each by its own name: `webpack` builds all, `webpack --env only=page,server` some.
 *
 * | name      | writes                         | runs in                                     |
 * | functions | dist/functions.js              | any JavaScript engine with CustomFunctions  |
 * | taskpane  | dist/taskpane.js, .html        | Excel's shared runtime                      |
 * | page      | dist/workbench/page/           | the workbench's page                        |
 * |           | dist/web/                      | the same page, where a browser keeps files  |
 * |           | for-tests/*test-handle.js      | the same, where a test brings it along      |
 * | server    | dist/workbench/server.js       | Node                                        |
 * | tools     | dist/build/*.js                | Node, by `npm run build` itself             |
 * | pictures  | dist/build/screenshots.js      | Node, by `npm run screenshots` alone        |
 */
const here = (path) => fileURLToPath(new URL(path, import.meta.url));

/** What all bundles share: types are checked by `tsc`, so webpack only strips them. */
const shared = (name) => ({
  name,
  mode: 'production',
  // The build's last step moves the maps out of what is shipped.
  devtool: 'hidden-source-map',
  context: here('.'),
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
      { test: /\.html$/, type: 'asset/resource', generator: { filename: '[name][ext]' } },
    ],
  },
  plugins: [new MiniCssExtractPlugin()],
  // webpack's own minimizer takes over a minute for the grid.
  optimization: {
    minimizer: [new MinimizerPlugin({ minify: { implementation: MinimizerPlugin.esbuildMinify } })],
  },
  performance: { hints: false },
  stats: 'errors-warnings',
  cache: {
    type: 'filesystem',
    name,
    cacheDirectory: here('node_modules/.cache/webpack'),
    buildDependencies: { config: [here('webpack.config.js'), here('tsconfig.json')] },
  },
});

/**
 * A page's bundle: the HTML beside it is copied as it is and names the script and style sheet. What of
 * an earlier build no longer belongs to it goes, but for what `keep` says others write there.
 */
const forBrowser = (name, entry, path, keep) => {
  const config = shared(name);
  return {
    ...config,
    target: ['web', 'es2022'],
    entry,
    output: {
      path: here(path),
      filename: '[name].js',
      chunkFilename: '[name].js',
      publicPath: '',
      clean: { keep },
    },
    // What comes by itself comes in one file of its own name.
    optimization: { ...config.optimization, splitChunks: false },
  };
};

/** An ES module for plain Node; `import.meta.url` stays the bundle's own address. */
const forNode = (name, entry, path, externals = []) => {
  const config = shared(name);
  return {
    ...config,
    target: 'node20',
    entry,
    externals,
    experiments: { outputModule: true },
    output: { path: here(path), filename: '[name].js', module: true, chunkFormat: 'module' },
    optimization: { minimize: false },
    module: { ...config.module, parser: { javascript: { importMeta: false, url: false } } },
  };
};

const ENGINE_RENDER = /@univerjs[\\/]engine-render[\\/]/;

/** What the grid brings along and our cells never use; each file says what it stands in for. */
const standIns = Object.fromEntries(
  ['cjk-regex', 'franc-min', 'opentype.js'].map((name) => [
    `${name}$`,
    here(`src/hosts/workbench/page/stand-ins/${name.replace(/\.js$/, '')}.ts`),
  ]),
);

/** The grid brings hyphenation patterns of 70 languages, of which its cells use none. */
const withoutHyphenation = () =>
  new webpack.NormalModuleReplacementPlugin(/^\.\/[a-z0-9-]+-[\w-]{8}\.js$/, (module) => {
    if (!ENGINE_RENDER.test(module.context)) return;
    module.request = here('src/hosts/workbench/page/stand-ins/no-hyphenation.ts');
  });

/** The tests' handle on a page: it reaches the page's own modules, yet nothing in the page asks for it. */
const testHandleOf = (start) => ({
  import: './src/hosts/workbench/page/test-handle.ts',
  dependOn: start,
  filename: '../../../for-tests/[name].js',
});

const bundles = {
  functions: () => ({
    ...shared('functions'),
    // No platform: neither `window` nor `require` may slip into the script.
    target: 'es2022',
    entry: { functions: './src/hosts/excel/associate.ts' },
    output: { path: here('dist'), filename: '[name].js', chunkFormat: false },
  }),
  taskpane: () =>
    forBrowser(
      'taskpane',
      {
        taskpane: [
          './src/hosts/excel/start.ts',
          './src/hosts/excel/taskpane.html',
          './src/hosts/excel/support.html',
        ],
      },
      'dist',
      // Of dist/ itself the scripts, styles and pages are the pane's, but for the functions'.
      /\/|^functions\.|\.(xml|xlsx)$/,
    ),
  page: () => {
    const config = forBrowser(
      'page',
      {
        start: ['./src/hosts/workbench/page/start.ts', './src/hosts/workbench/page/index.html'],
        // The same page where the browser keeps the workbooks; what else it needs the build copies there.
        web: { import: './src/hosts/web/start.ts', filename: '../../web/[name].js' },
        'service-worker': {
          import: './src/hosts/web/service-worker.ts',
          filename: '../../web/[name].js',
        },
        'test-handle': testHandleOf('start'),
        'web-test-handle': testHandleOf('web'),
      },
      'dist/workbench/page',
      // The build's last step writes it.
      /^functions\.json$/,
    );
    config.module.rules.push({
      include: ENGINE_RENDER,
      // What stands in for the patterns is too small for files of its own.
      parser: { dynamicImportMode: 'eager' },
    });
    return {
      ...config,
      resolve: { alias: standIns },
      plugins: [
        new MiniCssExtractPlugin({
          filename: ({ chunk }) => (chunk.name === 'web' ? '../../web/[name].css' : '[name].css'),
          chunkFilename: '[name].css',
        }),
        withoutHyphenation(),
      ],
    };
  },
  server: () =>
    forNode('server', { server: './src/hosts/workbench/server/serve.ts' }, 'dist/workbench'),
  tools: () =>
    forNode(
      'tools',
      {
        finish: './src/build/finish.ts',
        excel: './src/build/excel.ts',
        starter: './src/build/starter.ts',
        web: './src/build/web.ts',
        seal: './src/build/seal.ts',
      },
      'dist/build',
      // These bring a compiler and scripts of their own along; they stay where npm put them.
      {
        'custom-functions-metadata': 'module custom-functions-metadata',
        'office-addin-dev-certs': 'module office-addin-dev-certs',
        'workbox-build': 'module workbox-build',
      },
    ),
  pictures: () =>
    forNode('pictures', { screenshots: './src/build/screenshots.ts' }, 'dist/build', {
      'playwright-core': 'module playwright-core',
    }),
};

/** Bundles that are built only when asked for: nobody who runs the workbench needs them. */
const onDemand = ['pictures'];

/** From now on dist/ is of no whole build, until its last step notes the sources (src/build/built-from.ts). */
function beginBuild() {
  mkdirSync(here('maps'), { recursive: true });
  rmSync(here('maps/built-from.json'), { force: true });
  writeFileSync(here('maps/build-began'), '');
}

/** Builds the bundles named in `--env only=…`, or all that are shipped. */
export default (env = {}) => {
  const names = env.only
    ? env.only.split(',')
    : Object.keys(bundles).filter((name) => !onDemand.includes(name));
  const unknown = names.filter((name) => !(name in bundles));
  if (unknown.length > 0) {
    throw new Error(
      `No bundle named ${unknown.join(', ')}; there are ${Object.keys(bundles).join(', ')}.`,
    );
  }
  if (names.some((name) => !onDemand.includes(name))) beginBuild();
  return names.map((name) => bundles[name]());
};
