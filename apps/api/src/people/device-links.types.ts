import type { DeviceLinkState } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Grant } from '../platform/identity/identity.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'Lets devices record at one competition or calling group for a while.' })
export class DeviceLink {
  /** Not a field: for resolvers that add to a link. */
  row: DeviceLinkState;

  @Field(() => Uuid)
  id: string;

  @Field(() => ID, { description: 'The competition or calling group.' })
  on: string;

  @Field()
  label: string;

  @Field(() => Instant)
  from: Date;

  @Field(() => Instant)
  until: Date;

  @Field(() => Int, { description: 'How many devices may come in by it.' })
  devices: number;

  @Field({ description: 'Its devices give winds and nothing else.' })
  isWindsOnly: boolean;

  @Field(() => Int, { description: 'How many have.' })
  used: number;

  @Field({ description: 'Who made it: the id of a person or of a token.' })
  madeBy: string;

  @Field(() => Instant)
  madeAt: Date;

  @Field(() => String, { nullable: true, description: 'Who revoked it.' })
  revokedBy: string | null;

  @Field(() => Instant, { nullable: true })
  revokedAt: Date | null;

  @Field(() => String, { nullable: true, description: 'Why it was revoked.' })
  revokedBecause: string | null;

  @Field({
    description: 'Opens the desk on a device. The secret is behind the #, which browsers send to no server.',
  })
  url: string;
}

@ObjectType()
export class DeviceLinkCreatePayload {
  @Field(() => DeviceLink, { nullable: true })
  link: DeviceLink | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class DeviceLinkRevokePayload {
  @Field(() => DeviceLink, { nullable: true })
  link: DeviceLink | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class DeviceLinkExchangePayload {
  @Field(() => String, { nullable: true, description: 'Send it as "Authorization: Bearer …".' })
  token: string | null;

  @Field(() => Grant, { nullable: true })
  grant: Grant | null;

  @Field(() => String, { nullable: true, description: 'What the device is called in the journal.' })
  label: string | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

/** `url`: as whoever asks reaches this server. */
export function deviceLinkObject(row: DeviceLinkState, url: string): DeviceLink {
  const { competitionId, callingGroupId } = row;
  return {
    ...{ row, id: row.id, label: row.label, devices: row.devices, used: row.used, url },
    isWindsOnly: row.isWindsOnly,
    on:
      competitionId === null
        ? globalId('CallingGroup', callingGroupId!)
        : globalId('Competition', competitionId),
    from: new Date(row.startsAt),
    until: new Date(row.endsAt),
    ...{ madeBy: row.madeBy, madeAt: new Date(row.madeAt), revokedBy: row.revokedBy },
    revokedAt: row.revokedAt === null ? null : new Date(row.revokedAt),
    revokedBecause: row.revokedBecause,
  };
}
