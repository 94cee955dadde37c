import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { Authority, EnteredLine, Sex } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A result that was entered and not counted here. Rows are added and never changed: a correction is another row. */
@Entity('entered_result')
@Index('entered_result_by_meet', ['organisationId', 'meetId'])
@Unique('entered_result_replaced_once', ['organisationId', 'replacesId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'entered_result_meet_fkey',
})
@ForeignKey('entered_result', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'entered_result_replaces_fkey',
})
@Check('entered_result_not_itself', `replaces_id <> id`)
@Check('entered_result_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('entered_result_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
@Check('entered_result_lines_shape', `jsonb_typeof(lines) = 'array'`)
@Check('entered_result_without_names', `NOT jsonb_path_exists(lines, '$.**.name')`)
export class EnteredResult {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entered_result_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'entered_result_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('boolean')
  isRelay: boolean;

  @Column('text', { nullable: true })
  categorySex: Sex | null;

  @Column('text', { nullable: true })
  categoryAge: string | null;

  @Column('jsonb')
  lines: readonly EnteredLine[];

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  authority: Authority;

  @Column('text')
  enteredBy: string;

  @Column(SET_BY_CLOCK)
  enteredAt: string;
}
