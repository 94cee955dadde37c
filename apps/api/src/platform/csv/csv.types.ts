import { Field, Int, ObjectType } from '@nestjs/graphql';
import { refusal, UserError } from '../errors/user-error.types.js';
import type { CsvProblem } from './csv-problem.js';

@ObjectType({
  description: 'One thing that is wrong with a table that was sent.',
  implements: () => [UserError],
})
export class CsvFault extends UserError {
  @Field(() => Int, { description: 'From 1; the header is a line too.' })
  line: number;

  @Field(() => String, { nullable: true, description: 'Null: the whole line.' })
  column: string | null;
}

/** @param path of the table in the input. */
export function csvFault(
  { code, line, column, message, remedy }: CsvProblem,
  path: readonly string[],
): CsvFault {
  const where = column === null ? `Line ${line}` : `Line ${line}, ${column}`;
  const error = refusal({ code, path, message: `${where}: ${message}`, remedy });
  return Object.assign(new CsvFault(), error, { line, column });
}

export const CSV_MISSING = refusal({
  code: 'CSV_MISSING',
  path: ['csv'],
  message: 'Nothing says what the table holds, or two things do.',
  remedy: 'Send its text or its bytes.',
});
