import TestRunner from 'jest-runner';

/** Runs file after file, those beside the source first, and stops after one in which a test failed. */
export default class FirstFailure extends TestRunner {
  async runTests(tests, watcher, options) {
    let hasFailed = false;
    this.on('test-file-success', ([, result]) => {
      hasFailed ||= result.numFailingTests > 0 || result.testExecError !== undefined;
    });
    const isBeside = ({ path }) => path.includes('/src/');
    for (const test of [...tests].sort((a, b) => isBeside(b) - isBeside(a))) {
      if (hasFailed) return;
      await super.runTests([test], watcher, options);
    }
  }
}
