import { timeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { a } from '../../labels/account/words.js';
import { o } from '../../labels/office/words.js';
import { slotOf, type CompetitionNow, type MeetNow } from '../meet-now.js';
import { useOffice } from '../office.js';
import { useReading } from '../reading.js';
import { addressOf } from '../../ui/route.js';
import { WAITING, waitingAt, type Waiting, type WaitingAt } from '../waiting.js';
import { StateLine } from './StateLine.jsx';

/** Every competition at one look: where it is, who is up, what waits, when and where the others report. */
export function MeetScreen() {
  const office = useOffice();
  const meet = office.meet.value;
  if (!meet) return <p>{a('reading')}</p>;
  return office.mayDecide ? <WaitingMeet meet={meet} /> : <Meet meet={meet} waiting={null} />;
}

function WaitingMeet({ meet }: { readonly meet: MeetNow }) {
  return <Meet meet={meet} waiting={useReading<Waiting>(WAITING, { id: meet.id })} />;
}

function Meet({ meet, waiting }: { readonly meet: MeetNow; readonly waiting: Waiting | null }) {
  const all = waiting && waitingAt(waiting, null);
  const { number, at } = meet.resultIssue;
  return (
    <section>
      <h2>{o('section.meet')}</h2>
      {all && <WaitingLine waiting={all} />}
      {meet.timetable?.reason && (
        <p class="notice warning">{o('times.told', { reason: meet.timetable.reason })}</p>
      )}
      {number > 1 && at !== null && (
        <p class="notice warning">{o('meet.issue', { number, time: timeText(Date.parse(at)) })}</p>
      )}
      <ul class="cards">
        {meet.competitions.map((one) => (
          <li key={one.id} class="card">
            <Card meet={meet} competition={one} />
            {waiting && <WaitingLine waiting={waitingAt(waiting, one.id)} />}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Card({ meet, competition }: { readonly meet: MeetNow; readonly competition: CompetitionNow }) {
  const { id, title, startsAt, progress, resultState } = competition;
  const { phase, round, remaining, up, next } = progress;
  const slot = slotOf(meet, id);
  const isBefore = phase === 'not started';
  return (
    <>
      <h3>
        <a href={addressOf('competition', id)}>{title}</a>
      </h3>
      <StateLine state={resultState} phase={phase} />
      {(slot !== null || (startsAt !== null && isBefore)) && (
        <p>
          {slot?.facility.name}
          {isBefore && startsAt !== null && (
            <>
              {slot && ' · '}
              {o('meet.starts', { time: timeText(Date.parse(startsAt)) })}
            </>
          )}
          {isBefore && slot && (
            <>
              {' · '}
              <strong>{o('meet.report', { time: timeText(Date.parse(slot.reportAt)) })}</strong>
            </>
          )}
        </p>
      )}
      {up && !isBefore && (
        <p>
          {t('call.up')}: <span class="bib">{up.bib}</span> <strong>{up.name}</strong>
          {round !== null && ` · ${t('standing.round', { round })}`}
        </p>
      )}
      {next && !isBefore && (
        <p class="hint">
          {t('call.next')}: {next.bib} {next.name}
        </p>
      )}
      {phase === 'running' && <p class="hint">{o('meet.remaining', { count: remaining })}</p>}
    </>
  );
}

/** Only what there is: nothing waits, nothing is said. */
function WaitingLine({ waiting }: { readonly waiting: WaitingAt }) {
  const { questions, protests, signatures } = waiting;
  const said = [
    questions > 0 && o('waiting.questions', { count: questions }),
    protests > 0 && o('waiting.protests', { count: protests }),
    signatures > 0 && o('waiting.signatures', { count: signatures }),
  ].filter((one) => one !== false);
  return said.length === 0 ? null : <p class="notice held">{said.join(' · ')}</p>;
}
