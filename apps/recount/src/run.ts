import { MAX_BYTES, recount } from '#rules';
import { readArguments, USAGE } from './arguments.js';
import { EXIT, statusOf, summaryOf, unreadable, worstOf, type Counted, type Status } from './documents.js';
import { outputTo, type Output } from './output.js';
import { readInput, type Input } from './read-input.js';
import { reportOf, titleOf } from './table/report.js';

/** One byte more than a sheet may have is enough to refuse it. */
const READ_BYTES_MAX = MAX_BYTES + 1;

/** Standard input can be read only once, but may be named twice. */
function inputs(): (name: string) => Promise<Input> {
  const read = new Map<string, Promise<Input>>();
  return (name) => {
    const known = read.get(name);
    if (known) return known;
    const input = readInput(name, READ_BYTES_MAX);
    if (name === '-') read.set(name, input);
    return input;
  };
}

async function countFiles(files: readonly string[], json: boolean, output: Output): Promise<number> {
  const read = inputs();
  const statuses: Status[] = [];
  for (const name of files) {
    const input = await read(name);
    const document: Counted = 'bytes' in input ? recount(input.bytes) : unreadable(input.unreadable);
    statuses.push(statusOf(document));
    if (json) await output.write(`${JSON.stringify(document)}\n`);
    else if (files.length === 1) await output.write(reportOf(input, document));
    else await output.write(`${titleOf(name)}${reportOf(input, document)}\n`);
  }
  if (!json && files.length > 1) await output.write(`${summaryOf(statuses)}\n`);
  await output.finish();
  return worstOf(statuses);
}

/** Does what the command line asks for and returns the exit status. */
export async function run(words: readonly string[]): Promise<number> {
  const asked = readArguments(words);
  if (asked.kind === 'misuse') {
    process.stderr.write(`${asked.message}\n\n${USAGE}`);
    return EXIT.failed;
  }
  const output = outputTo(process.stdout);
  if (asked.kind === 'count') return countFiles(asked.files, asked.json, output);
  await output.write(USAGE);
  await output.finish();
  return EXIT.counted;
}
