import { applyDecorators } from '@nestjs/common';
import { Field, ID, Int } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayMinSize, IsInt, IsOptional, Min } from 'class-validator';
import { ObjectId } from './object-id.js';
import { Text } from './text.js';

/* Fields that many entries have, with what is demanded of them. */

/** The ground of a change or a decision. */
export function Reason(): PropertyDecorator {
  return applyDecorators(
    Field(() => String, { description: 'Why, for the journal.' }),
    Text(1, 500),
  );
}

/** What the sender had seen: if the competition has moved on since, nothing is done. */
export function ExpectedVersion(
  description = 'The version of the competition that it was decided on.',
): PropertyDecorator {
  return applyDecorators(
    Field(() => Int, { description }),
    IsInt(),
    Min(0),
  );
}

/** The referee's ground for signing all the same. */
export function Despite(): PropertyDecorator {
  return applyDecorators(
    Field(() => String, {
      nullable: true,
      description:
        'Why it is signed while a protest is open or the time for protests runs: the referee’s ground, for the journal. Where two persons sign, the second gives it.',
    }),
    IsOptional(),
    Text(1, 500),
  );
}

/** Competitors in the order in which they are called. */
export function CalledFirst(): PropertyDecorator {
  return applyDecorators(
    Field(() => [ID], { description: 'Who is called first, in this order.' }),
    ObjectId('Competitor', { each: true }),
    ArrayMinSize(1),
    ArrayMaxSize(2000),
  );
}
