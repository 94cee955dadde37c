import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Links that make a tablet the official's device of one circle for a while. The secret of a link is not stored: it is
 * the server's signature of the id. A device takes a number of the link; so no more come in than were meant.
 */
export class DeviceLinks1795613000602 implements MigrationInterface {
  name = 'DeviceLinks1795613000602';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [DEVICE_LINK, DEVICE_LINK_USE, DEVICE_LINK_REVOCATION]) {
      await runner.query(statement);
    }
    await runner.query(`CREATE INDEX device_link_by_meet ON device_link (meet_id, organisation_id)`);
    for (const table of ['device_link', 'device_link_use', 'device_link_revocation']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON device_link, device_link_use, device_link_revocation TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE device_link_revocation, device_link_use, device_link`);
  }
}

const DEVICE_LINK = `
  CREATE TABLE device_link (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    competition_id uuid,
    calling_group_id uuid,
    label label NOT NULL,
    starts_at timestamptz NOT NULL,
    ends_at timestamptz NOT NULL,
    devices integer NOT NULL,
    made_by signature NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT device_link_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT device_link_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT device_link_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT device_link_calling_group_fkey FOREIGN KEY (organisation_id, calling_group_id)
      REFERENCES calling_group (organisation_id, id),
    CONSTRAINT device_link_one_object CHECK (num_nonnulls(competition_id, calling_group_id) = 1),
    CONSTRAINT device_link_window_in_order CHECK (starts_at < ends_at),
    CONSTRAINT device_link_devices_range CHECK (devices >= 1 AND devices <= 50)
  )`;

const DEVICE_LINK_USE = `
  CREATE TABLE device_link_use (
    organisation_id uuid NOT NULL,
    link_id uuid NOT NULL,
    number integer NOT NULL,
    device_id uuid NOT NULL,
    used_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT device_link_use_pkey PRIMARY KEY (organisation_id, link_id, number),
    CONSTRAINT device_link_use_once_a_device UNIQUE (device_id, link_id, organisation_id),
    CONSTRAINT device_link_use_link_fkey FOREIGN KEY (organisation_id, link_id) REFERENCES device_link (organisation_id, id),
    CONSTRAINT device_link_use_number_range CHECK (number >= 1 AND number <= 50)
  )`;

const DEVICE_LINK_REVOCATION = `
  CREATE TABLE device_link_revocation (
    organisation_id uuid NOT NULL,
    link_id uuid NOT NULL,
    reason why NOT NULL,
    revoked_by signature NOT NULL,
    revoked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT device_link_revocation_pkey PRIMARY KEY (organisation_id, link_id),
    CONSTRAINT device_link_revocation_link_fkey FOREIGN KEY (organisation_id, link_id)
      REFERENCES device_link (organisation_id, id)
  )`;
