import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A meet may demand that whoever makes a result official, or opens one again, is confirmed by somebody else. What is
 * asked waits outside the journal, where it changes nothing; that two are two is held by a key and a check.
 */
export class SecondPerson1795613000603 implements MigrationInterface {
  name = 'SecondPerson1795613000603';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE meet ADD COLUMN needs_second_person boolean NOT NULL DEFAULT false`);
    await runner.query(`ALTER TABLE official_result ADD COLUMN confirmed_by signature`);
    await runner.query(`
      ALTER TABLE official_result ADD CONSTRAINT official_result_two_persons CHECK (confirmed_by <> signed_by)`);
    for (const statement of [DECISION_REQUEST, DECISION_CONFIRMATION]) await runner.query(statement);
    await runner.query(`
      CREATE INDEX decision_request_by_competition ON decision_request (competition_id, organisation_id)`);
    for (const table of ['decision_request', 'decision_confirmation']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON decision_request, decision_confirmation TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE decision_confirmation, decision_request`);
    await runner.query(`ALTER TABLE official_result DROP COLUMN confirmed_by`);
    await runner.query(`ALTER TABLE meet DROP COLUMN needs_second_person`);
  }
}

const DECISION_REQUEST = `
  CREATE TABLE decision_request (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    kind text NOT NULL,
    reason why,
    version integer NOT NULL,
    authority authority NOT NULL,
    asked_by signature NOT NULL,
    asked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT decision_request_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT decision_request_by_whom UNIQUE (id, asked_by, organisation_id),
    CONSTRAINT decision_request_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT decision_request_kind_known CHECK (kind IN ('sign-off', 'reopening')),
    CONSTRAINT decision_request_reopening_explained CHECK (kind <> 'reopening' OR reason IS NOT NULL),
    CONSTRAINT decision_request_version_range CHECK (version >= 0)
  )`;

const DECISION_CONFIRMATION = `
  CREATE TABLE decision_confirmation (
    organisation_id uuid NOT NULL,
    request_id uuid NOT NULL,
    asked_by signature NOT NULL,
    entry_id uuid NOT NULL,
    authority authority NOT NULL,
    confirmed_by signature NOT NULL,
    confirmed_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT decision_confirmation_pkey PRIMARY KEY (organisation_id, request_id),
    CONSTRAINT decision_confirmation_request_fkey FOREIGN KEY (request_id, asked_by, organisation_id)
      REFERENCES decision_request (id, asked_by, organisation_id),
    CONSTRAINT decision_confirmation_two_persons CHECK (confirmed_by <> asked_by),
    CONSTRAINT decision_confirmation_by_right CHECK (authority IN ('referee', 'director'))
  )`;
