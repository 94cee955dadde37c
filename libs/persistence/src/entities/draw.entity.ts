import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { DrawRow } from '../draw-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A draw of flights and order with all that it takes to make it again. Rows are added and never changed. */
@Entity('draw')
@Unique('draw_number_unique', ['competitionId', 'number', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'draw_competition_fkey',
})
@ForeignKey('qualification', ['organisationId', 'qualificationId'], ['organisationId', 'id'], {
  name: 'draw_qualification_fkey',
})
@Check('draw_number_range', `number >= 1`)
@Check(
  'draw_seed_form',
  `length(seed) BETWEEN 1 AND 200 AND octet_length(seed) = length(seed) AND seed !~ '[[:cntrl:]]'`,
)
@Check('draw_method_known', `method IN ('lot', 'seed marks', 'equal strength')`)
@Check('draw_entries_shape', `jsonb_typeof(entries) = 'array'`)
@Check('draw_flights_shape', `jsonb_typeof(flights) = 'array'`)
@Check('draw_again_with_reason', `number = 1 OR reason IS NOT NULL`)
@Check('draw_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
@Check(
  'draw_without_names',
  `NOT jsonb_path_exists(entries, '$.**.name') AND NOT jsonb_path_exists(flights, '$.**.name')`,
)
export class Draw {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'draw_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'draw_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('integer')
  number: number;

  @Column('text')
  procedure: string;

  @Column('text')
  seed: string;

  @Column('text')
  method: DrawRow['method'];

  @Column('boolean')
  clubmatesApart: boolean;

  @Column('jsonb')
  entries: DrawRow['entries'];

  @Column('jsonb')
  flights: DrawRow['flights'];

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  drawnBy: string;

  @Column(SET_BY_CLOCK)
  drawnAt: string;

  @Column('uuid', { nullable: true })
  qualificationId: string | null;
}
