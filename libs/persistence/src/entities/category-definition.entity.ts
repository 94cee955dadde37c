import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { CategoryDefinitionRow, RuleSetCode } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** Age categories of an organisation's own. Rows are added and never changed. */
@Entity('category_definition')
@Index('category_definition_by_scheme', ['scheme', 'organisationId'])
@ForeignKey('organisation', ['organisationId'], ['id'], { name: 'category_definition_organisation_fkey' })
@Check('category_definition_validity_in_order', `valid_from <= valid_until`)
@Check(
  'category_definition_age_on_known',
  `(age_on ->> 'kind' IN ('end of year', 'day of competition', 'next', 'no age')) IS TRUE`,
)
@Check('category_definition_bands_shape', `(jsonb_typeof(bands) = 'array' AND bands <> '[]') IS TRUE`)
@Check('category_definition_source_given', `length(source) <= 200 AND btrim(source) <> ''`)
export class CategoryDefinition {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'category_definition_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'category_definition_pkey' })
  id: string;

  @Column('text')
  scheme: string;

  @Column('text', { nullable: true })
  rules: RuleSetCode | null;

  @Column('date', { nullable: true })
  validFrom: string | null;

  @Column('date', { nullable: true })
  validUntil: string | null;

  @Column('jsonb')
  ageOn: CategoryDefinitionRow['ageOn'];

  @Column('jsonb')
  bands: CategoryDefinitionRow['bands'];

  @Column('text')
  source: string;

  @Column('text')
  definedBy: string;

  @Column(SET_BY_CLOCK)
  definedAt: string;
}
