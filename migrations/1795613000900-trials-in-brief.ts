import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * An accepted trial in a few words, as far as its place depends on it, in an index of its own: the table of the clubs
 * reads the journals of a whole meet, and a row of a journal is wide (measured: a tenth of the time). Nobody writes it
 * but the trigger, from the body of the same row, so that the two cannot disagree.
 */
export class TrialsInBrief1795613000900 implements MigrationInterface {
  name = 'TrialsInBrief1795613000900';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(TRIAL_OF);
    // A column that is first computed and then plain fills the rows that are there; none of them is updated.
    await runner.query(`
      ALTER TABLE journal_entry ADD COLUMN trial text
        GENERATED ALWAYS AS (journal_trial_of(entry_id, kind, standing, body)) STORED`);
    await runner.query(`ALTER TABLE journal_entry ALTER COLUMN trial DROP EXPRESSION`);
    await runner.query(WRITE_TRIAL);
    await runner.query(`
      CREATE TRIGGER journal_entry_trial BEFORE INSERT ON journal_entry
      FOR EACH ROW EXECUTE FUNCTION journal_entry_trial()`);
    await runner.query(`
      CREATE INDEX journal_entry_trials ON journal_entry (competition_id, sequence)
      INCLUDE (organisation_id, trial) WHERE trial IS NOT NULL`);
    await runner.query(`
      CREATE INDEX journal_entry_others ON journal_entry (competition_id, sequence) WHERE trial IS NULL`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TRIGGER journal_entry_trial ON journal_entry`);
    await runner.query(`DROP FUNCTION journal_entry_trial()`);
    await runner.query(`ALTER TABLE journal_entry DROP COLUMN trial`);
    await runner.query(`DROP FUNCTION journal_trial_of(uuid, text, text, jsonb)`);
  }
}

/** Words without a comma in them: ids, whole numbers and words of the schema. Null: it is no accepted trial. */
const TRIAL_OF = `
  CREATE FUNCTION journal_trial_of(entry_id uuid, kind text, standing text, body jsonb) RETURNS text
  LANGUAGE sql IMMUTABLE RETURN
    CASE WHEN standing = 'accepted' THEN
      CASE kind
        WHEN 'attempt' THEN
          'a,' || entry_id::text || ',' || (body ->> 'competitor') || ',' || (body ->> 'outcome') || ','
            || (body ->> 'round') || ',' || coalesce(body ->> 'mark', '') || ',' || coalesce(body ->> 'protested', '')
        WHEN 'jump' THEN
          'j,' || entry_id::text || ',' || (body ->> 'competitor') || ',' || (body ->> 'outcome') || ','
            || (body ->> 'trial') || ',' || (body ->> 'height') || ',' || (body ->> 'protested')
      END
    END`;

const WRITE_TRIAL = `
  CREATE FUNCTION journal_entry_trial() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  BEGIN
    NEW.trial := journal_trial_of(NEW.entry_id, NEW.kind, NEW.standing, NEW.body);
    RETURN NEW;
  END
  $function$`;
