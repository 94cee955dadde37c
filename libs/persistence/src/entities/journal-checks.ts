/**
 * What a constraint can say of one journal entry's body. A check passes when it is unknown, so each ends in
 * `IS TRUE` or compares something that is never null: a missing key must fail, not slip through.
 */
const JUDGEMENT = `kind NOT IN ('attempt', 'correction')`;

function absent(key: string): string {
  return `coalesce(jsonb_typeof(body -> '${key}'), 'null') = 'null'`;
}

function wholeNumber(path: string, min: number, max: number): string {
  return `${path}.type() == "number" && ${path} >= ${min} && ${path} <= ${max} && ${path}.floor() == ${path}`;
}

function holds(predicate: string): string {
  return `(body @@ '${predicate}') IS TRUE`;
}

const WIND_READING = `(${wholeNumber('$.wind', -999, 999)}) || $.wind == "NWI"`;

const NAMES_COMPETITOR = `'attempt', 'start', 'disqualification', 'reinstatement', 'admission'`;
const NAMES_ATTEMPT = `'wind', 'correction', 'replacement'`;
const NEEDS_REASON = `'correction', 'move', 'reversal', 'replacement', 'ruling', 'disqualification', 'reinstatement', 'admission', 'order', 'reopening'`;
const KINDS = `'attempt', 'wind', 'correction', 'move', 'reversal', 'replacement', 'ruling', 'start', 'disqualification', 'reinstatement', 'admission', 'order', 'sign-off', 'reopening'`;

export const JOURNAL_CHECKS = {
  journal_entry_sequence_range: `sequence >= 1`,
  journal_entry_kind_known: `kind IN (${KINDS})`,
  journal_entry_body_of_kind: `(jsonb_typeof(body) = 'object' AND body ->> 'kind' = kind) IS TRUE`,
  journal_entry_standing_known: `standing IN ('accepted', 'held')`,
  journal_entry_verdict_agrees: `(verdict ->> 'standing' = standing) IS TRUE`,
  journal_entry_authority_known: `authority IN ('official', 'referee', 'director')`,
  journal_entry_actor_length: `length(actor) BETWEEN 1 AND 200`,
  journal_entry_device_length: `length(device) BETWEEN 1 AND 200`,
  journal_entry_fingerprint_form: `fingerprint ~ '^[0-9a-f]{64}$'`,
  journal_entry_competitor_named: `kind NOT IN (${NAMES_COMPETITOR}) OR ${holds('$.competitor.type() == "string" && $.competitor != ""')}`,
  journal_entry_attempt_named: `kind NOT IN (${NAMES_ATTEMPT}) OR ${holds('$.attempt.type() == "string" && $.attempt != ""')}`,
  journal_entry_entry_named: `kind NOT IN ('reversal', 'ruling') OR ${holds('$.entry.type() == "string" && $.entry != ""')}`,
  journal_entry_reason_given: `kind NOT IN (${NEEDS_REASON}) OR (jsonb_typeof(body -> 'reason') = 'string' AND btrim(body ->> 'reason') <> '' AND length(body ->> 'reason') <= 1000) IS TRUE`,
  journal_entry_round_range: `kind NOT IN ('attempt', 'order') OR ${holds(wholeNumber('$.round', 1, 12))}`,
  journal_entry_outcome_known: `${JUDGEMENT} OR (body ->> 'outcome' IN ('valid', 'unmeasured', 'foul', 'pass', 'retired')) IS TRUE`,
  journal_entry_mark_iff_valid: `${JUDGEMENT} OR CASE WHEN body ->> 'outcome' = 'valid' THEN ${holds(wholeNumber('$.mark', 1, 99999))} ELSE ${absent('mark')} END`,
  journal_entry_wind_of_trial: `${JUDGEMENT} OR ${absent('wind')} OR ${holds(`($.outcome == "valid" || $.outcome == "foul") && (${WIND_READING} || $.wind == "pending")`)}`,
  journal_entry_wind_reading: `kind <> 'wind' OR ${holds(WIND_READING)}`,
  journal_entry_foul_of_foul: `${JUDGEMENT} OR ${absent('foul')} OR (body ->> 'outcome' = 'foul' AND body ->> 'foul' ~ '^[A-Z]{2,16}$') IS TRUE`,
  journal_entry_protest_of_foul: `${JUDGEMENT} OR ${absent('protested')} OR ${holds(`$.outcome == "foul" && ${wholeNumber('$.protested', 1, 99999)}`)}`,
  journal_entry_implement_range: `${JUDGEMENT} OR ${absent('implementGrams')} OR ${holds(wholeNumber('$.implementGrams', 1, 100000))}`,
  journal_entry_decision_known: `kind <> 'ruling' OR (body ->> 'decision' IN ('count', 'dismiss')) IS TRUE`,
  journal_entry_start_known: `kind <> 'start' OR (body ->> 'status' IN ('DNS', 'started')) IS TRUE`,
  journal_entry_rule_named: `kind <> 'disqualification' OR (jsonb_typeof(body -> 'rule') = 'string' AND btrim(body ->> 'rule') <> '') IS TRUE`,
  journal_entry_admitted_by_known: `kind <> 'admission' OR (body ->> 'admittedBy' IN ('R', 'J', 'D')) IS TRUE`,
  journal_entry_admission_after: `kind <> 'admission' OR ${absent('after')} OR ${holds(wholeNumber('$.after', 1, 12))}`,
  journal_entry_incomplete_explained: `kind <> 'sign-off' OR ${absent('incomplete')} OR (jsonb_typeof(body -> 'incomplete') = 'string' AND btrim(body ->> 'incomplete') <> '') IS TRUE`,
  journal_entry_moves_listed: `kind <> 'move' OR ${holds('$.moves.type() == "array" && $.moves.size() >= 1')}`,
  journal_entry_order_listed: `kind <> 'order' OR ${holds('$.competitors.type() == "array"')}`,
} as const;
