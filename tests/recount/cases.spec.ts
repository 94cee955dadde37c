import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { documentsIn, recountCommand, scratchFolder } from './command.js';

const FOLDER = join(import.meta.dirname, '..', 'cases');

interface Case {
  readonly title: string;
  readonly source: string;
  readonly sheet: unknown;
  readonly expect: Record<string, unknown>;
}

const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const CASES = NAMES.map((name) => JSON.parse(readFileSync(join(FOLDER, name), 'utf8')) as Case);

// Real championship results, worked examples from rule books and results of a second, exact computation:
// each case names its source.
describe('the cases of the sheet format', () => {
  const scratch = scratchFolder();
  let documents: Record<string, unknown>[] = [];
  let status: number | null = null;
  afterAll(scratch.remove);

  beforeAll(async () => {
    const files = CASES.map(({ sheet }, index) => scratch.write(`${index}.json`, sheet));
    const answer = await recountCommand(['--json', ...files]);
    documents = documentsIn(answer);
    status = answer.status;
  });

  it('give one document each, and the status of the invalid ones', () => {
    expect(documents.length).toBe(CASES.length);
    expect(CASES.length).toBeGreaterThan(70);
    expect(status).toBe(2);
  });

  it.each(CASES.map((one, index) => [NAMES[index], one, index] as const))(
    '%s',
    (_, { expect: facts }, index) => {
      // Objects in part, lists whole and in order.
      expect(documents[index]).toMatchObject(facts);
    },
  );
});
