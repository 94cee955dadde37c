import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { EntryChangeRow } from '../entry-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** Who came to a start list and who went. Rows are added and never changed; no name stands in them. */
@Entity('entry_change')
@Index('entry_change_by_competition', ['competitionId', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'entry_change_competition_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'entry_change_athlete_fkey',
})
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], {
  name: 'entry_change_club_fkey',
})
@Check('entry_change_kind_known', `kind IN ('entered', 'withdrawn')`)
@Check('entry_change_late_has_reason', `NOT is_late OR reason IS NOT NULL`)
@Check('entry_change_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
export class EntryChange {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entry_change_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entry_change_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('uuid')
  competitorId: string;

  @Column('text')
  kind: EntryChangeRow['kind'];

  @Column('text')
  bib: string;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('boolean')
  isLate: boolean;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  madeAt: string;
}
