import { GROUPS } from './groups.mjs';

const group = GROUPS[process.env.MUTATION_GROUP];

/** The tests of one group on the changed sources, which lie in a copy of the repository. */
export default {
  rootDir: '../..',
  testEnvironment: 'node',
  runner: '<rootDir>/tests/mutation/first-failure.mjs',
  testMatch: group.tests.map((path) => `<rootDir>/${path}`),
  // As CommonJS: every change loads all modules anew.
  transform: {
    '^.+\\.ts$': [
      '@swc/jest',
      {
        swcrc: false,
        jsc: { parser: { syntax: 'typescript' }, target: 'es2022' },
        module: { type: 'commonjs' },
      },
    ],
  },
  moduleNameMapper: {
    '^(\\.{1,2}/.*)\\.js$': '$1',
    '^#rules$': '<rootDir>/libs/rules/src/index.ts',
  },
  globals: { PROPERTY_TIME: group.propertyTime },
  setupFiles: ['<rootDir>/tests/mutation/quick-properties.ts'],
  testTimeout: 60_000,
};
