import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { AgeFactorsRow, EventCode } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** The age factors of a meet for one event. Rows are added and never changed: the newest revision counts. */
@Entity('age_factors')
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'age_factors_meet_fkey' })
@Check('age_factors_revision_range', `revision >= 1`)
@Check('age_factors_source_given', `length(source) <= 200 AND btrim(source) <> ''`)
@Check('age_factors_shape', `jsonb_typeof(factors) = 'array'`)
export class AgeFactors {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'age_factors_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'age_factors_pkey' })
  meetId: string;

  @PrimaryColumn('text', { primaryKeyConstraintName: 'age_factors_pkey' })
  event: EventCode;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'age_factors_pkey' })
  revision: number;

  @Column('text')
  source: string;

  @Column('jsonb')
  factors: AgeFactorsRow['factors'];

  @Column('text')
  setBy: string;

  @Column(SET_BY_CLOCK)
  setAt: string;
}
