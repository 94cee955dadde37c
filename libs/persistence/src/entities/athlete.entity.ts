import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { OPTIONAL_INSTANT } from './instant.js';
import type { Handedness, NameDisplay, Sex } from '../rows.js';

@Entity('athlete')
@Index('athlete_by_name', ['organisationId', 'familyName', 'givenName', 'id'])
@Index('athlete_by_club', ['clubId', 'organisationId'])
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'athlete_organisation_fkey' })
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], { name: 'athlete_club_fkey' })
@Check('athlete_birth_date_range', `birth_date BETWEEN '1900-01-01' AND '2200-01-01'`)
@Check('athlete_handedness_known', `handedness IN ('left', 'right')`)
@Check(
  'athlete_erased_is_nobody',
  `erased_at IS NULL OR (birth_date IS NULL AND handedness IS NULL AND display = 'bib') IS TRUE`,
)
export class Athlete {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'athlete_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'athlete_pkey' })
  id: string;

  @Column('text')
  givenName: string;

  @Column('text')
  familyName: string;

  @Column('text')
  sex: Sex;

  @Column('date', { nullable: true })
  birthDate: string | null;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('text', { nullable: true })
  display: NameDisplay | null;

  @Column('text', { nullable: true })
  handedness: Handedness | null;

  @Column(OPTIONAL_INSTANT)
  erasedAt: string | null;
}
