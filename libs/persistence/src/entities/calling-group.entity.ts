import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { CallingGroupRow } from '../rows.js';
import { OPTIONAL_INSTANT } from './instant.js';

/** Who is called in one order at one circle or runway. Its competitions name it, each with its position. */
@Entity('calling_group')
@Unique('calling_group_of_meet', ['meetId', 'id', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'calling_group_meet_fkey',
})
@Check('calling_group_facility_length', `length(facility) <= 120 AND btrim(facility) <> ''`)
@Check('calling_group_warm_up_range', `warm_up_minutes >= 0 AND warm_up_minutes <= 240`)
@Check('calling_group_start_order_shape', `start_order IS NULL OR jsonb_typeof(start_order) = 'array'`)
@Check('calling_group_version_range', `version >= 0`)
export class CallingGroup {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'calling_group_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'calling_group_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('text', { nullable: true })
  facility: string | null;

  @Column(OPTIONAL_INSTANT)
  startsAt: string | null;

  @Column('integer', { nullable: true })
  warmUpMinutes: number | null;

  @Column('jsonb', { nullable: true })
  startOrder: CallingGroupRow['startOrder'];

  @Column('integer', { default: 0 })
  version: number;
}
