import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Age categories that an organisation lays down itself, and the age factors of a meet. Both say by what somebody was
 * put where he was, so rows are only added: of definitions of one scheme the latest that is in force on a day counts,
 * of factors the latest revision.
 */
export class Categories1795613000401 implements MigrationInterface {
  name = 'Categories1795613000401';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(CATEGORY_DEFINITION);
    await runner.query(`
      CREATE INDEX category_definition_by_scheme ON category_definition (scheme, organisation_id)`);
    await runner.query(AGE_FACTORS);
    await runner.query(`ALTER TABLE competition ADD COLUMN category_scheme label`);
    for (const table of ['category_definition', 'age_factors']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON category_definition, age_factors TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE competition DROP COLUMN category_scheme`);
    await runner.query(`DROP TABLE age_factors`);
    await runner.query(`DROP TABLE category_definition`);
  }
}

const CATEGORY_DEFINITION = `
  CREATE TABLE category_definition (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    scheme label NOT NULL,
    rules rule_set_code,
    valid_from date,
    valid_until date,
    age_on jsonb NOT NULL,
    bands jsonb NOT NULL,
    source text NOT NULL,
    defined_by signature NOT NULL,
    defined_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT category_definition_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT category_definition_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id),
    CONSTRAINT category_definition_validity_in_order CHECK (valid_from <= valid_until),
    CONSTRAINT category_definition_age_on_known CHECK ((age_on ->> 'kind' IN ('end of year', 'day of competition', 'next', 'no age')) IS TRUE),
    CONSTRAINT category_definition_bands_shape CHECK ((jsonb_typeof(bands) = 'array' AND bands <> '[]') IS TRUE),
    CONSTRAINT category_definition_source_given CHECK (length(source) <= 200 AND btrim(source) <> '')
  )`;

const AGE_FACTORS = `
  CREATE TABLE age_factors (
    organisation_id uuid NOT NULL,
    meet_id uuid NOT NULL,
    event event_code NOT NULL,
    revision integer NOT NULL,
    source text NOT NULL,
    factors jsonb NOT NULL,
    set_by signature NOT NULL,
    set_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT age_factors_pkey PRIMARY KEY (organisation_id, meet_id, event, revision),
    CONSTRAINT age_factors_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT age_factors_revision_range CHECK (revision >= 1),
    CONSTRAINT age_factors_source_given CHECK (length(source) <= 200 AND btrim(source) <> ''),
    CONSTRAINT age_factors_shape CHECK (jsonb_typeof(factors) = 'array')
  )`;
