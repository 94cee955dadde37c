import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { lexicographicSortSchema, parse, printSchema, validate } from 'graphql';
import { publicSchema } from '../public/contract/public-schema.js';

const FOLDER = join('apps', 'api', 'src', 'public', 'documents');

/** The public contract as text in a fixed order. */
export function publicSchemaText(): string {
  return `${printSchema(lexicographicSortSchema(publicSchema()))}\n`;
}

/** The trusted documents as a module, so that the program needs no files. Throws on one that does not fit the schema. */
export async function trustedDocumentsText(): Promise<string> {
  const names = (await readdir(FOLDER)).filter((name) => name.endsWith('.graphql')).sort();
  const entries = await Promise.all(
    names.map(async (name) => entryOf(name, await readFile(join(FOLDER, name), 'utf8'))),
  );
  const head = '/* Written by `npm run schema` from apps/api/src/public/documents. */';
  return `${head}\n\nexport const TRUSTED_DOCUMENTS = [\n${entries.join('')}] as const;\n`;
}

function entryOf(file: string, text: string): string {
  const problems = validate(publicSchema(), parse(text));
  if (problems.length > 0) throw new Error(`${file}: ${problems.map(({ message }) => message).join(' ')}`);
  const hash = createHash('sha256').update(text).digest('hex');
  const name = file.replace(/\.graphql$/, '');
  return `  {\n    name: '${name}',\n    hash: '${hash}',\n    text: \`${text}\`,\n  },\n`;
}
