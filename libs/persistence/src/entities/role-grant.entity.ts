import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { AccessRole } from '../access-rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** A role that a person was given for one object. Rows are added and never changed. */
@Entity('role_grant')
@Index('role_grant_by_person', ['personId', 'organisationId'])
@ForeignKey('person', ['organisationId', 'personId'], ['organisationId', 'id'], {
  name: 'role_grant_person_fkey',
})
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'role_grant_meet_fkey' })
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'role_grant_competition_fkey',
})
@ForeignKey('calling_group', ['organisationId', 'callingGroupId'], ['organisationId', 'id'], {
  name: 'role_grant_calling_group_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'role_grant_athlete_fkey',
})
@Check('role_grant_window_in_order', `starts_at < ends_at`)
@Check(
  'role_grant_object_of_role',
  `CASE
      WHEN role = 'admin' THEN num_nonnulls(meet_id, competition_id, calling_group_id, athlete_id) = 0
      WHEN role IN ('director', 'referee') THEN meet_id IS NOT NULL AND num_nonnulls(competition_id, calling_group_id, athlete_id) = 0
      WHEN role = 'official' THEN num_nonnulls(competition_id, calling_group_id) = 1 AND num_nonnulls(meet_id, athlete_id) = 0
      ELSE athlete_id IS NOT NULL AND num_nonnulls(meet_id, competition_id, calling_group_id) = 0 END`,
)
export class RoleGrant {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'role_grant_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'role_grant_pkey' })
  id: string;

  @Column('uuid')
  personId: string;

  @Column('text')
  role: AccessRole;

  @Column('uuid', { nullable: true })
  meetId: string | null;

  @Column('uuid', { nullable: true })
  competitionId: string | null;

  @Column('uuid', { nullable: true })
  callingGroupId: string | null;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column(OPTIONAL_INSTANT)
  startsAt: string | null;

  @Column(OPTIONAL_INSTANT)
  endsAt: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  givenBy: string;

  @Column(SET_BY_CLOCK)
  givenAt: string;
}
