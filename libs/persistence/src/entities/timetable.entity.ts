import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { TimetableRow } from '../timetable-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** When and where the competitions of a meet take place. Rows are added and never changed: the newest revision counts. */
@Entity('timetable')
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'timetable_meet_fkey' })
@Check('timetable_revision_range', `revision >= 1`)
@Check('timetable_facilities_shape', `jsonb_typeof(facilities) = 'array'`)
@Check('timetable_shared_grounds_shape', `jsonb_typeof(shared_grounds) = 'array'`)
@Check('timetable_slots_shape', `jsonb_typeof(slots) = 'array'`)
@Check('timetable_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
export class Timetable {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'timetable_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'timetable_pkey' })
  meetId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'timetable_pkey' })
  revision: number;

  @Column('jsonb')
  facilities: TimetableRow['facilities'];

  @Column('jsonb')
  sharedGrounds: TimetableRow['sharedGrounds'];

  @Column('jsonb')
  slots: TimetableRow['slots'];

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  setBy: string;

  @Column(SET_BY_CLOCK)
  setAt: string;
}
