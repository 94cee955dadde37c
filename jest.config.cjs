module.exports = {
  testEnvironment: 'node',
  roots: ['<rootDir>/tests', '<rootDir>/libs', '<rootDir>/apps'],
  testMatch: ['**/*.spec.ts'],
  extensionsToTreatAsEsm: ['.ts'],
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  transform: { '^.+\\.ts$': ['@swc/jest'] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  globalSetup: '<rootDir>/tests/support/test-run-begins.mjs',
  globalTeardown: '<rootDir>/tests/support/test-run-ends.mjs',
  testTimeout: 60000,
};
