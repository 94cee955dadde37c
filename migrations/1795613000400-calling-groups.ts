import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who is called in one order at one circle or runway. A competition is in at most one group, and in one of its own
 * meet: the key that refers to the group holds the meet as well. The link lies with the competition, so that whoever
 * locks a competition knows at once who else may act on it.
 */
export class CallingGroups1795613000400 implements MigrationInterface {
  name = 'CallingGroups1795613000400';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE DOMAIN calling_position AS integer
        CONSTRAINT calling_position_range CHECK (VALUE >= 1)`);
    await runner.query(CALLING_GROUP);
    await runner.query(VERSION_RISES);
    await runner.query(`
      CREATE TRIGGER calling_group_version_rises BEFORE UPDATE ON calling_group
      FOR EACH ROW EXECUTE FUNCTION calling_group_version_rises()`);
    await runner.query(LINK);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT, UPDATE ON calling_group TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE competition DROP COLUMN calling_position, DROP COLUMN calling_group_id`);
    await runner.query(`DROP TABLE calling_group`);
    await runner.query(`DROP FUNCTION calling_group_version_rises()`);
    await runner.query(`DROP DOMAIN calling_position`);
  }
}

const CALLING_GROUP = `
  CREATE TABLE calling_group (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    title title NOT NULL,
    facility text,
    starts_at timestamptz,
    warm_up_minutes integer,
    start_order jsonb,
    version integer NOT NULL DEFAULT 0,
    CONSTRAINT calling_group_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT calling_group_of_meet UNIQUE (meet_id, id, organisation_id),
    CONSTRAINT calling_group_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT calling_group_facility_length CHECK (length(facility) <= 120 AND btrim(facility) <> ''),
    CONSTRAINT calling_group_warm_up_range CHECK (warm_up_minutes >= 0 AND warm_up_minutes <= 240),
    CONSTRAINT calling_group_start_order_shape CHECK (start_order IS NULL OR jsonb_typeof(start_order) = 'array'),
    CONSTRAINT calling_group_version_range CHECK (version >= 0)
  )`;

/** A version that stood still would make an old reading pass for a new one. */
const VERSION_RISES = `
  CREATE FUNCTION calling_group_version_rises() RETURNS trigger LANGUAGE plpgsql AS $function$
  BEGIN
    IF NEW.version > OLD.version THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'calling group %: every change raises the version', NEW.id
      USING ERRCODE = 'check_violation', CONSTRAINT = 'calling_group_version_rises', TABLE = TG_TABLE_NAME;
  END
  $function$`;

const LINK = `
  ALTER TABLE competition
    ADD COLUMN calling_group_id uuid,
    ADD COLUMN calling_position calling_position,
    ADD CONSTRAINT competition_calling_group_fkey FOREIGN KEY (organisation_id, meet_id, calling_group_id)
      REFERENCES calling_group (organisation_id, meet_id, id),
    ADD CONSTRAINT competition_calling_position_unique UNIQUE (calling_group_id, calling_position, organisation_id)
      DEFERRABLE INITIALLY DEFERRED,
    ADD CONSTRAINT competition_calling_position_iff_group
      CHECK ((calling_group_id IS NULL) = (calling_position IS NULL))`;
