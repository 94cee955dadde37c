import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Who reported, and who was seen to be missing after all: each time a row of its own, numbered for the competitor. */
export class CheckIns1795613000201 implements MigrationInterface {
  name = 'CheckIns1795613000201';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(CHECK_IN);
    await runner.query(`
      CREATE TRIGGER check_in_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON check_in
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON check_in TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE check_in`);
  }
}

const CHECK_IN = `
  CREATE TABLE check_in (
    organisation_id uuid NOT NULL,
    competitor_id uuid NOT NULL,
    sequence integer NOT NULL,
    id uuid NOT NULL,
    is_present boolean NOT NULL,
    is_late boolean NOT NULL,
    note text,
    authority authority NOT NULL,
    entered_by signature NOT NULL,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT check_in_pkey PRIMARY KEY (organisation_id, competitor_id, sequence),
    CONSTRAINT check_in_id_unique UNIQUE (id, organisation_id),
    CONSTRAINT check_in_competitor_fkey FOREIGN KEY (organisation_id, competitor_id)
      REFERENCES competitor (organisation_id, id),
    CONSTRAINT check_in_sequence_range CHECK (sequence >= 1),
    CONSTRAINT check_in_late_is_present CHECK (is_present OR NOT is_late),
    CONSTRAINT check_in_note_given CHECK (btrim(note) <> '' AND length(note) <= 1000)
  )`;
