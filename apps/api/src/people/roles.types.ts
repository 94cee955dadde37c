import type { RoleRow } from '#persistence';
import { Field, ID, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { grantOfRow } from '../platform/identity/access-memory.js';
import { isOpen, type Role } from '../platform/identity/grant.js';
import { grantOf, RoleEnum } from '../platform/identity/identity.types.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'A role that a person was given for one object, with what became of it.' })
export class RoleGrant {
  /** Not a field: for resolvers that add to a grant. */
  row: RoleRow;

  @Field(() => Uuid)
  id: string;

  @Field(() => RoleEnum)
  role: Role;

  @Field(() => ID, {
    nullable: true,
    description: 'The meet, competition, calling group or athlete; null for an administrator.',
  })
  on: string | null;

  @Field(() => Instant, { nullable: true })
  from: Date | null;

  @Field(() => Instant, { nullable: true })
  until: Date | null;

  @Field({ description: 'It holds at this moment.' })
  isOpen: boolean;

  @Field(() => String, { nullable: true, description: 'Why it was given.' })
  reason: string | null;

  @Field({ description: 'Who gave it: the id of a person or of a token.' })
  givenBy: string;

  @Field(() => Instant)
  givenAt: Date;

  @Field(() => String, { nullable: true, description: 'Who took it away.' })
  revokedBy: string | null;

  @Field(() => Instant, { nullable: true })
  revokedAt: Date | null;

  @Field(() => String, { nullable: true, description: 'Why it was taken away.' })
  revokedBecause: string | null;
}

@ObjectType()
export class RoleGrantPayload {
  @Field(() => RoleGrant, { nullable: true })
  grant: RoleGrant | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class RoleRevokePayload {
  @Field(() => RoleGrant, { nullable: true })
  grant: RoleGrant | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function roleGrantObject(row: RoleRow): RoleGrant {
  const claim = grantOfRow(row);
  const { role, on, from, until } = grantOf(claim);
  return {
    ...{ row, id: row.id, role, on, from, until },
    isOpen: row.revokedAt === null && isOpen(claim, Date.now() / 1000),
    ...{ reason: row.reason, givenBy: row.givenBy, givenAt: new Date(row.givenAt) },
    revokedBy: row.revokedBy,
    revokedAt: row.revokedAt === null ? null : new Date(row.revokedAt),
    revokedBecause: row.revokedBecause,
  };
}
