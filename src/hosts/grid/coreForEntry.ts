/**
 * The grid's core as its parts for typing and pasting get it (see webpack.config.js): what becomes a number is decided here, since
 * they read numbers and dates of many countries and guess.
 */
export * from '@univerjs/core';
export { typedNumber as getNumfmtParseValueFilter } from './typedNumber';
