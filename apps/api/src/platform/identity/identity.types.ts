import { Field, ID, ObjectType } from '@nestjs/graphql';
import { UserError } from '../errors/user-error.types.js';
import { globalId, type ObjectKind } from '../inputs/global-id.js';
import { enumOf } from '../inputs/enums.js';
import { Instant } from '../scalars/instant.js';
import { Uuid } from '../scalars/uuid.js';
import { ROLES, type Grant as GrantClaim, type Role } from './grant.js';
import type { Identity } from './identity.js';

export const RoleEnum = enumOf(
  'Role',
  ROLES,
  'ADMIN: the installation. DIRECTOR, REFEREE: a meet. OFFICIAL: a competition or calling group. COACH, ATHLETE, GUARDIAN: an athlete; for people with an account only.',
);

@ObjectType({ description: 'One role for one object, while its window is open.' })
export class Grant {
  @Field(() => RoleEnum)
  role: Role;

  @Field(() => ID, {
    nullable: true,
    description: 'The meet, competition, calling group or athlete; null for an administrator.',
  })
  on: string | null;

  @Field({ description: 'Of a device at the wind gauge: it gives winds and nothing else.' })
  isWindsOnly: boolean;

  @Field(() => Instant, { nullable: true })
  from: Date | null;

  @Field(() => Instant, { nullable: true })
  until: Date | null;
}

@ObjectType('Viewer', { description: 'Who is asking, as far as the token says.' })
export class ViewerInfo {
  @Field(() => String, { nullable: true, description: 'What the token or the device is called.' })
  label: string | null;

  @Field(() => ID, {
    nullable: true,
    description: 'Of whoever signed in; null with a token of a post or a device.',
  })
  personId: string | null;

  @Field(() => String, { nullable: true, description: 'The same person’s name.' })
  displayName: string | null;

  @Field(() => [Grant])
  grants: Grant[];
}

@ObjectType()
export class TokenIssuePayload {
  @Field(() => String, {
    nullable: true,
    description: 'Send it as "Authorization: Bearer …". It is not kept here.',
  })
  token: string | null;

  @Field(() => Uuid, {
    nullable: true,
    description: 'Under which it can be revoked; the journal keeps it as "who".',
  })
  tokenId: string | null;

  @Field(() => Grant, { nullable: true })
  grant: Grant | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function grantOf({ role, on, scope, only, from, until }: GrantClaim): Grant {
  return {
    role,
    on: on === null ? null : globalId(kindOf(role, scope), on),
    isWindsOnly: only === 'winds',
    from: from === null ? null : new Date(from * 1000),
    until: until === null ? null : new Date(until * 1000),
  };
}

function kindOf(role: Role, scope: GrantClaim['scope']): ObjectKind {
  if (role === 'official') return scope === undefined ? 'Competition' : 'CallingGroup';
  return role === 'director' || role === 'referee' ? 'Meet' : 'Athlete';
}

export function viewerOf(identity: Identity): ViewerInfo {
  const { label, account } = identity;
  return {
    label,
    personId: account && globalId('Person', account.personId),
    displayName: account?.displayName ?? null,
    grants: identity.open().map(grantOf),
  };
}

@ObjectType()
export class TokenRevokePayload {
  @Field({ description: 'The token does not hold from now on.' })
  isRevoked: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
