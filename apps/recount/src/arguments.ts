import { parseArgs } from 'node:util';

export const USAGE = `Usage: npm run --silent recount -- FILE… [--json]

Counts each sheet again and says what was counted, why, and where it differs from what is written on it.
A FILE is a sheet, a combined events sheet or a meet in Sectorline's JSON format; - reads standard input.

  --json   one result document on a line for each FILE, in the order given, and nothing else
  --help   this text

Exit status: 0 counted, and what is written is what was counted; 1 a file could not be read, or the program
failed; 2 a sheet is not valid; 3 something written differs from what was counted. The first that applies.
`;

export type Arguments =
  | { readonly kind: 'count'; readonly files: readonly string[]; readonly json: boolean }
  | { readonly kind: 'help' }
  | { readonly kind: 'misuse'; readonly message: string };

/** What the command line asks for. Options may stand anywhere; `--` ends them. */
export function readArguments(words: readonly string[]): Arguments {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      options: { json: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
      allowPositionals: true,
    });
    if (values.help) return { kind: 'help' };
    if (positionals.length === 0) return { kind: 'misuse', message: 'No FILE is given.' };
    return { kind: 'count', files: positionals, json: values.json ?? false };
  } catch (error) {
    return { kind: 'misuse', message: error instanceof Error ? error.message : String(error) };
  }
}
