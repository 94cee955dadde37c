import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** That a link, and every device that came in by it, does not hold any more. */
@Entity('device_link_revocation')
@ForeignKey('device_link', ['organisationId', 'linkId'], ['organisationId', 'id'], {
  name: 'device_link_revocation_link_fkey',
})
export class DeviceLinkRevocation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_revocation_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_revocation_pkey' })
  linkId: string;

  @Column('text')
  reason: string;

  @Column('text')
  revokedBy: string;

  @Column(SET_BY_CLOCK)
  revokedAt: string;
}
