import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';

/** Somebody in a combined event. `listedName` and `listedClub` serve where no athlete or club is kept. */
@Entity('combined_entrant')
@Unique('combined_entrant_bib_unique', ['combinedEventId', 'bib', 'organisationId'])
@Unique('combined_entrant_position_unique', ['combinedEventId', 'position', 'organisationId'])
@Unique('combined_entrant_athlete_unique', ['combinedEventId', 'athleteId', 'organisationId'])
@Index('combined_entrant_by_athlete', ['athleteId', 'organisationId'])
@Index('combined_entrant_by_club', ['clubId', 'organisationId'])
@ForeignKey('combined_event', ['organisationId', 'combinedEventId'], ['organisationId', 'id'], {
  name: 'combined_entrant_event_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'combined_entrant_athlete_fkey',
})
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], {
  name: 'combined_entrant_club_fkey',
})
@Check('combined_entrant_one_name', `athlete_id IS NULL OR listed_name IS NULL`)
@Check('combined_entrant_one_club', `club_id IS NULL OR listed_club IS NULL`)
@Check('combined_entrant_listed_name_length', `length(listed_name) BETWEEN 1 AND 200`)
@Check('combined_entrant_listed_club_length', `length(listed_club) BETWEEN 1 AND 200`)
@Check('combined_entrant_position_range', `position >= 1`)
export class CombinedEntrant {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_entrant_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_entrant_pkey' })
  id: string;

  @Column('uuid')
  combinedEventId: string;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column('text', { nullable: true })
  listedName: string | null;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('text', { nullable: true })
  listedClub: string | null;

  @Column('text')
  bib: string;

  @Column('integer')
  position: number;

  @Column('boolean', { default: false })
  guest: boolean;
}
