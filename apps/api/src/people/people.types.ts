import type { PersonRow } from '#persistence';
import { Field, ID, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Instant } from '../platform/scalars/instant.js';

@ObjectType({
  description: 'Somebody with an account. Seen by administrators and directors, and by oneself.',
})
export class Person {
  /** Not a field: for resolvers that add to a person. */
  row: PersonRow;

  @Field(() => ID)
  id: string;

  @Field()
  loginName: string;

  @Field()
  displayName: string;

  @Field(() => Instant)
  madeAt: Date;

  @Field({ description: 'Nobody signs in with it any more.' })
  isClosed: boolean;
}

@ObjectType()
export class PersonConnection extends connectionType(Person, 'Person') {}

@ObjectType({ description: 'Lets a person choose a password, once.' })
export class SetupCode {
  @Field({ description: 'Shown now and never again.' })
  code: string;

  @Field(() => Instant)
  expiresAt: Date;
}

@ObjectType()
export class PersonCreatePayload {
  @Field(() => Person, { nullable: true })
  person: Person | null;

  @Field(() => SetupCode, { nullable: true, description: 'Not with a replay: issue another one.' })
  setupCode: SetupCode | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class PersonClosePayload {
  @Field(() => Person, { nullable: true })
  person: Person | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class SetupCodeIssuePayload {
  @Field(() => SetupCode, { nullable: true })
  setupCode: SetupCode | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function personObject(row: PersonRow): Person {
  return {
    row,
    id: globalId('Person', row.id),
    loginName: row.loginName,
    displayName: row.displayName,
    madeAt: new Date(row.madeAt),
    isClosed: row.closedAt !== null,
  };
}
