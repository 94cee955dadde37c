import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { MeetScoringRow } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** How a meet is scored for its clubs. Rows are added and never changed: the newest revision counts. */
@Entity('meet_scoring')
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'meet_scoring_meet_fkey',
})
@Check('meet_scoring_revision_range', `revision >= 1`)
@Check(
  'meet_scoring_preset_known',
  `preset IN ('dual', 'triangular', 'quadrangular', 'six-places', 'eight-places', 'by-teams')`,
)
@Check('meet_scoring_preset_or_places', `(preset IS NULL) <> (places IS NULL)`)
@Check(
  'meet_scoring_places_shape',
  `places IS NULL OR (jsonb_typeof(places -> 'individual') = 'array' AND jsonb_typeof(places -> 'relay') = 'array') IS TRUE`,
)
@Check('meet_scoring_teams_range', `teams >= 1 AND teams <= 100`)
@Check('meet_scoring_scorers_range', `scorers_per_club >= 1`)
@Check('meet_scoring_relays_range', `relays_per_club >= 1`)
@Check('meet_scoring_non_scorers_known', `non_scorers IN ('out', 'hold')`)
@Check('meet_scoring_club_ties_known', `club_ties IN ('places', 'shared')`)
@Check('meet_scoring_divisions_shape', `jsonb_typeof(divisions) = 'array'`)
export class MeetScoring {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'meet_scoring_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'meet_scoring_pkey' })
  meetId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'meet_scoring_pkey' })
  revision: number;

  @Column('text', { nullable: true })
  preset: MeetScoringRow['preset'];

  @Column('jsonb', { nullable: true })
  places: MeetScoringRow['places'];

  @Column('integer', { nullable: true })
  teams: number | null;

  @Column('integer', { nullable: true })
  scorersPerClub: number | null;

  @Column('integer', { nullable: true })
  relaysPerClub: number | null;

  @Column('text')
  nonScorers: MeetScoringRow['nonScorers'];

  @Column('text')
  clubTies: MeetScoringRow['clubTies'];

  @Column('jsonb')
  divisions: MeetScoringRow['divisions'];

  @Column('text')
  setBy: string;

  @Column(SET_BY_CLOCK)
  setAt: string;
}
