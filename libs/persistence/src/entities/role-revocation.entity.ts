import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** That a role was taken away again, by whom and why. */
@Entity('role_revocation')
@ForeignKey('role_grant', ['organisationId', 'grantId'], ['organisationId', 'id'], {
  name: 'role_revocation_grant_fkey',
})
export class RoleRevocation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'role_revocation_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'role_revocation_pkey' })
  grantId: string;

  @Column('text')
  reason: string;

  @Column('text')
  revokedBy: string;

  @Column(SET_BY_CLOCK)
  revokedAt: string;
}
