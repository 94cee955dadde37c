import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { recountCommand } from './command.js';

const README = readFileSync(join(import.meta.dirname, '..', '..', 'README.md'), 'utf8');

/** The command and what it prints, as the README shows them; `…` stands for lines that are left out. */
function example(): { words: string[]; parts: string[] } {
  const [, words = '', output = ''] =
    /^\$ npm run --silent recount -- (.*)\n([^]*?)^```$/m.exec(README) ?? [];
  return { words: words.split(' '), parts: output.split('…\n').map((part) => part.trimEnd()) };
}

describe('the README', () => {
  it('shows what the command prints', async () => {
    const { words, parts } = example();
    const { out } = await recountCommand(words);
    expect(parts.length).toBeGreaterThan(0);
    for (const part of parts) expect(out).toContain(part);
    expect(out.startsWith(parts[0] ?? '?')).toBe(true);
  });
});
