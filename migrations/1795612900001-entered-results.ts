import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Results of running events and relays, which are entered and not counted here. What corrects a result is another
 * one, which names it; a result is replaced once, so that there is one that counts. Athletes are known by bib: names
 * stay out, for a row can never be removed.
 */
export class EnteredResults1795612900001 implements MigrationInterface {
  name = 'EnteredResults1795612900001';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(ENTERED_RESULT);
    await runner.query(`CREATE INDEX entered_result_by_meet ON entered_result (organisation_id, meet_id)`);
    await runner.query(`
      CREATE TRIGGER entered_result_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON entered_result
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON entered_result TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE entered_result`);
  }
}

const ENTERED_RESULT = `
  CREATE TABLE entered_result (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    title title NOT NULL,
    is_relay boolean NOT NULL,
    category_sex sex,
    category_age label,
    lines jsonb NOT NULL,
    replaces_id uuid,
    reason text,
    authority authority NOT NULL,
    entered_by signature NOT NULL,
    entered_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT entered_result_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT entered_result_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT entered_result_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT entered_result_replaces_fkey FOREIGN KEY (organisation_id, replaces_id)
      REFERENCES entered_result (organisation_id, id),
    CONSTRAINT entered_result_not_itself CHECK (replaces_id <> id),
    CONSTRAINT entered_result_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT entered_result_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000),
    CONSTRAINT entered_result_lines_shape CHECK (jsonb_typeof(lines) = 'array'),
    CONSTRAINT entered_result_without_names CHECK (NOT jsonb_path_exists(lines, '$.**.name'))
  )`;
