import { isDrawSeed } from '#rules';
import { applyDecorators } from '@nestjs/common';
import { Field } from '@nestjs/graphql';
import { ValidateBy } from 'class-validator';
import { Text } from './text.js';

/** The seed of a draw as an input field. */
export function DrawSeed(): PropertyDecorator {
  return applyDecorators(
    Field({
      description:
        'From which anybody can draw again: 1 to 200 printable ASCII characters. Say before the entries close where it will come from, and add competition and stage: a seed that somebody could choose afterwards makes no fair draw.',
    }),
    Text(1, 200),
    ValidateBy({
      name: 'isDrawSeed',
      validator: {
        validate: (value) => typeof value === 'string' && isDrawSeed(value),
        defaultMessage: (args) => `${args?.property ?? 'seed'} must be printable ASCII`,
      },
    }),
  );
}
