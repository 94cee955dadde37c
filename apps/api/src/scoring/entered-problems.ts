import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { EnteredLineInput, EnteredResultSetInput } from './entered-results.inputs.js';

/** Everything in an entered result that cannot be right. */
export function enteredProblems({ lines, replacesId, reason }: EnteredResultSetInput): Refusal[] {
  return [
    ...reasonProblems(!!replacesId, !!reason),
    ...lines.flatMap((line, at) => lineProblems(line, at, lines)),
  ];
}

function reasonProblems(replaces: boolean, hasReason: boolean): Refusal[] {
  if (replaces === hasReason) return [];
  return [
    replaces
      ? refusal({
          code: 'REASON_MISSING',
          path: ['reason'],
          message: 'A result is not replaced without a reason.',
          remedy: 'Say why.',
        })
      : refusal({
          code: 'REASON_NOT_EXPECTED',
          path: ['reason'],
          message: 'Nothing is replaced.',
          remedy: 'Leave the reason out, or name the result that this one replaces.',
        }),
  ];
}

/** A line of a result as far as it can contradict others. */
export type WrittenLine = Pick<EnteredLineInput, 'bib' | 'place' | 'status'>;

export function lineProblems(line: WrittenLine, at: number, lines: readonly WrittenLine[]): Refusal[] {
  const problems: Refusal[] = [];
  const path = (field: string): string[] => ['lines', String(at), field];
  if (lines.findIndex(({ bib }) => bib === line.bib) !== at) {
    problems.push(
      refusal({
        code: 'BIB_TWICE',
        path: path('bib'),
        message: `"${line.bib}" is in the result twice.`,
        remedy: 'Enter each once.',
      }),
    );
  }
  if (!line.place === !line.status) {
    problems.push(
      refusal({
        code: 'PLACE_OR_STATUS',
        path: path('place'),
        message: 'A line has either a place or the reason why it has none.',
        remedy: 'Send one of place and status.',
      }),
    );
  }
  const expected = placeOf(line, lines);
  if (line.place && line.place !== expected) {
    problems.push(
      refusal({
        code: 'PLACES',
        path: path('place'),
        message: `With ${expected - 1} placed before, the place is ${expected}, not ${line.place}.`,
        remedy: 'Number the places without gaps; those who are level share the better one.',
      }),
    );
  }
  return problems;
}

/** One more than there are with a better place, as places are shared in a result. */
function placeOf({ place }: WrittenLine, lines: readonly WrittenLine[]): number {
  return 1 + lines.filter((other) => other.place && place && other.place < place).length;
}
