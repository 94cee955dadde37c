import { run } from './run.js';

try {
  // Not process.exit: what has been written must still leave.
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`The recount failed: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
