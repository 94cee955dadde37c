/*
 * What was done at a meet lies in many tables, each of which is only added to. Here every one of them is read as lines
 * of one form. $1: the organisation, $2: the meet.
 */

interface Source {
  readonly from: string;
  readonly at: string;
  readonly id: string;
  readonly kind: string;
  readonly actor: string;
  /** As JSON: what it was entered as. */
  readonly after: string;
  readonly where: string;
  readonly competition?: string;
  readonly competitor?: string;
  /** The entry that it changes or decides. */
  readonly target?: string;
  readonly sequence?: string;
  readonly standing?: string;
  readonly authority?: string;
  readonly device?: string;
  readonly deviceAt?: string;
  readonly reason?: string;
  /** As JSON: what it took the place of. */
  readonly before?: string;
}

function select(source: Source): string {
  const { competition, competitor, target, sequence, standing, authority, device, deviceAt } = source;
  return `
    SELECT ${source.at} AS at, (${source.id})::text AS id, ${source.kind} AS kind,
           (${competition ?? 'NULL'})::uuid AS "competitionId", (${competitor ?? 'NULL'})::text AS competitor,
           (${target ?? 'NULL'})::text AS target, (${sequence ?? 'NULL'})::integer AS sequence,
           (${standing ?? 'NULL'})::text AS standing, (${source.actor})::text AS actor,
           (${authority ?? 'NULL'})::text AS authority, (${device ?? 'NULL'})::text AS device,
           (${deviceAt ?? 'NULL'})::timestamptz AS "deviceAt", (${source.reason ?? 'NULL'})::text AS reason,
           (${source.after})::jsonb AS after, (${source.before ?? 'NULL'})::jsonb AS before
      FROM ${source.from} WHERE ${source.where}`;
}

/** Of a table whose rows belong to a competition. */
function ofCompetitions(alias: string): string {
  return `${alias}.organisation_id = $1 AND ${alias}.competition_id IN
           (SELECT id FROM competition WHERE organisation_id = $1 AND meet_id = $2)`;
}

const ofMeet = (alias: string): string => `${alias}.organisation_id = $1 AND ${alias}.meet_id = $2`;
const WRITTEN = (alias: string) => ({
  actor: `${alias}.actor`,
  authority: `${alias}.authority`,
  device: `${alias}.device`,
  deviceAt: `${alias}.device_at`,
});
/** What the revision before said. */
const lag = (what: string, by: string, alias: string): string =>
  `lag(${what}) OVER (PARTITION BY ${alias}.${by} ORDER BY ${alias}.revision)`;

const GRANT = `jsonb_build_object('role', g.role, 'person', p.display_name, 'competition', g.competition_id)`;
const CREW = `jsonb_build_object('members', c.members)`;
const SLOTS = `jsonb_build_object('slots', t.slots)`;
const SCORING = `to_jsonb(s) - '{organisation_id,meet_id,set_by,set_at}'::text[]`;
const GRANTS = `role_grant g JOIN person p ON p.organisation_id = g.organisation_id AND p.id = g.person_id`;
const GRANTED = `g.organisation_id = $1 AND (g.meet_id = $2 OR g.competition_id IN
  (SELECT id FROM competition WHERE organisation_id = $1 AND meet_id = $2))`;

const SOURCES: readonly Source[] = [
  {
    ...{ from: 'journal_entry e', at: 'e.recorded_at', id: 'e.entry_id', kind: 'e.kind', ...WRITTEN('e') },
    ...{ competition: 'e.competition_id', competitor: `e.body ->> 'competitor'`, sequence: 'e.sequence' },
    ...{ target: `coalesce(e.body ->> 'attempt', e.body ->> 'entry')`, standing: 'e.standing' },
    ...{ reason: `e.body ->> 'reason'`, after: 'e.body', where: ofCompetitions('e') },
  },
  {
    from: 'combined_entry e JOIN combined_event v ON v.organisation_id = e.organisation_id AND v.id = e.combined_event_id',
    ...{ at: 'e.recorded_at', id: 'e.entry_id', kind: `'combined-' || e.kind`, ...WRITTEN('e') },
    ...{ standing: 'e.standing', reason: `e.body ->> 'reason'`, target: `e.body ->> 'entry'` },
    ...{ after: `e.body || jsonb_build_object('event', v.title)`, where: ofMeet('v') },
  },
  {
    from: 'combined_request r JOIN combined_event v ON v.organisation_id = r.organisation_id AND v.id = r.combined_event_id',
    ...{ at: 'r.asked_at', id: 'r.id', kind: `'combined-asked-' || r.kind`, actor: 'r.asked_by' },
    ...{ authority: 'r.authority', reason: 'r.reason', where: ofMeet('v') },
    after: `jsonb_build_object('event', v.title, 'version', r.version)`,
  },
  {
    ...{
      from: 'result_posting r',
      at: 'r.recorded_at',
      id: 'r.id',
      kind: `'result-posting'`,
      ...WRITTEN('r'),
    },
    ...{ competition: 'r.competition_id', reason: 'r.incomplete', where: ofCompetitions('r') },
    after: `jsonb_build_object('postedAt', r.posted_at, 'place', r.place)`,
  },
  {
    ...{ from: 'protest p', at: 'p.recorded_at', id: 'p.id', kind: `'protest'`, ...WRITTEN('p') },
    ...{ competition: 'p.competition_id', competitor: 'p.competitor_id', target: 'p.attempt_id' },
    ...{ reason: 'p.reason', where: ofCompetitions('p') },
    after: `jsonb_build_object('form', p.form, 'ground', p.ground, 'lodgedBy', p.lodged_by, 'lodgedAt', p.lodged_at,
            'deposit', p.deposit, 'timeliness', p.timeliness)`,
  },
  {
    from: 'protest_step s JOIN protest p ON p.organisation_id = s.organisation_id AND p.id = s.protest_id',
    ...{ at: 's.recorded_at', id: 's.id', kind: `'protest-' || s.kind`, ...WRITTEN('s') },
    ...{ competition: 'p.competition_id', competitor: 'p.competitor_id', target: 'p.id' },
    ...{ reason: 's.reason', where: ofCompetitions('p') },
    after: `jsonb_build_object('outcome', s.outcome, 'by', s.done_by, 'rule', s.rule, 'deposit', s.deposit)`,
  },
  {
    ...{ from: 'decision_request d', at: 'd.asked_at', id: 'd.id', kind: `'asked-' || d.kind` },
    ...{ actor: 'd.asked_by', authority: 'd.authority', competition: 'd.competition_id', reason: 'd.reason' },
    ...{ after: `jsonb_build_object('version', d.version)`, where: ofCompetitions('d') },
  },
  {
    from: 'decision_confirmation w JOIN decision_request d ON d.organisation_id = w.organisation_id AND d.id = w.request_id',
    ...{ at: 'w.confirmed_at', id: 'd.id', kind: `'confirmed-' || d.kind`, actor: 'w.confirmed_by' },
    ...{
      authority: 'w.authority',
      competition: 'd.competition_id',
      target: 'w.entry_id',
      reason: 'd.reason',
    },
    ...{ after: `jsonb_build_object('askedBy', d.asked_by)`, where: ofCompetitions('d') },
  },
  {
    ...{ from: 'record_decision r', at: 'r.decided_at', id: 'r.id', kind: `'record-decision'` },
    ...{
      actor: 'r.decided_by',
      authority: 'r.authority',
      competition: 'r.competition_id',
      reason: 'r.reason',
    },
    ...{ competitor: 'r.competitor_id', target: 'r.attempt_id', where: ofCompetitions('r') },
    after: `jsonb_build_object('kind', r.kind, 'decision', r.decision, 'mark', r.mark, 'despite', r.despite)`,
  },
  {
    ...{ from: 'crew c', at: 'c.set_at', id: `c.competition_id || ':' || c.revision`, kind: `'crew'` },
    ...{ actor: 'c.set_by', competition: 'c.competition_id', where: ofCompetitions('c') },
    ...{ after: CREW, before: lag(CREW, 'competition_id', 'c') },
  },
  {
    ...{ from: 'timetable t', at: 't.set_at', id: `t.meet_id || ':' || t.revision`, kind: `'timetable'` },
    ...{ actor: 't.set_by', reason: 't.reason', where: ofMeet('t') },
    ...{ after: SLOTS, before: lag(SLOTS, 'meet_id', 't') },
  },
  {
    ...{ from: 'meet_scoring s', at: 's.set_at', id: `s.meet_id || ':' || s.revision`, kind: `'scoring'` },
    ...{ actor: 's.set_by', where: ofMeet('s'), after: SCORING, before: lag(SCORING, 'meet_id', 's') },
  },
  {
    from: 'entered_result r LEFT JOIN entered_result o ON o.organisation_id = r.organisation_id AND o.id = r.replaces_id',
    ...{ at: 'r.entered_at', id: 'r.id', kind: `'entered-result'`, actor: 'r.entered_by' },
    ...{ authority: 'r.authority', reason: 'r.reason', target: 'r.replaces_id', where: ofMeet('r') },
    after: `jsonb_build_object('title', r.title, 'lines', r.lines)`,
    before: `CASE WHEN o.id IS NOT NULL THEN jsonb_build_object('title', o.title, 'lines', o.lines) END`,
  },
  {
    ...{ from: 'draw d', at: 'd.drawn_at', id: 'd.id', kind: `'draw'`, actor: 'd.drawn_by' },
    ...{ competition: 'd.competition_id', reason: 'd.reason', where: ofCompetitions('d') },
    after: `jsonb_build_object('method', d.method, 'seed', d.seed, 'number', d.number)`,
  },
  {
    from: 'draw_amendment a JOIN draw d ON d.organisation_id = a.organisation_id AND d.id = a.draw_id',
    ...{ at: 'a.made_at', id: `a.draw_id || ':' || a.number`, kind: `'draw-amendment'`, actor: 'a.made_by' },
    ...{ competition: 'd.competition_id', target: 'd.id', where: ofCompetitions('d') },
    after: `jsonb_build_object('kind', a.kind, 'lines', a.lines)`,
  },
  {
    ...{ from: GRANTS, at: 'g.given_at', id: 'g.id', kind: `'role'`, actor: 'g.given_by', where: GRANTED },
    ...{ competition: 'g.competition_id', reason: 'g.reason', after: GRANT },
  },
  {
    from: `${GRANTS} JOIN role_revocation r ON r.organisation_id = g.organisation_id AND r.grant_id = g.id`,
    ...{ at: 'r.revoked_at', id: 'g.id', kind: `'role-taken'`, actor: 'r.revoked_by', where: GRANTED },
    ...{ competition: 'g.competition_id', reason: 'r.reason', before: GRANT, after: 'NULL' },
  },
  {
    ...{ from: 'device_link l', at: 'l.made_at', id: 'l.id', kind: `'device-link'`, actor: 'l.made_by' },
    ...{ competition: 'l.competition_id', where: ofMeet('l') },
    after: `jsonb_build_object('label', l.label, 'devices', l.devices, 'until', l.ends_at)`,
  },
  {
    from: 'device_link_revocation r JOIN device_link l ON l.organisation_id = r.organisation_id AND l.id = r.link_id',
    ...{ at: 'r.revoked_at', id: 'l.id', kind: `'device-link-ended'`, actor: 'r.revoked_by' },
    ...{ competition: 'l.competition_id', reason: 'r.reason', where: ofMeet('l') },
    ...{ before: `jsonb_build_object('label', l.label)`, after: 'NULL' },
  },
  {
    ...{ from: 'inspection i', at: 'i.inspected_at', id: 'i.id', kind: `'implement-' || i.kind` },
    ...{ actor: 'i.inspected_by', authority: 'i.authority', device: 'i.device', deviceAt: 'i.device_at' },
    ...{ competition: 'i.competition_id', target: 'i.attempt_id', reason: 'i.reason', where: ofMeet('i') },
    after: `jsonb_build_object('outcome', i.outcome, 'grams', i.grams, 'findings', i.findings, 'note', i.note)`,
  },
  {
    from: 'check_in i JOIN competitor k ON k.organisation_id = i.organisation_id AND k.id = i.competitor_id',
    ...{
      at: 'i.recorded_at',
      id: 'i.id',
      kind: `'check-in'`,
      actor: 'i.entered_by',
      authority: 'i.authority',
    },
    ...{ device: 'i.device', deviceAt: 'i.device_at', competition: 'k.competition_id' },
    ...{ competitor: 'k.id', reason: 'i.note', where: ofCompetitions('k') },
    after: `jsonb_build_object('isPresent', i.is_present, 'isLate', i.is_late)`,
  },
];

/** Every line of a meet, in no order. */
export const AUDIT_LINES = SOURCES.map(select).join('\n    UNION ALL');
