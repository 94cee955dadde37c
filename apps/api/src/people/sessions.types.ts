import { Field, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Instant } from '../platform/scalars/instant.js';
import { Person } from './people.types.js';

@ObjectType({ description: 'What a person who signed in works with.' })
export class SignedIn {
  @Field({ description: 'Send it as "Authorization: Bearer …".' })
  accessToken: string;

  @Field(() => Instant)
  accessExpiresAt: Date;

  @Field({ description: 'For one sessionRefresh. One that comes back a second time ends the session.' })
  refreshToken: string;

  @Field(() => Instant)
  refreshExpiresAt: Date;

  @Field(() => Person)
  person: Person;
}

/** What every way of proving who one is answers. */
@ObjectType({ isAbstract: true })
export abstract class SignedInPayload {
  @Field(() => SignedIn, { nullable: true })
  session: SignedIn | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class SignInPayload extends SignedInPayload {}
@ObjectType()
export class SessionRefreshPayload extends SignedInPayload {}
@ObjectType()
export class PasswordSetUpPayload extends SignedInPayload {}

@ObjectType()
export class PasswordChangePayload {
  @Field({ description: 'All other sessions of the person have ended.' })
  isChanged: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class SignOutPayload {
  @Field({ description: 'Neither the token nor the session holds from now on.' })
  isSignedOut: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
