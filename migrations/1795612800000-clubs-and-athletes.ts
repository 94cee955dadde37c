import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Everything belongs to an organisation, and its id stands first in every key: one organisation's rows can move to
 * a server of their own without a change to a table.
 */
export class ClubsAndAthletes1795612800000 implements MigrationInterface {
  name = 'ClubsAndAthletes1795612800000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE organisation (
        id uuid NOT NULL,
        name title NOT NULL,
        CONSTRAINT organisation_pkey PRIMARY KEY (id)
      )`);
    await runner.query(`
      CREATE TABLE club (
        organisation_id uuid NOT NULL,
        id uuid NOT NULL,
        name title NOT NULL,
        CONSTRAINT club_pkey PRIMARY KEY (organisation_id, id),
        CONSTRAINT club_name_unique UNIQUE (organisation_id, name),
        CONSTRAINT club_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id)
      )`);
    await runner.query(`
      CREATE TABLE athlete (
        organisation_id uuid NOT NULL,
        id uuid NOT NULL,
        given_name person_name NOT NULL,
        family_name person_name NOT NULL,
        sex sex NOT NULL,
        birth_date date,
        club_id uuid,
        display name_display,
        CONSTRAINT athlete_pkey PRIMARY KEY (organisation_id, id),
        CONSTRAINT athlete_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id),
        CONSTRAINT athlete_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
        CONSTRAINT athlete_birth_date_range CHECK (birth_date BETWEEN '1900-01-01' AND '2200-01-01')
      )`);
    await runner.query(
      `CREATE INDEX athlete_by_name ON athlete (organisation_id, family_name, given_name, id)`,
    );
    await runner.query(`CREATE INDEX athlete_by_club ON athlete (club_id, organisation_id)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE athlete`);
    await runner.query(`DROP TABLE club`);
    await runner.query(`DROP TABLE organisation`);
  }
}
