import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** That a token of a post or a device does not hold any more. */
@Entity('token_revocation')
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'token_revocation_organisation_fkey' })
export class TokenRevocation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'token_revocation_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'token_revocation_pkey' })
  tokenId: string;

  @Column('text')
  reason: string;

  @Column('text')
  revokedBy: string;

  @Column(SET_BY_CLOCK)
  revokedAt: string;
}
