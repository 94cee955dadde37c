import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { EntryTermsRow } from '../entry-rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** Who may be entered at a meet until when. Rows are added and never changed: the newest revision counts. */
@Entity('entry_terms')
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'entry_terms_meet_fkey' })
@Check('entry_terms_revision_range', `revision >= 1`)
@Check('entry_terms_per_club_range', `most_per_club BETWEEN 1 AND 2000`)
@Check('entry_terms_per_athlete_range', `most_per_athlete BETWEEN 1 AND 100`)
@Check('entry_terms_limits_shape', `jsonb_typeof(competition_limits) = 'array'`)
export class EntryTerms {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entry_terms_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entry_terms_pkey' })
  meetId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'entry_terms_pkey' })
  revision: number;

  @Column(OPTIONAL_INSTANT)
  closesAt: string | null;

  @Column('integer', { nullable: true })
  mostPerClub: number | null;

  @Column('integer', { nullable: true })
  mostPerAthlete: number | null;

  @Column('jsonb')
  competitionLimits: EntryTermsRow['competitionLimits'];

  @Column('text')
  setBy: string;

  @Column(SET_BY_CLOCK)
  setAt: string;
}
