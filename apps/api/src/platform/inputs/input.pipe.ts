import { Injectable, type ArgumentMetadata, type PipeTransform, type Type } from '@nestjs/common';
import { plainToInstance } from 'class-transformer';
import { validate } from 'class-validator';
import { inputError } from '../errors/input-problems.js';

/** What has no class of its own was checked by GraphQL. */
const PLAIN: ReadonlySet<unknown> = new Set([String, Number, Boolean, Array, Object]);

/**
 * Checks the form of every input: class-validator's constraints on the class that the resolver names. GraphQL has
 * refused unknown fields already, so nothing is stripped, and enums and dates need no decorator to stay.
 */
@Injectable()
export class InputPipe implements PipeTransform {
  async transform(value: unknown, { type, metatype, data }: ArgumentMetadata): Promise<unknown> {
    if (
      type === 'custom' ||
      !metatype ||
      PLAIN.has(metatype) ||
      typeof value !== 'object' ||
      value === null
    ) {
      return value;
    }
    const input = plainToInstance(metatype as Type<object>, value);
    const errors = await validate(input, { forbidUnknownValues: false });
    if (errors.length > 0) throw inputError(errors, data === undefined ? [] : [data]);
    return input;
  }
}
