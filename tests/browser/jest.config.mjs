import all from '../../jest.config.cjs';

/** The tests that need a browser; everything else as in the other tests. */
export default {
  ...all,
  rootDir: '../..',
  roots: ['<rootDir>/tests/browser'],
  testPathIgnorePatterns: ['/node_modules/'],
  testSequencer: '<rootDir>/tests/browser/longest-first.mjs',
};
