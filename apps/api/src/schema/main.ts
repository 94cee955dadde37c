import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { schemaText } from './print-schema.js';

/** Run in the repository's directory: writes apps/api/schema.graphql, or with --check compares it. */
const path = join('apps', 'api', 'schema.graphql');
const text = await schemaText();

if (process.argv.includes('--check')) {
  const current = (await readFile(path, 'utf8').catch(() => '')) === text;
  console.log(current ? `${path} is current.` : `${path} is stale; run: npm run schema`);
  process.exitCode = current ? 0 : 1;
} else {
  await writeFile(path, text);
}
