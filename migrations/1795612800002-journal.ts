import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The journal: what officials did, in the order in which it was recorded. Rows are only ever added. A check passes
 * when it is unknown, so those that read the body end in IS TRUE: a missing key must fail, not slip through.
 */
export class Journal1795612800002 implements MigrationInterface {
  name = 'Journal1795612800002';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(JOURNAL_ENTRY);
    await runner.query(REFUSE_CHANGE);
    await runner.query(`
      CREATE TRIGGER journal_entry_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON journal_entry
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(IN_SEQUENCE);
    await runner.query(`
      CREATE TRIGGER journal_entry_in_sequence BEFORE INSERT ON journal_entry
      FOR EACH ROW EXECUTE FUNCTION journal_entry_in_sequence()`);
    await runner.query(COUNTED_IS_THERE);
    await runner.query(`
      CREATE CONSTRAINT TRIGGER competition_counted_entry_is_there AFTER UPDATE ON competition
      DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (OLD.last_sequence <> NEW.last_sequence)
      EXECUTE FUNCTION competition_counted_entry_is_there()`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TRIGGER competition_counted_entry_is_there ON competition`);
    await runner.query(`DROP FUNCTION competition_counted_entry_is_there()`);
    await runner.query(`DROP TABLE journal_entry`);
    await runner.query(`DROP FUNCTION journal_entry_in_sequence()`);
    await runner.query(`DROP FUNCTION refuse_change()`);
  }
}

const JOURNAL_ENTRY = `
  CREATE TABLE journal_entry (
    organisation_id uuid NOT NULL,
    competition_id uuid NOT NULL,
    sequence integer NOT NULL,
    entry_id uuid NOT NULL,
    kind text NOT NULL,
    body jsonb NOT NULL,
    standing text NOT NULL,
    verdict jsonb NOT NULL,
    authority text NOT NULL,
    actor text NOT NULL,
    device text,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint text NOT NULL,
    CONSTRAINT journal_entry_pkey PRIMARY KEY (organisation_id, competition_id, sequence),
    CONSTRAINT journal_entry_id_unique UNIQUE (organisation_id, entry_id),
    CONSTRAINT journal_entry_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT journal_entry_sequence_range CHECK (sequence >= 1),
    CONSTRAINT journal_entry_kind_known CHECK (kind IN ('attempt', 'wind', 'correction', 'move', 'reversal', 'replacement', 'ruling', 'start', 'disqualification', 'reinstatement', 'admission', 'order', 'sign-off', 'reopening')),
    CONSTRAINT journal_entry_body_of_kind CHECK ((jsonb_typeof(body) = 'object' AND body ->> 'kind' = kind) IS TRUE),
    CONSTRAINT journal_entry_standing_known CHECK (standing IN ('accepted', 'held')),
    CONSTRAINT journal_entry_verdict_agrees CHECK ((verdict ->> 'standing' = standing) IS TRUE),
    CONSTRAINT journal_entry_authority_known CHECK (authority IN ('official', 'referee', 'director')),
    CONSTRAINT journal_entry_actor_length CHECK (length(actor) BETWEEN 1 AND 200),
    CONSTRAINT journal_entry_device_length CHECK (length(device) BETWEEN 1 AND 200),
    CONSTRAINT journal_entry_fingerprint_form CHECK (fingerprint ~ '^[0-9a-f]{64}$'),
    CONSTRAINT journal_entry_competitor_named CHECK (kind NOT IN ('attempt', 'start', 'disqualification', 'reinstatement', 'admission') OR (body @@ '$.competitor.type() == "string" && $.competitor != ""') IS TRUE),
    CONSTRAINT journal_entry_attempt_named CHECK (kind NOT IN ('wind', 'correction', 'replacement') OR (body @@ '$.attempt.type() == "string" && $.attempt != ""') IS TRUE),
    CONSTRAINT journal_entry_entry_named CHECK (kind NOT IN ('reversal', 'ruling') OR (body @@ '$.entry.type() == "string" && $.entry != ""') IS TRUE),
    CONSTRAINT journal_entry_reason_given CHECK (kind NOT IN ('correction', 'move', 'reversal', 'replacement', 'ruling', 'disqualification', 'reinstatement', 'admission', 'order', 'reopening') OR (jsonb_typeof(body -> 'reason') = 'string' AND btrim(body ->> 'reason') <> '' AND length(body ->> 'reason') <= 1000) IS TRUE),
    CONSTRAINT journal_entry_round_range CHECK (kind NOT IN ('attempt', 'order') OR (body @@ '$.round.type() == "number" && $.round >= 1 && $.round <= 12 && $.round.floor() == $.round') IS TRUE),
    CONSTRAINT journal_entry_outcome_known CHECK (kind NOT IN ('attempt', 'correction') OR (body ->> 'outcome' IN ('valid', 'unmeasured', 'foul', 'pass', 'retired')) IS TRUE),
    CONSTRAINT journal_entry_mark_iff_valid CHECK (kind NOT IN ('attempt', 'correction') OR CASE WHEN body ->> 'outcome' = 'valid' THEN (body @@ '$.mark.type() == "number" && $.mark >= 1 && $.mark <= 99999 && $.mark.floor() == $.mark') IS TRUE ELSE coalesce(jsonb_typeof(body -> 'mark'), 'null') = 'null' END),
    CONSTRAINT journal_entry_wind_of_trial CHECK (kind NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(body -> 'wind'), 'null') = 'null' OR (body @@ '($.outcome == "valid" || $.outcome == "foul") && (($.wind.type() == "number" && $.wind >= -999 && $.wind <= 999 && $.wind.floor() == $.wind) || $.wind == "NWI" || $.wind == "pending")') IS TRUE),
    CONSTRAINT journal_entry_wind_reading CHECK (kind <> 'wind' OR (body @@ '($.wind.type() == "number" && $.wind >= -999 && $.wind <= 999 && $.wind.floor() == $.wind) || $.wind == "NWI"') IS TRUE),
    CONSTRAINT journal_entry_foul_of_foul CHECK (kind NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(body -> 'foul'), 'null') = 'null' OR (body ->> 'outcome' = 'foul' AND body ->> 'foul' ~ '^[A-Z]{2,16}$') IS TRUE),
    CONSTRAINT journal_entry_protest_of_foul CHECK (kind NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(body -> 'protested'), 'null') = 'null' OR (body @@ '$.outcome == "foul" && $.protested.type() == "number" && $.protested >= 1 && $.protested <= 99999 && $.protested.floor() == $.protested') IS TRUE),
    CONSTRAINT journal_entry_implement_range CHECK (kind NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(body -> 'implementGrams'), 'null') = 'null' OR (body @@ '$.implementGrams.type() == "number" && $.implementGrams >= 1 && $.implementGrams <= 100000 && $.implementGrams.floor() == $.implementGrams') IS TRUE),
    CONSTRAINT journal_entry_decision_known CHECK (kind <> 'ruling' OR (body ->> 'decision' IN ('count', 'dismiss')) IS TRUE),
    CONSTRAINT journal_entry_start_known CHECK (kind <> 'start' OR (body ->> 'status' IN ('DNS', 'started')) IS TRUE),
    CONSTRAINT journal_entry_rule_named CHECK (kind <> 'disqualification' OR (jsonb_typeof(body -> 'rule') = 'string' AND btrim(body ->> 'rule') <> '') IS TRUE),
    CONSTRAINT journal_entry_admitted_by_known CHECK (kind <> 'admission' OR (body ->> 'admittedBy' IN ('R', 'J', 'D')) IS TRUE),
    CONSTRAINT journal_entry_admission_after CHECK (kind <> 'admission' OR coalesce(jsonb_typeof(body -> 'after'), 'null') = 'null' OR (body @@ '$.after.type() == "number" && $.after >= 1 && $.after <= 12 && $.after.floor() == $.after') IS TRUE),
    CONSTRAINT journal_entry_incomplete_explained CHECK (kind <> 'sign-off' OR coalesce(jsonb_typeof(body -> 'incomplete'), 'null') = 'null' OR (jsonb_typeof(body -> 'incomplete') = 'string' AND btrim(body ->> 'incomplete') <> '') IS TRUE),
    CONSTRAINT journal_entry_moves_listed CHECK (kind <> 'move' OR (body @@ '$.moves.type() == "array" && $.moves.size() >= 1') IS TRUE),
    CONSTRAINT journal_entry_order_listed CHECK (kind <> 'order' OR (body @@ '$.competitors.type() == "array"') IS TRUE)
  )`;

/** For the tables that are only ever added to. Also refuses a change that would touch no row. */
const REFUSE_CHANGE = `
  CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $function$
  BEGIN
    RAISE EXCEPTION '% is only ever added to; what replaces a row is another row', TG_TABLE_NAME
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** The competition counts an entry first; the entry then takes that number, and the one before must be there. */
const IN_SEQUENCE = `
  CREATE FUNCTION journal_entry_in_sequence() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  DECLARE
    counted integer;
  BEGIN
    SELECT last_sequence INTO counted FROM competition
     WHERE organisation_id = NEW.organisation_id AND id = NEW.competition_id;
    IF NOT FOUND THEN
      RETURN NEW;
    END IF;
    IF NEW.sequence = counted AND (counted = 1 OR EXISTS (
      SELECT FROM journal_entry
       WHERE organisation_id = NEW.organisation_id AND competition_id = NEW.competition_id
         AND sequence = NEW.sequence - 1)) THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'journal of competition %: entry % does not follow the last one', NEW.competition_id, NEW.sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** Looked at when the transaction ends: what was counted must have been written. */
const COUNTED_IS_THERE = `
  CREATE FUNCTION competition_counted_entry_is_there() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  BEGIN
    IF EXISTS (
      SELECT FROM journal_entry
       WHERE organisation_id = NEW.organisation_id AND competition_id = NEW.id AND sequence = NEW.last_sequence) THEN
      RETURN NULL;
    END IF;
    RAISE EXCEPTION 'competition %: entry % was counted and not written', NEW.id, NEW.last_sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;
