/**
 * Five bundles: the workbench page, the Excel package, and for node the engine of `npm run evaluate`, the workbook writer of
 * `npm run workbooks` and the reviewer of `npm run review`. `--env only=workbench` (or excel, engine, workbooks, review) builds
 * one of them.
 */
const path = require('node:path');
const CopyPlugin = require('copy-webpack-plugin');
const HtmlPlugin = require('html-webpack-plugin');
const MiniCssExtractPlugin = require('mini-css-extract-plugin');
const { manifestFor, metadataFor, readBaseUrl } = require('./scripts/excelPackage.cjs');

const root = __dirname;
const dist = path.join(root, 'dist');

const shared = {
  context: root,
  mode: 'production',
  devtool: 'source-map',
  performance: { hints: false },
  stats: 'errors-warnings',
  resolve: {
    extensions: ['.ts', '.js', '.mjs'],
    alias: { '@generated': path.join(root, 'build') },
  },
  module: {
    rules: [
      // What is typed and pasted is read as src/hosts/grid/typedNumber.ts says.
      { test: /@univerjs[\\/]sheets-(ui|numfmt-ui)[\\/]/, resolve: { alias: { '@univerjs/core$': path.join(root, 'src/hosts/grid/coreForEntry.ts') } } },
      { test: /\.ts$/, use: { loader: 'ts-loader', options: { transpileOnly: true, compilerOptions: { noEmit: false } } } },
      { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
    ],
  },
};

function workbench() {
  return {
    ...shared,
    name: 'workbench',
    resolve: {
      ...shared.resolve,
      // It tries eval, which the page's content security policy refuses and reports.
      alias: { ...shared.resolve.alias, '@stdlib/assert-has-generator-support$': path.join(root, 'src/workbench/generatorSupport.js') },
    },
    entry: { workbench: './src/workbench/main.ts' },
    output: {
      path: dist,
      filename: 'assets/[name].[contenthash:8].js',
      chunkFilename: 'assets/[name].[contenthash:8].js',
      // The WebAssembly that writes .xlsx files.
      assetModuleFilename: 'assets/[name].[contenthash:8][ext]',
      // The other bundle shares the folder; only what an earlier workbench left is removed.
      clean: { keep: (file) => !file.startsWith('assets/') },
      // scripts/start.mjs reads the age of index.html.
      compareBeforeEmit: false,
    },
    plugins: [
      new HtmlPlugin({ template: './src/workbench/index.html', filename: 'index.html', chunks: ['workbench'], favicon: './src/workbench/icon.svg' }),
      new MiniCssExtractPlugin({ filename: 'assets/[name].[contenthash:8].css' }),
    ],
  };
}

function excel() {
  const baseUrl = readBaseUrl(process.env.BASE_URL);
  const withText = (change) => (content) => change(content.toString());
  return {
    ...shared,
    name: 'excel',
    entry: { taskpane: './src/taskpane/main.ts', help: './src/taskpane/help.ts' },
    output: { path: dist, filename: '[name].js' },
    plugins: [
      new HtmlPlugin({ template: './src/taskpane/taskpane.html', filename: 'taskpane.html', chunks: ['taskpane'] }),
      new HtmlPlugin({ template: './src/taskpane/help.html', filename: 'help.html', chunks: ['help'] }),
      new MiniCssExtractPlugin({ filename: '[name].css' }),
      new CopyPlugin({
        patterns: [
          { from: 'src/taskpane/icons/*.png', to: 'icons/[name][ext]' },
          { from: 'manifest.xml', to: 'manifest.xml', transform: withText((xml) => manifestFor(baseUrl, xml)) },
          {
            from: 'build/functions.json',
            to: 'functions.json',
            transform: withText((json) => `${JSON.stringify(metadataFor(baseUrl, JSON.parse(json)), null, 2)}\n`),
          },
        ],
      }),
    ],
  };
}

function engine() {
  return {
    ...shared,
    name: 'engine',
    target: 'node20',
    devtool: false,
    entry: { evaluate: './src/hosts/grid/evaluate.ts' },
    output: { path: path.join(root, 'build'), filename: '[name].cjs', library: { type: 'commonjs2' } },
    // One file: the hyphenation of 60 languages, which only drawing would load, is left out.
    module: { ...shared.module, parser: { javascript: { dynamicImportMode: 'weak' } } },
    optimization: { minimize: false },
  };
}

function workbooks() {
  return {
    ...shared,
    name: 'workbooks',
    target: 'node20',
    devtool: false,
    entry: { workbooks: './src/hosts/file/readyWorkbooks.ts' },
    experiments: { outputModule: true },
    output: { path: path.join(root, 'build'), filename: '[name].mjs', library: { type: 'module' } },
    // It reads its WebAssembly from beside itself.
    externals: { 'wasm-xlsxwriter': 'module wasm-xlsxwriter' },
    optimization: { minimize: false },
  };
}

function review() {
  return {
    ...shared,
    name: 'review',
    target: 'node20',
    devtool: false,
    entry: { review: './src/hosts/file/reviewedFiles.ts' },
    experiments: { outputModule: true },
    output: { path: path.join(root, 'build'), filename: '[name].mjs', library: { type: 'module' } },
    optimization: { minimize: false },
  };
}

module.exports = (env = {}) => {
  const bundles = { workbench, excel, engine, workbooks, review };
  return env.only ? bundles[env.only]() : Object.values(bundles).map((bundle) => bundle());
};
