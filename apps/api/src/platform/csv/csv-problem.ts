/** One thing that is wrong with a CSV text. */
export interface CsvProblem {
  readonly code: string;
  /** From 1; 1 where the text as a whole is at fault. */
  readonly line: number;
  /** The name of the column; `null`: the whole line or text. */
  readonly column: string | null;
  readonly message: string;
  readonly remedy: string;
}

/** How many are told at once. A file of the wrong kind has one in every cell. */
const TOLD = 200;

/** In the order of the text, and as many as somebody can use. */
export function toldProblems(problems: readonly CsvProblem[]): CsvProblem[] {
  const inOrder = problems.toSorted((a, b) => a.line - b.line);
  if (inOrder.length <= TOLD) return inOrder;
  const more: CsvProblem = {
    code: 'MORE_PROBLEMS',
    line: inOrder[TOLD]!.line,
    column: null,
    message: `There are ${inOrder.length - TOLD} more problems from here on.`,
    remedy: 'Correct those above and read the text again.',
  };
  return [...inOrder.slice(0, TOLD), more];
}
