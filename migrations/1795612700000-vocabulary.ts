import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What a value may be, said once for all tables. Domains rather than checks of the tables: a server compiles a
 * domain once for each session, and a table's checks again for every statement (measured: 0.6 ms for each entry of
 * the journal, against 0.1 ms without).
 *
 * A check passes when it is unknown, so those that read JSON end in IS TRUE: a missing key must fail, not slip through.
 */
export class Vocabulary1795612700000 implements MigrationInterface {
  name = 'Vocabulary1795612700000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(IS_RISING);
    for (const domain of DOMAINS) await runner.query(domain);
    await runner.query(JOURNAL_BODY);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP DOMAIN journal_body, scoring, vertical_terms, plan_overrides, qualifying, implement_grams, fingerprint, standing, authority, competition_status, mark_unit, stage, event_code, rule_set_code, name_display, sex, signature, label, person_name, title`);
    await runner.query(`DROP FUNCTION is_rising(jsonb)`);
  }
}

/** Whether each number of a list is greater than the one before. No path expression can look at two elements. */
const IS_RISING = `
  CREATE FUNCTION is_rising(list jsonb) RETURNS boolean LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE AS $function$
    SELECT coalesce(bool_and(value > before), true)
      FROM (SELECT value, lag(value) OVER (ORDER BY place) AS before
              FROM jsonb_array_elements(list) WITH ORDINALITY AS each (value, place)) AS pairs
  $function$`;

const DOMAINS = [
  `
  CREATE DOMAIN title AS text
    CONSTRAINT title_length CHECK (length(VALUE) <= 200 AND btrim(VALUE) <> '')`,
  `
  CREATE DOMAIN person_name AS text
    CONSTRAINT person_name_length CHECK (length(VALUE) <= 120 AND btrim(VALUE) <> '')`,
  `
  CREATE DOMAIN label AS text
    CONSTRAINT label_length CHECK (length(VALUE) BETWEEN 1 AND 64)`,
  `
  CREATE DOMAIN signature AS text
    CONSTRAINT signature_length CHECK (length(VALUE) BETWEEN 1 AND 200)`,
  `
  CREATE DOMAIN sex AS text
    CONSTRAINT sex_known CHECK (VALUE IN ('W', 'M', 'X'))`,
  `
  CREATE DOMAIN name_display AS text
    CONSTRAINT name_display_known CHECK (VALUE IN ('full', 'initials', 'bib'))`,
  `
  CREATE DOMAIN rule_set_code AS text
    CONSTRAINT rule_set_code_known CHECK (VALUE IN ('WA', 'NFHS', 'NCAA', 'USATF', 'WMA'))`,
  `
  CREATE DOMAIN event_code AS text
    CONSTRAINT event_code_known CHECK (VALUE IN (
    'discus', 'shot', 'hammer', 'javelin', 'weight', 'long-jump', 'triple-jump', 'high-jump', 'pole-vault'))`,
  `
  CREATE DOMAIN stage AS text
    CONSTRAINT stage_known CHECK (VALUE IN ('final', 'qualification'))`,
  `
  CREATE DOMAIN mark_unit AS text
    CONSTRAINT mark_unit_known CHECK (VALUE IN ('cm', 'qin'))`,
  `
  CREATE DOMAIN competition_status AS text
    CONSTRAINT competition_status_known CHECK (VALUE IN ('draft', 'open', 'official'))`,
  `
  CREATE DOMAIN authority AS text
    CONSTRAINT authority_known CHECK (VALUE IN ('official', 'referee', 'director'))`,
  `
  CREATE DOMAIN standing AS text
    CONSTRAINT standing_known CHECK (VALUE IN ('accepted', 'held'))`,
  `
  CREATE DOMAIN fingerprint AS text
    CONSTRAINT fingerprint_form CHECK (VALUE ~ '^[0-9a-f]{64}$')`,
  `
  CREATE DOMAIN implement_grams AS integer
    CONSTRAINT implement_grams_range CHECK (VALUE BETWEEN 1 AND 100000)`,
  `
  CREATE DOMAIN qualifying AS jsonb
    CONSTRAINT qualifying_standard_range CHECK (VALUE IS NULL OR (VALUE @@ '$.standard.type() == "number" && $.standard >= 1 && $.standard <= 99999 && $.standard.floor() == $.standard') IS TRUE)
    CONSTRAINT qualifying_fill_range CHECK (VALUE IS NULL OR (VALUE @@ '$.fill.type() == "number" && $.fill >= 0 && $.fill <= 2000 && $.fill.floor() == $.fill') IS TRUE)`,
  `
  CREATE DOMAIN plan_overrides AS jsonb
    CONSTRAINT plan_overrides_keys CHECK (jsonb_typeof(VALUE) = 'object' AND VALUE - '{rounds,cuts,cutTies,reorderAfter,reorder}'::text[] = '{}')
    CONSTRAINT plan_overrides_rounds CHECK (NOT VALUE ? 'rounds' OR (VALUE @@ '$.rounds.type() == "number" && $.rounds >= 1 && $.rounds <= 12 && $.rounds.floor() == $.rounds') IS TRUE)
    CONSTRAINT plan_overrides_cuts CHECK (NOT VALUE ? 'cuts' OR jsonb_typeof(VALUE -> 'cuts') = 'array')
    CONSTRAINT plan_overrides_cut_ties CHECK (NOT VALUE ? 'cutTies' OR VALUE -> 'cutTies' IN ('"next-best"', '"mark"'))
    CONSTRAINT plan_overrides_reorder_after CHECK (NOT VALUE ? 'reorderAfter' OR jsonb_typeof(VALUE -> 'reorderAfter') = 'array')
    CONSTRAINT plan_overrides_reorder CHECK (NOT VALUE ? 'reorder' OR VALUE -> 'reorder' IN ('"reverse"', '"leaders-first"'))`,
  `
  CREATE DOMAIN vertical_terms AS jsonb
    CONSTRAINT vertical_terms_keys CHECK (VALUE IS NULL OR (jsonb_typeof(VALUE) = 'object' AND VALUE - '{heights,combined,passGivesUp,tieForFirst}'::text[] = '{}') IS TRUE)
    CONSTRAINT vertical_terms_heights_range CHECK (VALUE IS NULL OR (VALUE @@ 'strict $.heights.type() == "array" && $.heights.size() >= 1 && !(exists($.heights[*] ? (@.type() != "number" || @ < 1 || @ > 99999 || @.floor() != @)))') IS TRUE)
    CONSTRAINT vertical_terms_heights_rising CHECK (VALUE IS NULL OR jsonb_typeof(VALUE -> 'heights') IS DISTINCT FROM 'array' OR is_rising(VALUE -> 'heights'))
    CONSTRAINT vertical_terms_combined_known CHECK (VALUE IS NULL OR (jsonb_typeof(VALUE -> 'combined') = 'boolean') IS TRUE)
    CONSTRAINT vertical_terms_pass_known CHECK (VALUE IS NULL OR (VALUE ->> 'passGivesUp' IN ('height', 'trial')) IS TRUE)
    CONSTRAINT vertical_terms_tie_known CHECK (VALUE IS NULL OR (VALUE ->> 'tieForFirst' IN ('jump-off', 'shared')) IS TRUE)`,
  `
  CREATE DOMAIN scoring AS jsonb
    CONSTRAINT scoring_shape CHECK (jsonb_typeof(VALUE) = 'object')`,
];

/** What officials may say, by the kind of entry. */
const JOURNAL_BODY = `
  CREATE DOMAIN journal_body AS jsonb
    CONSTRAINT journal_body_kind_known CHECK ((jsonb_typeof(VALUE) = 'object' AND VALUE ->> 'kind' IN ('attempt', 'wind', 'correction', 'move', 'order', 'jump', 'jump-off', 'jump-correction', 'jump-move', 'jump-order', 'bar', 'uprights', 'jump-off-declined', 'reversal', 'replacement', 'ruling', 'start', 'disqualification', 'reinstatement', 'admission', 'sign-off', 'reopening')) IS TRUE)
    CONSTRAINT journal_body_competitor_named CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'jump', 'jump-off', 'uprights', 'start', 'disqualification', 'reinstatement', 'admission') OR (VALUE @@ '$.competitor.type() == "string" && $.competitor != ""') IS TRUE)
    CONSTRAINT journal_body_attempt_named CHECK (VALUE ->> 'kind' NOT IN ('wind', 'correction', 'jump-correction', 'replacement') OR (VALUE @@ '$.attempt.type() == "string" && $.attempt != ""') IS TRUE)
    CONSTRAINT journal_body_entry_named CHECK (VALUE ->> 'kind' NOT IN ('reversal', 'ruling') OR (VALUE @@ '$.entry.type() == "string" && $.entry != ""') IS TRUE)
    CONSTRAINT journal_body_reason_given CHECK (VALUE ->> 'kind' NOT IN ('correction', 'move', 'jump-correction', 'jump-move', 'jump-order', 'jump-off-declined', 'reversal', 'replacement', 'ruling', 'disqualification', 'reinstatement', 'admission', 'order', 'reopening') OR (jsonb_typeof(VALUE -> 'reason') = 'string' AND btrim(VALUE ->> 'reason') <> '' AND length(VALUE ->> 'reason') <= 1000) IS TRUE)
    CONSTRAINT journal_body_round_range CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'order') OR (VALUE @@ '$.round.type() == "number" && $.round >= 1 && $.round <= 12 && $.round.floor() == $.round') IS TRUE)
    CONSTRAINT journal_body_outcome_known CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR (VALUE ->> 'outcome' IN ('valid', 'unmeasured', 'foul', 'pass', 'retired')) IS TRUE)
    CONSTRAINT journal_body_mark_iff_valid CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR CASE WHEN VALUE ->> 'outcome' = 'valid' THEN (VALUE @@ '$.mark.type() == "number" && $.mark >= 1 && $.mark <= 99999 && $.mark.floor() == $.mark') IS TRUE ELSE coalesce(jsonb_typeof(VALUE -> 'mark'), 'null') = 'null' END)
    CONSTRAINT journal_body_wind_of_trial CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(VALUE -> 'wind'), 'null') = 'null' OR (VALUE @@ '($.outcome == "valid" || $.outcome == "foul") && (($.wind.type() == "number" && $.wind >= -999 && $.wind <= 999 && $.wind.floor() == $.wind) || $.wind == "NWI" || $.wind == "pending")') IS TRUE)
    CONSTRAINT journal_body_wind_reading CHECK (VALUE ->> 'kind' <> 'wind' OR (VALUE @@ '($.wind.type() == "number" && $.wind >= -999 && $.wind <= 999 && $.wind.floor() == $.wind) || $.wind == "NWI"') IS TRUE)
    CONSTRAINT journal_body_foul_of_foul CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(VALUE -> 'foul'), 'null') = 'null' OR (VALUE ->> 'outcome' = 'foul' AND VALUE ->> 'foul' ~ '^[A-Z]{2,16}$') IS TRUE)
    CONSTRAINT journal_body_protest_of_foul CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(VALUE -> 'protested'), 'null') = 'null' OR (VALUE @@ '$.outcome == "foul" && $.protested.type() == "number" && $.protested >= 1 && $.protested <= 99999 && $.protested.floor() == $.protested') IS TRUE)
    CONSTRAINT journal_body_implement_range CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR coalesce(jsonb_typeof(VALUE -> 'implementGrams'), 'null') = 'null' OR (VALUE @@ '$.implementGrams.type() == "number" && $.implementGrams >= 1 && $.implementGrams <= 100000 && $.implementGrams.floor() == $.implementGrams') IS TRUE)
    CONSTRAINT journal_body_height_range CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-order', 'bar') OR (VALUE @@ '$.height.type() == "number" && $.height >= 1 && $.height <= 99999 && $.height.floor() == $.height') IS TRUE)
    CONSTRAINT journal_body_trial_range CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-order') OR (VALUE @@ '$.trial.type() == "number" && $.trial >= 1 && $.trial <= 999 && $.trial.floor() == $.trial') IS TRUE)
    CONSTRAINT journal_body_jump_outcome_known CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-correction') OR (VALUE ->> 'outcome' IN ('cleared', 'failed', 'passed', 'retired')) IS TRUE)
    CONSTRAINT journal_body_foul_of_failure CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-correction') OR coalesce(jsonb_typeof(VALUE -> 'foul'), 'null') = 'null' OR (VALUE ->> 'outcome' = 'failed' AND VALUE ->> 'foul' ~ '^[A-Z]{2,16}$') IS TRUE)
    CONSTRAINT journal_body_incident_of_jump CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-correction') OR coalesce(jsonb_typeof(VALUE -> 'incident'), 'null') = 'null' OR (VALUE ->> 'outcome' IN ('cleared', 'failed') AND VALUE ->> 'incident' ~ '^[A-Z][A-Z_]{1,39}$') IS TRUE)
    CONSTRAINT journal_body_protest_of_failure CHECK (VALUE ->> 'kind' NOT IN ('jump', 'jump-off', 'jump-correction') OR (VALUE @@ '$.protested == false || ($.protested == true && $.outcome == "failed")') IS TRUE)
    CONSTRAINT journal_body_left_out_listed CHECK (VALUE ->> 'kind' <> 'bar' OR (VALUE @@ 'strict $.leavesOut.type() == "array" && !(exists($.leavesOut[*] ? (@.type() != "number" || @ < 1 || @ > 99999 || @.floor() != @)))') IS TRUE)
    CONSTRAINT journal_body_uprights_range CHECK (VALUE ->> 'kind' <> 'uprights' OR (VALUE @@ '$.behindZeroCm.type() == "number" && $.behindZeroCm >= 0 && $.behindZeroCm <= 200 && $.behindZeroCm.floor() == $.behindZeroCm') IS TRUE)
    CONSTRAINT journal_body_decision_known CHECK (VALUE ->> 'kind' <> 'ruling' OR (VALUE ->> 'decision' IN ('count', 'dismiss')) IS TRUE)
    CONSTRAINT journal_body_start_known CHECK (VALUE ->> 'kind' <> 'start' OR (VALUE ->> 'status' IN ('DNS', 'started')) IS TRUE)
    CONSTRAINT journal_body_rule_named CHECK (VALUE ->> 'kind' <> 'disqualification' OR (jsonb_typeof(VALUE -> 'rule') = 'string' AND btrim(VALUE ->> 'rule') <> '') IS TRUE)
    CONSTRAINT journal_body_admitted_by_known CHECK (VALUE ->> 'kind' <> 'admission' OR (VALUE ->> 'admittedBy' IN ('R', 'J', 'D')) IS TRUE)
    CONSTRAINT journal_body_admission_after CHECK (VALUE ->> 'kind' <> 'admission' OR coalesce(jsonb_typeof(VALUE -> 'after'), 'null') = 'null' OR (VALUE @@ '$.after.type() == "number" && $.after >= 1 && $.after <= 12 && $.after.floor() == $.after') IS TRUE)
    CONSTRAINT journal_body_moves_listed CHECK (VALUE ->> 'kind' NOT IN ('move', 'jump-move') OR (VALUE @@ '$.moves.type() == "array" && $.moves.size() >= 1') IS TRUE)
    CONSTRAINT journal_body_order_listed CHECK (VALUE ->> 'kind' NOT IN ('order', 'jump-order') OR (VALUE @@ '$.competitors.type() == "array"') IS TRUE)
    CONSTRAINT journal_body_incomplete_explained CHECK (VALUE ->> 'kind' <> 'sign-off' OR coalesce(jsonb_typeof(VALUE -> 'incomplete'), 'null') = 'null' OR (jsonb_typeof(VALUE -> 'incomplete') = 'string' AND btrim(VALUE ->> 'incomplete') <> '') IS TRUE)`;
