import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Where a meet demands two persons, what one of them has said of a combined event waits here until another one says the
 * same of the same version. Its archive names both.
 */
export class CombinedSecondPerson1795613001710 implements MigrationInterface {
  name = 'CombinedSecondPerson1795613001710';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(COMBINED_REQUEST);
    await runner.query(`
      CREATE INDEX combined_request_by_event ON combined_request (combined_event_id, organisation_id)`);
    await runner.query(`
      CREATE TRIGGER combined_request_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON combined_request
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(`ALTER TABLE combined_official_result ADD COLUMN confirmed_by signature`);
    await runner.query(`
      ALTER TABLE combined_official_result
        ADD CONSTRAINT combined_official_result_two_persons CHECK (confirmed_by <> signed_by)`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON combined_request TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE combined_official_result DROP COLUMN confirmed_by`);
    await runner.query(`DROP TABLE combined_request`);
  }
}

const COMBINED_REQUEST = `
  CREATE TABLE combined_request (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    combined_event_id uuid NOT NULL,
    kind text NOT NULL,
    version integer NOT NULL,
    reason why,
    authority authority NOT NULL,
    asked_by signature NOT NULL,
    asked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT combined_request_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT combined_request_event_fkey FOREIGN KEY (organisation_id, combined_event_id)
      REFERENCES combined_event (organisation_id, id),
    CONSTRAINT combined_request_kind_known CHECK (kind IN ('sign-off', 'reopening')),
    CONSTRAINT combined_request_version_range CHECK (version >= 0)
  )`;
