import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** A signed-off combined event: its sheet, where the format has its programme, and what was counted. Without names. */
@Entity('combined_official_result')
@ForeignKey('combined_event', ['organisationId', 'combinedEventId'], ['organisationId', 'id'], {
  name: 'combined_official_result_event_fkey',
})
@Check('combined_official_result_two_persons', `confirmed_by <> signed_by`)
@Check('combined_official_result_revision_range', `revision >= 1`)
@Check('combined_official_result_sequence_range', `sequence >= 0`)
@Check('combined_official_result_sheet_shape', `jsonb_typeof(sheet) = 'object'`)
@Check('combined_official_result_result_shape', `jsonb_typeof(result) = 'object'`)
@Check(
  'combined_official_result_without_names',
  `NOT jsonb_path_exists(coalesce(sheet, '{}'), '$.**.name') AND NOT jsonb_path_exists(result, '$.**.name')`,
)
export class CombinedOfficialResult {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_official_result_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_official_result_pkey' })
  combinedEventId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'combined_official_result_pkey' })
  revision: number;

  @Column('integer')
  sequence: number;

  @Column('jsonb', { nullable: true })
  sheet: object | null;

  @Column('jsonb')
  result: object;

  @Column('text')
  signedBy: string;

  @Column('text', { nullable: true })
  confirmedBy: string | null;

  @Column(SET_BY_CLOCK)
  signedAt: string;
}
