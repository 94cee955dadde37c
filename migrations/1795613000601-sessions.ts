import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who is signed in. A session hands out one refresh token after the other; that an older one comes back says that
 * somebody else has it too. Tokens are kept as hashes: what lies here opens nothing.
 */
export class Sessions1795613000601 implements MigrationInterface {
  name = 'Sessions1795613000601';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [LOGIN_SESSION, REFRESH_TOKEN, TOKEN_REVOCATION]) await runner.query(statement);
    await runner.query(`CREATE INDEX login_session_by_person ON login_session (person_id, organisation_id)`);
    for (const table of ['refresh_token', 'token_revocation']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT, UPDATE ON login_session TO sectorline_app;
          GRANT SELECT, INSERT ON refresh_token, token_revocation TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE token_revocation, refresh_token, login_session`);
  }
}

const LOGIN_SESSION = `
  CREATE TABLE login_session (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    person_id uuid NOT NULL,
    label label,
    generation integer NOT NULL DEFAULT 1,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    ended_at timestamptz,
    ended_because text,
    CONSTRAINT login_session_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT login_session_person_fkey FOREIGN KEY (organisation_id, person_id) REFERENCES person (organisation_id, id),
    CONSTRAINT login_session_generation_range CHECK (generation >= 1),
    CONSTRAINT login_session_end_known CHECK (ended_because IN ('signed-out', 'everywhere', 'reuse', 'password', 'closed')),
    CONSTRAINT login_session_end_explained CHECK ((ended_at IS NULL) = (ended_because IS NULL))
  )`;

const REFRESH_TOKEN = `
  CREATE TABLE refresh_token (
    organisation_id uuid NOT NULL,
    hash fingerprint NOT NULL,
    session_id uuid NOT NULL,
    generation integer NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    expires_at timestamptz NOT NULL,
    CONSTRAINT refresh_token_pkey PRIMARY KEY (organisation_id, hash),
    CONSTRAINT refresh_token_one_a_generation UNIQUE (session_id, generation, organisation_id),
    CONSTRAINT refresh_token_session_fkey FOREIGN KEY (organisation_id, session_id)
      REFERENCES login_session (organisation_id, id),
    CONSTRAINT refresh_token_generation_range CHECK (generation >= 1)
  )`;

/** For tokens without an account: the token's id is what the journal keeps as "who". */
const TOKEN_REVOCATION = `
  CREATE TABLE token_revocation (
    organisation_id uuid NOT NULL,
    token_id uuid NOT NULL,
    reason why NOT NULL,
    revoked_by signature NOT NULL,
    revoked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT token_revocation_pkey PRIMARY KEY (organisation_id, token_id),
    CONSTRAINT token_revocation_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id)
  )`;
