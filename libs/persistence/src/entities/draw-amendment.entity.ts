import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { DrawAmendmentRow } from '../draw-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** What became of a drawn start list afterwards. Rows are added and never changed. */
@Entity('draw_amendment')
@ForeignKey('draw', ['organisationId', 'drawId'], ['organisationId', 'id'], {
  name: 'draw_amendment_draw_fkey',
})
@Check('draw_amendment_number_range', `number >= 1`)
@Check('draw_amendment_kind_known', `kind IN ('entered late', 'withdrawn', 'set by hand')`)
@Check('draw_amendment_lines_shape', `jsonb_typeof(lines) = 'array'`)
@Check('draw_amendment_without_names', `NOT jsonb_path_exists(lines, '$.**.name')`)
export class DrawAmendment {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'draw_amendment_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'draw_amendment_pkey' })
  drawId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'draw_amendment_pkey' })
  number: number;

  @Column('text')
  kind: DrawAmendmentRow['kind'];

  @Column('jsonb')
  lines: DrawAmendmentRow['lines'];

  @Column('text')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  madeAt: string;
}
