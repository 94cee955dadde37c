import { competitions, soundness, type Unsound } from '#persistence';
import type { Database } from '../platform/database/database.js';
import { checkCompetition, type Checked, type SecondCount } from './check-competition.js';
import type { Aspect, Finding } from './finding.js';
import { compareWithLive, type LiveServer } from './live-tables.js';

export interface CheckOptions {
  readonly organisationId: string;
  /** Only the competitions of this meet. */
  readonly meetId: string | null;
  readonly secondCount: SecondCount | null;
  readonly live: LiveServer | null;
}

export interface Report {
  readonly competitions: number;
  /** What was looked at, with how often; what could not be is not in it. */
  readonly looked: ReadonlyMap<Aspect, number>;
  readonly findings: readonly Finding[];
}

/** A competition that is going on changes while it is looked at: so often it is read again. */
const TRIES = 5;

/** Looks at everything that is stored, and changes nothing. */
export async function check(database: Database, options: CheckOptions): Promise<Report> {
  const { organisationId, meetId, secondCount, live } = options;
  const findings: Finding[] = [];
  const looked = new Map<Aspect, number>();
  const seen = (aspect: Aspect, count = 1): void =>
    void looked.set(aspect, (looked.get(aspect) ?? 0) + count);
  const ids = await database.snapshot(async (at) => {
    const stored: [Aspect, Unsound[]][] = [
      ['guards', await soundness.guardsOff(at)],
      ['orphans', await soundness.orphans(at)],
      ['sequence', await soundness.gapsInJournals(at, organisationId)],
      ['reasons', await soundness.unexplainedDecisions(at, organisationId)],
      ['briefs', await soundness.otherwiseInBrief(at, organisationId)],
    ];
    for (const [aspect, unsound] of stored) {
      seen(aspect);
      findings.push(...unsound.map((one) => ({ aspect, ...one })));
    }
    return competitions.idsOf(at, organisationId, meetId);
  });
  for (const id of ids) {
    const checked = await checkCompetition(database, { organisationId, id }, secondCount);
    if (!checked) continue;
    findings.push(...checked.findings);
    for (const aspect of ['briefs', 'sealed', 'archives'] as const) seen(aspect);
    if (secondCount) seen('secondCount');
    if (!live) continue;
    seen('live');
    const what = await liveDifference(database, live, checked, secondCount);
    if (what !== null)
      findings.push({ aspect: 'live', where: `competition ${id} (${checked.row.title})`, what });
  }
  return { competitions: ids.length, looked, findings };
}

async function liveDifference(
  database: Database,
  live: LiveServer,
  first: Checked,
  secondCount: SecondCount | null,
): Promise<string | null> {
  let checked: Checked | null = first;
  for (let tried = 0; checked && tried < TRIES; tried += 1) {
    const what = await compareWithLive(live, checked);
    if (what !== 'moved') return what;
    checked = await checkCompetition(database, checked.row, secondCount);
  }
  return checked && 'it changes faster than it can be compared: look again in a quiet moment';
}
