import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What becomes of clubs that are level on points. Meets that were scored before went by their places. */
export class ClubTies1795613000500 implements MigrationInterface {
  name = 'ClubTies1795613000500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE meet_scoring ADD COLUMN club_ties text NOT NULL DEFAULT 'places'`);
    await runner.query(`ALTER TABLE meet_scoring ALTER COLUMN club_ties DROP DEFAULT`);
    await runner.query(`
      ALTER TABLE meet_scoring
      ADD CONSTRAINT meet_scoring_club_ties_known CHECK (club_ties IN ('places', 'shared'))`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE meet_scoring DROP COLUMN club_ties`);
  }
}
