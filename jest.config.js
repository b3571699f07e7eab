/** Unit tests run in node; the engine, office (LibreOffice) and browser suites are projects of their own, so each can be run and counted alone. */
const base = {
  testEnvironment: 'node',
  setupFiles: ['<rootDir>/test/setup.ts'],
  transform: {
    '^.+\\.(t|j|mj)s$': ['@swc/jest', {
      jsc: { target: 'es2022', parser: { syntax: 'typescript' } },
      module: { type: 'commonjs' },
    }],
  },
  moduleNameMapper: {
    '^@generated/(.*)$': '<rootDir>/build/$1',
    '\\.css$': '<rootDir>/test/noStyles.ts',
    '^office-addin-manifest$': '<rootDir>/test/excel/officeHosts.ts',
  },
  // These ship as ES modules only.
  transformIgnorePatterns: ['/node_modules/(?!(ml-[^/]+|is-any-array|wasm-xlsxwriter|lodash-es|nanoid|rbush|quickselect|kdbush)/)'],
};

module.exports = {
  projects: [
    { ...base, displayName: 'unit', testMatch: ['<rootDir>/test/**/*.test.ts'], testPathIgnorePatterns: ['/test/engine/', '/test/browser/', '/test/office/'] },
    { ...base, displayName: 'engine', testMatch: ['<rootDir>/test/engine/**/*.test.ts'] },
    { ...base, displayName: 'office', testMatch: ['<rootDir>/test/office/**/*.test.ts'] },
    { ...base, displayName: 'browser', testMatch: ['<rootDir>/test/browser/**/*.test.ts'] },
  ],
};
