import { Field, ID, ObjectType } from '@nestjs/graphql';
import { UserError } from '../errors/user-error.types.js';
import { globalId } from '../inputs/global-id.js';
import { enumOf } from '../inputs/enums.js';
import { Instant } from '../scalars/instant.js';
import { ROLES, type Grant as GrantClaim, type Role } from './grant.js';
import type { Identity } from './identity.js';

export const RoleEnum = enumOf('Role', ROLES, 'What a token lets its holder do.');

@ObjectType({ description: 'One role for one object, while its window is open.' })
export class Grant {
  @Field(() => RoleEnum)
  role: Role;

  @Field(() => ID, {
    nullable: true,
    description: 'The meet, competition or calling group; null for an administrator.',
  })
  on: string | null;

  @Field(() => Instant, { nullable: true })
  from: Date | null;

  @Field(() => Instant, { nullable: true })
  until: Date | null;
}

@ObjectType('Viewer', { description: 'Who is asking, as far as the token says.' })
export class ViewerInfo {
  @Field(() => String, { nullable: true, description: 'What the token is called; null without one.' })
  label: string | null;

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

  @Field(() => Grant, { nullable: true })
  grant: Grant | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function grantOf({ role, on, scope, from, until }: GrantClaim): Grant {
  const kind = role !== 'official' ? 'Meet' : scope === undefined ? 'Competition' : 'CallingGroup';
  return {
    role,
    on: on === null ? null : globalId(kind, on),
    from: from === null ? null : new Date(from * 1000),
    until: until === null ? null : new Date(until * 1000),
  };
}

export function viewerOf(identity: Identity): ViewerInfo {
  return { label: identity.label, grants: identity.open().map(grantOf) };
}
