import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The journal of a combined event, kept like that of a competition: entries are only added, counted without gaps, and
 * what they say is held by a domain. And its signed results, without names.
 */
export class CombinedJournal1795613000001 implements MigrationInterface {
  name = 'CombinedJournal1795613000001';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(COMBINED_BODY);
    await runner.query(COMBINED_ENTRY);
    await runner.query(COMBINED_OFFICIAL_RESULT);
    for (const table of ['combined_entry', 'combined_official_result']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    for (const statement of [COUNTERS_ADVANCE, ENTRY_IN_SEQUENCE, COUNTED_IS_THERE, RESULT_IN_SEQUENCE])
      await runner.query(statement);
    await runner.query(`
      CREATE TRIGGER combined_event_counters_advance BEFORE INSERT OR UPDATE ON combined_event
      FOR EACH ROW EXECUTE FUNCTION combined_event_counters_advance()`);
    await runner.query(`
      CREATE TRIGGER combined_entry_in_sequence BEFORE INSERT ON combined_entry
      FOR EACH ROW EXECUTE FUNCTION combined_entry_in_sequence()`);
    await runner.query(`
      CREATE CONSTRAINT TRIGGER combined_event_counted_entry_is_there AFTER UPDATE ON combined_event
      DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (OLD.last_sequence <> NEW.last_sequence)
      EXECUTE FUNCTION combined_event_counted_entry_is_there()`);
    await runner.query(`
      CREATE TRIGGER combined_official_result_in_sequence BEFORE INSERT ON combined_official_result
      FOR EACH ROW EXECUTE FUNCTION combined_official_result_in_sequence()`);
    await runner.query(GRANTS);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TRIGGER combined_event_counters_advance ON combined_event`);
    await runner.query(`DROP TRIGGER combined_event_counted_entry_is_there ON combined_event`);
    await runner.query(`DROP TABLE combined_official_result, combined_entry`);
    await runner.query(`DROP FUNCTION combined_official_result_in_sequence()`);
    await runner.query(`DROP FUNCTION combined_event_counted_entry_is_there()`);
    await runner.query(`DROP FUNCTION combined_entry_in_sequence()`);
    await runner.query(`DROP FUNCTION combined_event_counters_advance()`);
    await runner.query(`DROP DOMAIN combined_body`);
  }
}

const PERFORMED = `VALUE ->> 'kind' NOT IN ('result', 'correction')`;

/** What may be said, by the kind of entry. What reads JSON ends in IS TRUE: a missing key must fail. */
const COMBINED_BODY = `
  CREATE DOMAIN combined_body AS jsonb
    CONSTRAINT combined_body_kind_known CHECK ((jsonb_typeof(VALUE) = 'object' AND VALUE ->> 'kind' IN ('result', 'correction', 'reversal', 'ruling', 'start', 'sign-off', 'reopening')) IS TRUE)
    CONSTRAINT combined_body_entrant_named CHECK (VALUE ->> 'kind' NOT IN ('result', 'start') OR (VALUE @@ '$.entrant.type() == "string" && $.entrant != ""') IS TRUE)
    CONSTRAINT combined_body_entry_named CHECK (VALUE ->> 'kind' NOT IN ('correction', 'reversal', 'ruling') OR (VALUE @@ '$.entry.type() == "string" && $.entry != ""') IS TRUE)
    CONSTRAINT combined_body_event_named CHECK (VALUE ->> 'kind' <> 'result' OR (VALUE ->> 'event' IN ('60m', '100m', '200m', '400m', '800m', '1000m', '1500m', '60mh', '100mh', '110mh', 'high-jump', 'pole-vault', 'long-jump', 'shot', 'discus', 'hammer', 'javelin', 'weight')) IS TRUE)
    CONSTRAINT combined_body_reason_given CHECK (VALUE ->> 'kind' NOT IN ('correction', 'reversal', 'ruling', 'reopening') OR (jsonb_typeof(VALUE -> 'reason') = 'string' AND btrim(VALUE ->> 'reason') <> '' AND length(VALUE ->> 'reason') <= 1000) IS TRUE)
    CONSTRAINT combined_body_outcome_known CHECK (${PERFORMED} OR (VALUE ->> 'outcome' IN ('valid', 'NM', 'DNS', 'DNF', 'DQ')) IS TRUE)
    CONSTRAINT combined_body_mark_iff_valid CHECK (${PERFORMED} OR CASE WHEN VALUE ->> 'outcome' = 'valid' THEN (VALUE @@ '$.hundredths.type() == "number" && $.hundredths >= 1 && $.hundredths < 600000 && $.hundredths.floor() == $.hundredths') IS TRUE ELSE coalesce(jsonb_typeof(VALUE -> 'hundredths'), 'null') = 'null' END)
    CONSTRAINT combined_body_timing_of_time CHECK (${PERFORMED} OR coalesce(jsonb_typeof(VALUE -> 'timing'), 'null') = 'null' OR (VALUE ->> 'outcome' = 'valid' AND VALUE ->> 'timing' IN ('electronic', 'hand')) IS TRUE)
    CONSTRAINT combined_body_wind_of_mark CHECK (${PERFORMED} OR coalesce(jsonb_typeof(VALUE -> 'wind'), 'null') = 'null' OR (VALUE @@ '$.outcome == "valid" && (($.wind.type() == "number" && $.wind >= -999 && $.wind <= 999 && $.wind.floor() == $.wind) || $.wind == "NWI")') IS TRUE)
    CONSTRAINT combined_body_decision_known CHECK (VALUE ->> 'kind' <> 'ruling' OR (VALUE ->> 'decision' IN ('count', 'dismiss')) IS TRUE)
    CONSTRAINT combined_body_start_known CHECK (VALUE ->> 'kind' <> 'start' OR (VALUE ->> 'status' IN ('started', 'DNS', 'DNF')) IS TRUE)
    CONSTRAINT combined_body_from_of_giving_up CHECK (VALUE ->> 'kind' <> 'start' OR (VALUE ->> 'status' = 'DNF') = (coalesce(jsonb_typeof(VALUE -> 'from'), 'null') = 'string'))
    CONSTRAINT combined_body_incomplete_explained CHECK (VALUE ->> 'kind' <> 'sign-off' OR coalesce(jsonb_typeof(VALUE -> 'incomplete'), 'null') = 'null' OR (jsonb_typeof(VALUE -> 'incomplete') = 'string' AND btrim(VALUE ->> 'incomplete') <> '') IS TRUE)`;

const COMBINED_ENTRY = `
  CREATE TABLE combined_entry (
    organisation_id uuid NOT NULL,
    combined_event_id uuid NOT NULL,
    sequence integer NOT NULL,
    entry_id uuid NOT NULL,
    kind text NOT NULL,
    body combined_body NOT NULL,
    standing standing NOT NULL,
    verdict jsonb NOT NULL,
    authority authority NOT NULL,
    actor signature NOT NULL,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT combined_entry_pkey PRIMARY KEY (organisation_id, combined_event_id, sequence),
    CONSTRAINT combined_entry_id_unique UNIQUE (entry_id, organisation_id),
    CONSTRAINT combined_entry_event_fkey FOREIGN KEY (organisation_id, combined_event_id)
      REFERENCES combined_event (organisation_id, id),
    CONSTRAINT combined_entry_sequence_range CHECK (sequence >= 1),
    CONSTRAINT combined_entry_body_of_kind CHECK (body ->> 'kind' = kind),
    CONSTRAINT combined_entry_verdict_agrees CHECK ((verdict ->> 'standing' = standing) IS TRUE)
  )`;

const COMBINED_OFFICIAL_RESULT = `
  CREATE TABLE combined_official_result (
    organisation_id uuid NOT NULL,
    combined_event_id uuid NOT NULL,
    revision integer NOT NULL,
    sequence integer NOT NULL,
    sheet jsonb,
    result jsonb NOT NULL,
    signed_by signature NOT NULL,
    signed_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT combined_official_result_pkey PRIMARY KEY (organisation_id, combined_event_id, revision),
    CONSTRAINT combined_official_result_event_fkey FOREIGN KEY (organisation_id, combined_event_id)
      REFERENCES combined_event (organisation_id, id),
    CONSTRAINT combined_official_result_revision_range CHECK (revision >= 1),
    CONSTRAINT combined_official_result_sequence_range CHECK (sequence >= 0),
    CONSTRAINT combined_official_result_sheet_shape CHECK (jsonb_typeof(sheet) = 'object'),
    CONSTRAINT combined_official_result_result_shape CHECK (jsonb_typeof(result) = 'object'),
    CONSTRAINT combined_official_result_without_names CHECK (
      NOT jsonb_path_exists(coalesce(sheet, '{}'), '$.**.name') AND NOT jsonb_path_exists(result, '$.**.name'))
  )`;

/** A version that fell would make an old reading pass for a new one; a counter that leapt would tear the journal. */
const COUNTERS_ADVANCE = `
  CREATE FUNCTION combined_event_counters_advance() RETURNS trigger LANGUAGE plpgsql AS $function$
  BEGIN
    IF TG_OP = 'INSERT' THEN
      IF NEW.last_sequence = 0 THEN
        RETURN NEW;
      END IF;
    ELSIF NEW.last_sequence = OLD.last_sequence AND NEW.version >= OLD.version THEN
      RETURN NEW;
    ELSIF NEW.last_sequence = OLD.last_sequence + 1 AND NEW.version > OLD.version THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'combined event %: version never falls, and the journal is counted one entry at a time', NEW.id
      USING ERRCODE = 'check_violation', CONSTRAINT = 'combined_event_counters_advance', TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** The combined event counts an entry first; the entry then takes that number, and the one before must be there. */
const ENTRY_IN_SEQUENCE = `
  CREATE FUNCTION combined_entry_in_sequence() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  DECLARE
    counted integer;
  BEGIN
    SELECT last_sequence INTO counted FROM combined_event
     WHERE organisation_id = NEW.organisation_id AND id = NEW.combined_event_id;
    IF NOT FOUND THEN
      RETURN NEW;
    END IF;
    IF NEW.sequence = counted AND (counted = 1 OR EXISTS (
      SELECT FROM combined_entry
       WHERE organisation_id = NEW.organisation_id AND combined_event_id = NEW.combined_event_id
         AND sequence = NEW.sequence - 1)) THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'journal of combined event %: entry % does not follow the last one',
      NEW.combined_event_id, NEW.sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** Looked at when the transaction ends: what was counted must have been written. */
const COUNTED_IS_THERE = `
  CREATE FUNCTION combined_event_counted_entry_is_there() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  BEGIN
    IF EXISTS (
      SELECT FROM combined_entry
       WHERE organisation_id = NEW.organisation_id AND combined_event_id = NEW.id AND sequence = NEW.last_sequence) THEN
      RETURN NULL;
    END IF;
    RAISE EXCEPTION 'combined event %: entry % was counted and not written', NEW.id, NEW.last_sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** Revisions follow one another, none counts less of the journal than the one before, none more than there is. */
const RESULT_IN_SEQUENCE = `
  CREATE FUNCTION combined_official_result_in_sequence() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  DECLARE
    last_revision integer;
    signed_to integer;
    counted integer;
  BEGIN
    SELECT revision, sequence INTO last_revision, signed_to FROM combined_official_result
     WHERE organisation_id = NEW.organisation_id AND combined_event_id = NEW.combined_event_id
     ORDER BY revision DESC LIMIT 1;
    SELECT last_sequence INTO counted FROM combined_event
     WHERE organisation_id = NEW.organisation_id AND id = NEW.combined_event_id;
    IF NOT FOUND THEN
      RETURN NEW;
    END IF;
    IF NEW.revision = coalesce(last_revision, 0) + 1
       AND NEW.sequence BETWEEN coalesce(signed_to, 0) AND counted THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'official result of combined event %: revision % does not follow the last one',
      NEW.combined_event_id, NEW.revision
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

const GRANTS = `
  DO $block$
  BEGIN
    IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
      GRANT SELECT, INSERT ON combined_entry, combined_official_result TO sectorline_app;
    END IF;
  END
  $block$`;
