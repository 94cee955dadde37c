import { Stryker } from '@stryker-mutator/core';
import { GROUPS } from './groups.mjs';

/** Changes the rules one place at a time and sees whether a test fails: `npm run test:mutation [-- GROUP…]`. */

/** A score below this fails the run. */
const LEAST_SCORE = 90;

function optionsOf(name) {
  return {
    mutate: [...GROUPS[name].mutate, '!**/*.spec.ts'],
    // What the tests of the rules read; nothing else is copied.
    ignorePatterns: ['**', '!libs/rules/**', '!tests/{cases,mutation,reference,rules,support}/**'],
    tempDirName: '.sectorline/mutation',
    cleanTempDir: 'always',
    symlinkNodeModules: false,
    // The tests are run without types.
    disableTypeChecks: false,
    plugins: ['@stryker-mutator/jest-runner'],
    testRunner: 'jest',
    jest: { configFile: 'tests/mutation/jest.config.mjs', enableFindRelatedTests: false },
    coverageAnalysis: 'perTest',
    // What is made while a module is loaded (tables, texts) would take every test for each change.
    ignoreStatic: true,
    concurrency: 1,
    timeoutMS: 10_000,
    reporters: ['clear-text', 'progress-append-only', 'json'],
    jsonReporter: { fileName: `.sectorline/mutation-${name}.json` },
    clearTextReporter: { logTests: false, reportTests: false },
    thresholds: { high: 100, low: LEAST_SCORE, break: LEAST_SCORE },
  };
}

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in GROUPS));
if (unknown.length > 0) {
  console.error(`There is no group ${unknown.join(', ')}, only ${Object.keys(GROUPS).join(', ')}.`);
  process.exit(2);
}
process.env.PROPERTY_RUNS ??= '100';
for (const name of asked.length > 0 ? asked : Object.keys(GROUPS)) {
  process.env.MUTATION_GROUP = name;
  await new Stryker(optionsOf(name)).runMutationTest();
}
