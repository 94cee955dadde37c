import { readCases } from '../cases/read-cases.js';
import { documentsIn, recountCommand, scratchFolder } from './command.js';

// Real championship results, worked examples from rule books and results of a second, exact computation:
// each case names its source.
describe('the cases of the sheet format', () => {
  const cases = readCases();
  const scratch = scratchFolder();
  let documents: Record<string, unknown>[] = [];
  let status: number | null = null;
  afterAll(scratch.remove);

  beforeAll(async () => {
    const files = cases.map(([, { sheet }], index) => scratch.write(`${index}.json`, sheet));
    const answer = await recountCommand(['--json', ...files]);
    documents = documentsIn(answer);
    status = answer.status;
  });

  it('give one document each, and the status of the invalid ones', () => {
    expect(documents.length).toBe(cases.length);
    expect(cases.length).toBeGreaterThan(70);
    expect(status).toBe(2);
  });

  it.each(cases.map(([path, one], index) => [path, one.expect as object, index] as const))(
    '%s',
    (_, facts, index) => {
      // Objects in part, lists whole and in order.
      expect(documents[index]).toMatchObject(facts);
    },
  );
});
