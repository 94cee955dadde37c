import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { CrewRow } from '../timetable-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** Who works at a competition. Rows are added and never changed: the newest revision counts. */
@Entity('crew')
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'crew_competition_fkey',
})
@Check('crew_revision_range', `revision >= 1`)
@Check('crew_members_shape', `jsonb_typeof(members) = 'array'`)
export class Crew {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'crew_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'crew_pkey' })
  competitionId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'crew_pkey' })
  revision: number;

  @Column('jsonb')
  members: CrewRow['members'];

  @Column('text')
  setBy: string;

  @Column(SET_BY_CLOCK)
  setAt: string;
}
