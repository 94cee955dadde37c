import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { EventCode, Unit } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A result of an athlete from before, or from elsewhere. Rows are added and never changed. */
@Entity('past_result')
@Index('past_result_by_athlete', ['athleteId', 'organisationId'])
@Unique('past_result_replaced_once', ['organisationId', 'replacesId'])
@Unique('past_result_imported_once', ['importId', 'importLine', 'organisationId'])
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'past_result_athlete_fkey',
})
@ForeignKey('table_import', ['organisationId', 'importId'], ['organisationId', 'id'], {
  name: 'past_result_import_fkey',
})
@ForeignKey('past_result', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'past_result_replaces_fkey',
})
@Check('past_result_mark_range', `mark BETWEEN 1 AND 99999`)
@Check('past_result_wind_form', `wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI)$'`)
@Check('past_result_wind_of_event', `wind IS NULL OR (event IN ('long-jump', 'triple-jump') AND NOT indoor)`)
@Check(
  'past_result_implement_iff_thrown',
  `(event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')) = (implement_grams IS NOT NULL)`,
)
@Check('past_result_date_range', `on_date BETWEEN '1900-01-01' AND '2200-01-01'`)
@Check('past_result_place_range', `place BETWEEN 1 AND 2000`)
@Check('past_result_not_itself', `replaces_id <> id`)
@Check('past_result_taken_back', `counts = (replaces_id IS NULL)`)
@Check('past_result_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('past_result_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
@Check('past_result_line_iff_imported', `(import_id IS NULL) = (import_line IS NULL)`)
@Check('past_result_line_range', `import_line >= 1`)
export class PastResult {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'past_result_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'past_result_pkey' })
  id: string;

  @Column('uuid')
  athleteId: string;

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

  @Column('date')
  onDate: string;

  @Column('text')
  meetName: string;

  @Column('integer', { nullable: true })
  place: number | null;

  @Column('text')
  source: string;

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
