import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { WrittenResult } from '../rows.js';

/** One line of a start list. `listedName` and `listedClub` serve where no athlete or club is kept. */
@Entity('competitor')
@Unique('competitor_bib_unique', ['competitionId', 'bib', 'organisationId'], {
  deferrable: 'INITIALLY DEFERRED',
})
@Unique('competitor_position_unique', ['competitionId', 'position', 'organisationId'], {
  deferrable: 'INITIALLY DEFERRED',
})
@Unique('competitor_athlete_unique', ['competitionId', 'athleteId', 'organisationId'])
@Index('competitor_by_athlete', ['athleteId', 'organisationId'])
@Index('competitor_by_club', ['clubId', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'competitor_competition_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'competitor_athlete_fkey',
})
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], { name: 'competitor_club_fkey' })
@Check('competitor_one_name', `athlete_id IS NULL OR listed_name IS NULL`)
@Check('competitor_one_club', `club_id IS NULL OR listed_club IS NULL`)
@Check('competitor_listed_name_length', `length(listed_name) BETWEEN 1 AND 200`)
@Check('competitor_listed_club_length', `length(listed_club) BETWEEN 1 AND 200`)
@Check('competitor_position_range', `position >= 1`)
@Check('competitor_unmatched_is_nobody', `NOT is_unmatched OR athlete_id IS NULL`)
@Check('competitor_seed_mark_range', `seed_mark BETWEEN 1 AND 99999`)
@Check(
  'competitor_written_shape',
  `jsonb_typeof(written) = 'object' AND written - 'place' - 'mark' = '{}' AND length(written::text) <= 200`,
)
export class Competitor {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competitor_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competitor_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column('text', { nullable: true })
  listedName: string | null;

  @Column('text', { nullable: true })
  listedClub: string | null;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('text')
  bib: string;

  @Column('integer')
  position: number;

  @Column('text', { nullable: true })
  flight: string | null;

  @Column('boolean', { default: false })
  guest: boolean;

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('jsonb', { nullable: true })
  written: WrittenResult | null;

  @Column('integer', { nullable: true })
  seedMark: number | null;

  @Column('boolean', { default: false })
  isUnmatched: boolean;
}
