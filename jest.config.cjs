module.exports = {
  testEnvironment: 'node',
  roots: ['<rootDir>/tests', '<rootDir>/libs', '<rootDir>/apps'],
  testMatch: ['**/*.spec.ts'],
  // These need a browser: `npm run test:browser`.
  testPathIgnorePatterns: ['/node_modules/', '<rootDir>/tests/browser/'],
  extensionsToTreatAsEsm: ['.ts'],
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  transform: { '^.+\\.ts$': ['@swc/jest'] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  globalSetup: '<rootDir>/tests/support/test-run-begins.mjs',
  globalTeardown: '<rootDir>/tests/support/test-run-ends.mjs',
  // Jest leaves one core idle by default, which on a machine of two is half of it.
  maxWorkers: '100%',
  // Modules of finished test files stay in memory: a worker that has grown is replaced.
  workerIdleMemoryLimit: '1GB',
  // Properties take their 20,000 runs on slow machines too: this only ends what hangs.
  testTimeout: 300_000,
};
