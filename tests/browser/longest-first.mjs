import TestSequencer from '@jest/test-sequencer';

/** What waits for a bad network most of its time begins first, beside the others. */
const LONGEST = ['flaky.spec.ts', 'final.spec.ts'];

export default class LongestFirst extends TestSequencer {
  sort(tests) {
    const rank = ({ path }) => {
      const at = LONGEST.findIndex((name) => path.endsWith(name));
      return at === -1 ? LONGEST.length : at;
    };
    return [...super.sort(tests)].sort((a, b) => rank(a) - rank(b));
  }
}
