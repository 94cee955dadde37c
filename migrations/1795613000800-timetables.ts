import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * When and where competitions take place, and who works at them. Both are read as a whole and changed as a whole: a
 * change is a new revision, so that it stays known what was told to whom and why it was moved.
 */
export class Timetables1795613000800 implements MigrationInterface {
  name = 'Timetables1795613000800';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(TIMETABLE);
    await runner.query(CREW);
    for (const table of ['timetable', 'crew']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON timetable, crew TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE crew`);
    await runner.query(`DROP TABLE timetable`);
  }
}

const TIMETABLE = `
  CREATE TABLE timetable (
    organisation_id uuid NOT NULL,
    meet_id uuid NOT NULL,
    revision integer NOT NULL,
    facilities jsonb NOT NULL,
    shared_grounds jsonb NOT NULL,
    slots jsonb NOT NULL,
    reason text,
    set_by signature NOT NULL,
    set_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT timetable_pkey PRIMARY KEY (organisation_id, meet_id, revision),
    CONSTRAINT timetable_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT timetable_revision_range CHECK (revision >= 1),
    CONSTRAINT timetable_facilities_shape CHECK (jsonb_typeof(facilities) = 'array'),
    CONSTRAINT timetable_shared_grounds_shape CHECK (jsonb_typeof(shared_grounds) = 'array'),
    CONSTRAINT timetable_slots_shape CHECK (jsonb_typeof(slots) = 'array'),
    CONSTRAINT timetable_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000)
  )`;

const CREW = `
  CREATE TABLE crew (
    organisation_id uuid NOT NULL,
    competition_id uuid NOT NULL,
    revision integer NOT NULL,
    members jsonb NOT NULL,
    set_by signature NOT NULL,
    set_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT crew_pkey PRIMARY KEY (organisation_id, competition_id, revision),
    CONSTRAINT crew_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT crew_revision_range CHECK (revision >= 1),
    CONSTRAINT crew_members_shape CHECK (jsonb_typeof(members) = 'array')
  )`;
