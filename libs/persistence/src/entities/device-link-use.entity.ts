import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** A device that came in by a link; numbered, so that there are no more than the link allows. */
@Entity('device_link_use')
@Unique('device_link_use_once_a_device', ['deviceId', 'linkId', 'organisationId'])
@ForeignKey('device_link', ['organisationId', 'linkId'], ['organisationId', 'id'], {
  name: 'device_link_use_link_fkey',
})
@Check('device_link_use_number_range', `number >= 1 AND number <= 50`)
export class DeviceLinkUse {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_use_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_use_pkey' })
  linkId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'device_link_use_pkey' })
  number: number;

  @Column('uuid')
  deviceId: string;

  @Column(SET_BY_CLOCK)
  usedAt: string;
}
