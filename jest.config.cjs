module.exports = {
  testEnvironment: 'node',
  roots: ['<rootDir>/tests', '<rootDir>/libs', '<rootDir>/apps'],
  testMatch: ['**/*.spec.ts'],
  extensionsToTreatAsEsm: ['.ts'],
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  transform: { '^.+\\.ts$': ['@swc/jest'] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  testTimeout: 60000,
};
