import { timeText } from '../../labels/format.js';
import { o, oCode } from '../../labels/office/words.js';
import { useOffice } from '../office.js';
import { trialsOf, type Competition, type Protest, type Step } from './competition-now.js';
import { DecideProtest } from './DecideProtest.jsx';
import { LodgeProtest } from './LodgeProtest.jsx';

/** Every protest with what was done about it, the open ones first; and the next step of each. */
export function Protests({ competition }: { readonly competition: Competition }) {
  const protests = [...competition.protests].sort(
    (a, b) => Number(b.next.length > 0) - Number(a.next.length > 0),
  );
  return (
    <section class="panel">
      <h3>{o('protests.title', { count: protests.length })}</h3>
      <ul class="list">
        {protests.map((protest) => (
          <li key={protest.id} class="card">
            <ProtestCard competition={competition} protest={protest} />
          </li>
        ))}
      </ul>
      <LodgeProtest competition={competition} />
    </section>
  );
}

function ProtestCard({
  competition,
  protest,
}: {
  readonly competition: Competition;
  readonly protest: Protest;
}) {
  const office = useOffice();
  const { standing, form, ground, lodgedBy, lodgedAt, timeliness, reason, deposit, isDepositPaid } = protest;
  return (
    <>
      <p class="state">
        {oCode('protest', standing)}
        {timeliness !== 'IN_TIME' && ` · ${oCode('timeliness', timeliness)}`}
      </p>
      <p>
        {aboutWhat(competition, protest)} {reason}
      </p>
      <p class="hint">
        {lodgedBy}, {timeText(Date.parse(lodgedAt))} · {oCode('form', form)} · {oCode('ground', ground)}
        {deposit !== null && ` · ${o(isDepositPaid ? 'deposit.paid' : 'deposit.due', { deposit })}`}
      </p>
      {protest.steps.length > 0 && (
        <ol class="steps">
          {protest.steps.map((step) => (
            <li key={step.id}>{stepText(step)}</li>
          ))}
        </ol>
      )}
      {protest.next.length > 0 && (
        <DecideProtest competition={competition} protest={protest} mayDecide={office.mayDecide} />
      )}
    </>
  );
}

/** Whose trial, or who. */
function aboutWhat({ table }: Competition, { competitor, trial }: Protest): string {
  for (const row of table.rows) {
    const found = trialsOf(row).find(({ entry }) => entry === trial);
    if (found) return `${row.bib} ${row.name}, ${found.where}: ${found.cell} –`;
    if (row.competitor === competitor && trial === null) return `${row.bib} ${row.name} –`;
  }
  return '';
}

function stepText({ kind, outcome, by, at, reason, rule, deposit, timeliness }: Step): string {
  return [
    `${timeText(Date.parse(at))} ${oCode('step', kind)}`,
    outcome === null ? null : oCode('protest', outcome),
    by,
    reason,
    rule,
    deposit === null ? null : oCode('deposit', deposit),
    timeliness === 'IN_TIME' ? null : oCode('timeliness', timeliness),
  ]
    .filter((part) => part !== null)
    .join(' · ');
}
