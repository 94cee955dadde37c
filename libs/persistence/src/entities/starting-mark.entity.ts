import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { EventCode, Sex, Unit } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A mark from before, or from elsewhere, with which lists begin. Rows are added and never changed. */
@Entity('starting_mark')
@Index('starting_mark_by_club', ['clubId', 'organisationId'])
@Index('starting_mark_by_meet', ['meetId', 'organisationId'])
@Index('starting_mark_by_athlete', ['athleteId', 'organisationId'])
@Unique('starting_mark_replaced_once', ['organisationId', 'replacesId'])
@Unique('starting_mark_imported_once', ['importId', 'importLine', 'organisationId'])
@ForeignKey('club', ['organisationId', 'clubId'], ['organisationId', 'id'], {
  name: 'starting_mark_club_fkey',
})
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'starting_mark_meet_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'starting_mark_athlete_fkey',
})
@ForeignKey('starting_mark', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'starting_mark_replaces_fkey',
})
@Check('starting_mark_in_a_list', `num_nonnulls(club_id, meet_id, athlete_id) >= 1`)
@Check('starting_mark_mark_range', `mark BETWEEN 1 AND 99999`)
@Check('starting_mark_wind_form', `wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI)$'`)
@Check(
  'starting_mark_wind_of_event',
  `wind IS NULL OR (event IN ('long-jump', 'triple-jump') AND NOT indoor)`,
)
@Check(
  'starting_mark_implement_iff_thrown',
  `(event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')) = (implement_grams IS NOT NULL)`,
)
@Check('starting_mark_date_range', `on_date BETWEEN '1900-01-01' AND '2200-01-01'`)
@Check('starting_mark_not_itself', `replaces_id <> id`)
@Check('starting_mark_taken_back', `counts OR replaces_id IS NOT NULL`)
@Check('starting_mark_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('starting_mark_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
@Check('starting_mark_line_iff_imported', `(import_id IS NULL) = (import_line IS NULL)`)
@Check('starting_mark_line_range', `import_line >= 1`)
export class StartingMark {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'starting_mark_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'starting_mark_pkey' })
  id: string;

  @Column('uuid', { nullable: true })
  clubId: string | null;

  @Column('uuid', { nullable: true })
  meetId: string | null;

  @Column('uuid', { nullable: true })
  athleteId: string | null;

  @Column('text')
  event: EventCode;

  @Column('text')
  unit: Unit;

  @Column('integer')
  mark: number;

  @Column('text', { nullable: true })
  wind: string | null;

  @Column('boolean')
  indoor: boolean;

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('text')
  sex: Sex;

  @Column('text')
  age: string;

  @Column('date')
  onDate: string;

  @Column('text', { nullable: true })
  place: string | null;

  @Column('boolean')
  counts: boolean;

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('uuid', { nullable: true })
  importId: string | null;

  @Column('integer', { nullable: true })
  importLine: number | null;

  @Column('text')
  enteredBy: string;

  @Column(SET_BY_CLOCK)
  enteredAt: string;
}
