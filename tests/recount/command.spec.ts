import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { documentsIn, recountCommand, scratchFolder } from './command.js';
import { INVALID, RIGHTLY_WRITTEN, TIE, WRONGLY_WRITTEN } from './sheets.js';

const scratch = scratchFolder();
afterAll(scratch.remove);

const tie = scratch.write('tie.json', TIE);
const right = scratch.write('right.json', RIGHTLY_WRITTEN);
const wrong = scratch.write('wrong.json', WRONGLY_WRITTEN);
const invalid = scratch.write('invalid.json', INVALID);
const missing = join(scratch.path, 'missing.json');

describe('the exit status', () => {
  it.each([
    [0, 'all is counted', [tie]],
    [0, 'what is written is what was counted', [right, tie]],
    [3, 'something written differs', [right, wrong, tie]],
    [2, 'a sheet is not valid, whatever else differs', [wrong, invalid]],
    [1, 'a file could not be read, whatever else is wrong', [wrong, invalid, missing]],
  ])('%d: %s', async (status, _, files) => {
    expect(await recountCommand(['--json', ...files])).toMatchObject({ status, err: '' });
  });

  it('is the same for a table', async () => {
    const answer = await recountCommand([wrong, invalid]);
    expect(answer).toMatchObject({ status: 2, err: '' });
    expect(answer.out).toContain('the card says 1st, counted 2nd because equal best 58.10');
  });

  it('1: the command is not understood', async () => {
    const answer = await recountCommand(['--jsno', tie]);
    expect(answer).toMatchObject({ status: 1, out: '' });
    expect(answer.err).toContain('Usage: npm run --silent recount');
  });

  it('0: help is asked for', async () => {
    const answer = await recountCommand(['--help']);
    expect(answer).toMatchObject({ status: 0, err: '' });
    expect(answer.out).toContain('Usage: npm run --silent recount');
  });
});

describe('what is read', () => {
  it('gives one document for each file, in the order given', async () => {
    const answer = await recountCommand([missing, tie, '--json', invalid, tie]);
    const documents = documentsIn(answer);
    expect(documents.map(({ problems }) => (problems as { code: string }[]).map(({ code }) => code))).toEqual(
      [['UNREADABLE'], [], ['CELL'], []],
    );
    expect(documents[1]).toEqual(documents[3]);
  });

  it('tells what could not be read as a document', async () => {
    mkdirSync(join(scratch.path, 'folder'));
    const answer = await recountCommand(['--json', missing, join(scratch.path, 'folder'), '']);
    for (const document of documentsIn(answer)) {
      expect(document).toEqual({
        format: 'sectorline-result/1',
        problems: [{ path: '', code: 'UNREADABLE', message: expect.any(String), rule: null }],
      });
    }
    expect(documentsIn(answer).length).toBe(3);
    expect(answer.status).toBe(1);
  });

  it('takes standard input, also named twice, and a byte order mark', async () => {
    const input = `\ufeff${JSON.stringify(TIE)}`;
    const answer = await recountCommand(['--json', '-', tie, '-'], { input });
    const [first, second, third] = documentsIn(answer);
    expect(answer.status).toBe(0);
    expect(first).toEqual(second);
    expect(third).toEqual(second);
  });

  it('finds a file from where the person stands', async () => {
    const answer = await recountCommand(['--json', 'tie.json'], { folder: scratch.path });
    expect(answer.status).toBe(0);
  });

  it('refuses what is not UTF-8', async () => {
    const answer = await recountCommand(['--json', '-'], { input: Uint8Array.of(0x22, 0xff, 0x22) });
    expect(documentsIn(answer)).toMatchObject([{ problems: [{ path: '', code: 'NOT_JSON' }] }]);
  });

  it('refuses a file without an end', async () => {
    const answer = await recountCommand(['--json', '/dev/zero', tie]);
    expect(answer.status).toBe(2);
    expect(documentsIn(answer)).toMatchObject([{ problems: [{ code: 'TOO_LARGE' }] }, { problems: [] }]);
  });

  it('takes 5,000,000 bytes and not one more', async () => {
    const text = JSON.stringify(TIE);
    const full = text + ' '.repeat(5_000_000 - Buffer.byteLength(text));
    const files = [scratch.write('full.json', full), scratch.write('over.json', `${full} `)];
    expect(documentsIn(await recountCommand(['--json', ...files]))).toMatchObject([
      { problems: [] },
      { problems: [{ path: '', code: 'TOO_LARGE' }] },
    ]);
  });
});

describe('what is written', () => {
  /** A sheet whose document is larger than what a pipe holds (64 KiB). */
  const large = scratch.write('large.json', {
    ...TIE,
    competitors: Array.from({ length: 2000 }, (_, index) => ({ bib: `${index}`, series: ['50.00'] })),
  });

  it('leaves whole, however large', async () => {
    const answer = await recountCommand(['--json', large, large]);
    const documents = documentsIn(answer);
    expect(answer.out.length).toBeGreaterThan(400_000);
    expect(documents.map(({ results }) => (results as unknown[]).length)).toEqual([2000, 2000]);
  });

  it('may be left by a reader who had enough; the status still speaks for all files', async () => {
    const answer = await recountCommand(['--json', large, large, large, wrong], { hangUp: true });
    expect(answer).toMatchObject({ status: 3, err: '' });
  });
});
