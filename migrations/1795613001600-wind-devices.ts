import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A link may be for the tablet at the wind gauge: its devices give winds and nothing else. */
export class WindDevices1795613001600 implements MigrationInterface {
  name = 'WindDevices1795613001600';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE device_link ADD COLUMN is_winds_only boolean NOT NULL DEFAULT false`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE device_link DROP COLUMN is_winds_only`);
  }
}
