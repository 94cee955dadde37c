import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { schemaText } from './print-schema.js';
import { publicSchemaText, trustedDocumentsText } from './public-texts.js';

/** Run in the repository's directory: writes what is generated from the schemas, or with --check compares it. */
const TEXTS: readonly (readonly [path: string, text: string])[] = [
  [join('apps', 'api', 'schema.graphql'), await schemaText()],
  [join('apps', 'api', 'public.schema.graphql'), publicSchemaText()],
  [join('apps', 'api', 'src', 'public', 'contract', 'trusted-documents.ts'), await trustedDocumentsText()],
];

for (const [path, text] of TEXTS) {
  if (!process.argv.includes('--check')) await writeFile(path, text);
  else if ((await readFile(path, 'utf8').catch(() => '')) === text) console.log(`${path} is current.`);
  else {
    console.log(`${path} is stale; run: npm run schema`);
    process.exitCode = 1;
  }
}
