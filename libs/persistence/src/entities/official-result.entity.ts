import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/**
 * A signed-off result, archived as the sheet and what was counted from it, up to journal entry `sequence`. Signing
 * again after a reopening adds a revision. Competitors are named by id and bib, never by name.
 */
@Entity('official_result')
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'official_result_competition_fkey',
})
@Check('official_result_revision_range', `revision >= 1`)
@Check('official_result_sequence_range', `sequence >= 0`)
@Check('official_result_two_persons', `confirmed_by <> signed_by`)
@Check('official_result_sheet_shape', `jsonb_typeof(sheet) = 'object'`)
@Check('official_result_result_shape', `jsonb_typeof(result) = 'object'`)
@Check(
  'official_result_without_names',
  `NOT jsonb_path_exists(sheet, '$.**.name') AND NOT jsonb_path_exists(result, '$.**.name')`,
)
export class OfficialResult {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'official_result_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'official_result_pkey' })
  competitionId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'official_result_pkey' })
  revision: number;

  @Column('integer')
  sequence: number;

  @Column('jsonb')
  sheet: object;

  @Column('jsonb')
  result: object;

  @Column('text')
  signedBy: string;

  @Column('text', { nullable: true })
  confirmedBy: string | null;

  @Column(SET_BY_CLOCK)
  signedAt: string;
}
