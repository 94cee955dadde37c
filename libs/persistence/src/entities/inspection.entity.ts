import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { InspectionRow } from '../inspection-rows.js';
import type { Authority } from '../rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** What was found of an implement. Rows are added and never changed: a correction is another row. */
@Entity('inspection')
@Index('inspection_by_meet', ['meetId', 'organisationId'])
@Unique('inspection_in_sequence', ['implementId', 'meetId', 'sequence', 'organisationId'])
@Unique('inspection_replaced_once', ['organisationId', 'replacesId'])
@Unique('inspection_of_one', ['organisationId', 'id', 'implementId', 'meetId', 'kind'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'inspection_meet_fkey' })
@ForeignKey('implement', ['organisationId', 'implementId'], ['organisationId', 'id'], {
  name: 'inspection_implement_fkey',
})
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'inspection_competition_fkey',
})
@ForeignKey('journal_entry', ['attemptId', 'organisationId'], ['entryId', 'organisationId'], {
  name: 'inspection_attempt_fkey',
})
@ForeignKey(
  'inspection',
  ['organisationId', 'replacesId', 'implementId', 'meetId', 'kind'],
  ['organisationId', 'id', 'implementId', 'meetId', 'kind'],
  { name: 'inspection_replaces_fkey' },
)
@Check('inspection_sequence_range', `sequence >= 1`)
@Check('inspection_kind_known', `kind IN ('inspection', 'recheck')`)
@Check('inspection_cause_of_recheck', `(kind = 'recheck') = (cause IS NOT NULL)`)
@Check('inspection_cause_known', `cause IN ('record', 'referee')`)
@Check('inspection_attempt_of_recheck', `attempt_id IS NULL OR kind = 'recheck'`)
@Check('inspection_record_names_attempt', `cause <> 'record' OR attempt_id IS NOT NULL`)
@Check('inspection_grams_range', `grams >= 1 AND grams <= 99999`)
@Check(
  'inspection_mm_shape',
  `jsonb_typeof(mm) = 'object' AND mm - 'diameter' - 'centre plate' - 'head' - 'shaft' - 'length' = '{}'`,
)
@Check(
  'inspection_mm_range',
  `NOT jsonb_path_exists(mm, '$.* ? (@.type() != "number" || @ < 1 || @ > 99999 || @.floor() != @)')`,
)
@Check('inspection_outcome_known', `outcome IN ('passed', 'failed', 'incomplete')`)
@Check('inspection_passed_weighed', `outcome <> 'passed' OR grams IS NOT NULL`)
@Check('inspection_findings_shape', `jsonb_typeof(findings) = 'array'`)
@Check('inspection_note_given', `btrim(note) <> '' AND length(note) <= 1000`)
@Check('inspection_not_itself', `replaces_id <> id`)
@Check('inspection_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('inspection_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
export class Inspection {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'inspection_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'inspection_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('uuid')
  implementId: string;

  @Column('integer')
  sequence: number;

  @Column('text')
  kind: InspectionRow['kind'];

  @Column('text', { nullable: true })
  cause: InspectionRow['cause'];

  @Column('uuid', { nullable: true })
  competitionId: string | null;

  @Column('uuid', { nullable: true })
  attemptId: string | null;

  @Column('integer', { nullable: true })
  grams: number | null;

  @Column('jsonb')
  mm: InspectionRow['mm'];

  @Column('text')
  outcome: InspectionRow['outcome'];

  @Column('jsonb')
  findings: InspectionRow['findings'];

  @Column('boolean')
  keptBack: boolean;

  @Column('text', { nullable: true })
  note: string | null;

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  authority: Authority;

  @Column('text')
  inspectedBy: string;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  inspectedAt: string;
}
