import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who may sign in, and with which rights. What was ever given and taken away stays: a revocation is a row of its own.
 * A credential is the one thing that is overwritten, for an old password's hash is worth something to a thief alone.
 */
export class People1795613000600 implements MigrationInterface {
  name = 'People1795613000600';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...DOMAINS, PERSON, CREDENTIAL, ROLE_GRANT, ROLE_REVOCATION]) {
      await runner.query(statement);
    }
    await runner.query(`CREATE INDEX role_grant_by_person ON role_grant (person_id, organisation_id)`);
    for (const table of ['role_grant', 'role_revocation']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT, UPDATE ON person, credential TO sectorline_app;
          GRANT SELECT, INSERT ON role_grant, role_revocation TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE role_revocation, role_grant, credential, person`);
    await runner.query(`DROP DOMAIN why, access_role, login_name`);
  }
}

const DOMAINS = [
  `
  CREATE DOMAIN login_name AS text
    CONSTRAINT login_name_form CHECK (VALUE ~ '^[a-z0-9][a-z0-9._@+-]{2,119}$')`,
  `
  CREATE DOMAIN access_role AS text
    CONSTRAINT access_role_known CHECK (VALUE IN ('admin', 'director', 'referee', 'official', 'coach', 'athlete', 'guardian'))`,
  `
  CREATE DOMAIN why AS text
    CONSTRAINT why_given CHECK (btrim(VALUE) <> '' AND length(VALUE) <= 500)`,
];

const PERSON = `
  CREATE TABLE person (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    login_name login_name NOT NULL,
    display_name person_name NOT NULL,
    is_demo boolean NOT NULL DEFAULT false,
    made_by signature NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    closed_by signature,
    closed_at timestamptz,
    CONSTRAINT person_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT person_login_name_unique UNIQUE (login_name, organisation_id),
    CONSTRAINT person_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id),
    CONSTRAINT person_closed_by_somebody CHECK ((closed_by IS NULL) = (closed_at IS NULL))
  )`;

const CREDENTIAL = `
  CREATE TABLE credential (
    organisation_id uuid NOT NULL,
    person_id uuid NOT NULL,
    password_hash text,
    setup_hash fingerprint,
    setup_expires_at timestamptz,
    changed_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT credential_pkey PRIMARY KEY (organisation_id, person_id),
    CONSTRAINT credential_person_fkey FOREIGN KEY (organisation_id, person_id) REFERENCES person (organisation_id, id),
    CONSTRAINT credential_password_hashed CHECK (password_hash LIKE '$argon2id$%' AND length(password_hash) <= 200),
    CONSTRAINT credential_setup_expires CHECK ((setup_hash IS NULL) = (setup_expires_at IS NULL))
  )`;

const ROLE_GRANT = `
  CREATE TABLE role_grant (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    role access_role NOT NULL,
    meet_id uuid,
    competition_id uuid,
    calling_group_id uuid,
    athlete_id uuid,
    starts_at timestamptz,
    ends_at timestamptz,
    reason why,
    given_by signature NOT NULL,
    given_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT role_grant_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT role_grant_person_fkey FOREIGN KEY (organisation_id, person_id) REFERENCES person (organisation_id, id),
    CONSTRAINT role_grant_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT role_grant_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT role_grant_calling_group_fkey FOREIGN KEY (organisation_id, calling_group_id)
      REFERENCES calling_group (organisation_id, id),
    CONSTRAINT role_grant_athlete_fkey FOREIGN KEY (organisation_id, athlete_id) REFERENCES athlete (organisation_id, id),
    CONSTRAINT role_grant_window_in_order CHECK (starts_at < ends_at),
    CONSTRAINT role_grant_object_of_role CHECK (CASE
      WHEN role = 'admin' THEN num_nonnulls(meet_id, competition_id, calling_group_id, athlete_id) = 0
      WHEN role IN ('director', 'referee') THEN meet_id IS NOT NULL AND num_nonnulls(competition_id, calling_group_id, athlete_id) = 0
      WHEN role = 'official' THEN num_nonnulls(competition_id, calling_group_id) = 1 AND num_nonnulls(meet_id, athlete_id) = 0
      ELSE athlete_id IS NOT NULL AND num_nonnulls(meet_id, competition_id, calling_group_id) = 0 END)
  )`;

const ROLE_REVOCATION = `
  CREATE TABLE role_revocation (
    organisation_id uuid NOT NULL,
    grant_id uuid NOT NULL,
    reason why NOT NULL,
    revoked_by signature NOT NULL,
    revoked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT role_revocation_pkey PRIMARY KEY (organisation_id, grant_id),
    CONSTRAINT role_revocation_grant_fkey FOREIGN KEY (organisation_id, grant_id) REFERENCES role_grant (organisation_id, id)
  )`;
