import { schemaText } from '../../apps/api/src/schema/print-schema.js';
import { publicSchemaText, trustedDocumentsText } from '../../apps/api/src/schema/public-texts.js';
import { readSource } from './repository.js';

/** Lines that only one of two texts has, marked with who has them. */
function difference(committed: string, served: string): string[] {
  const [left, right] = [committed.split('\n'), served.split('\n')];
  const only = (lines: string[], others: string[], who: string): string[] => {
    const known = new Set(others);
    return lines.filter((line) => !known.has(line)).map((line) => `${who}: ${line.trim()}`);
  };
  const found = [...only(left, right, 'only committed'), ...only(right, left, 'only served')];
  return found.length > 0 || committed === served ? found : ['the same lines in another order'];
}

describe('public.schema.graphql and the trusted documents', () => {
  it('are what the server serves (npm run schema writes them anew)', async () => {
    const documents = 'apps/api/src/public/contract/trusted-documents.ts';
    expect(difference(readSource('apps/api/public.schema.graphql').text, publicSchemaText())).toEqual([]);
    expect(difference(readSource(documents).text, await trustedDocumentsText())).toEqual([]);
  });
});

describe('schema.graphql', () => {
  it('is what the server serves (npm run schema writes it anew)', async () => {
    expect(difference(readSource('apps/api/schema.graphql').text, await schemaText())).toEqual([]);
  });
});

describe('the check of the schema', () => {
  const committed = 'type Query {\n  meet: Meet\n}\n';

  it('finds a field that was added, removed, changed or moved', () => {
    expect(difference(committed, committed.replace('}', '  meets: [Meet!]!\n}'))).toEqual([
      'only served: meets: [Meet!]!',
    ]);
    expect(difference(committed, committed.replace('  meet: Meet\n', ''))).toEqual([
      'only committed: meet: Meet',
    ]);
    expect(difference(committed, committed.replace('meet: Meet', 'meet: Meet!'))).toEqual([
      'only committed: meet: Meet',
      'only served: meet: Meet!',
    ]);
    expect(difference('a\nb\n', 'b\na\n')).toEqual(['the same lines in another order']);
    expect(difference(committed, committed)).toEqual([]);
  });
});
