import { Field, InputType } from '@nestjs/graphql';
import { IsBase64, IsOptional, IsString, MaxLength } from 'class-validator';
import { CSV_LIMITS } from './csv-table.js';
import type { CsvSource } from './csv-text.js';

const BASE64_PER_BYTE = 4 / 3;

@InputType({
  description:
    'A table as CSV (RFC 4180): a line with the names of the columns, then one line for each; comma, semicolon or tab between cells. Send one of the two.',
})
export class CsvInput {
  @Field(() => String, { nullable: true, description: 'The table as text.' })
  @IsOptional()
  @IsString()
  @MaxLength(CSV_LIMITS.size)
  text?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'The bytes of the file in base64 (RFC 4648 section 4); UTF-8 or Windows-1252.',
  })
  @IsOptional()
  @IsBase64()
  @MaxLength(Math.ceil(CSV_LIMITS.size * BASE64_PER_BYTE) + 4)
  base64?: string | null;
}

/** `null`: both or neither were sent. */
export function csvSourceOf({ text, base64 }: CsvInput): CsvSource | null {
  if (typeof text === typeof base64) return null;
  return typeof text === 'string' ? text : Buffer.from(base64 ?? '', 'base64');
}
