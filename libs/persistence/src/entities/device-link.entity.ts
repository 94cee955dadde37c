import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** A link that makes a device the official's one for a competition or a calling group, for a while. */
@Entity('device_link')
@Index('device_link_by_meet', ['meetId', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'device_link_meet_fkey' })
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'device_link_competition_fkey',
})
@ForeignKey('calling_group', ['organisationId', 'callingGroupId'], ['organisationId', 'id'], {
  name: 'device_link_calling_group_fkey',
})
@Check('device_link_one_object', `num_nonnulls(competition_id, calling_group_id) = 1`)
@Check('device_link_window_in_order', `starts_at < ends_at`)
@Check('device_link_devices_range', `devices >= 1 AND devices <= 50`)
export class DeviceLink {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'device_link_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('uuid', { nullable: true })
  competitionId: string | null;

  @Column('uuid', { nullable: true })
  callingGroupId: string | null;

  @Column('text')
  label: string;

  @Column('timestamptz')
  startsAt: string;

  @Column('timestamptz')
  endsAt: string;

  @Column('integer')
  devices: number;

  @Column('boolean', { default: false })
  isWindsOnly: boolean;

  @Column('text')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  madeAt: string;
}
