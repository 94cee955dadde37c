import { timeText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { o } from '../../labels/office/words.js';
import { slotOf, type CompetitionNow, type MeetNow } from '../meet-now.js';
import { useOffice } from '../office.js';

/** Every competition at one look: where it is, who is up, when and where the others report. */
export function MeetScreen() {
  const meet = useOffice().meet.value;
  if (!meet) return <p>{o('reading')}</p>;
  return (
    <section class="meet-screen">
      <h2>{o('section.meet')}</h2>
      {meet.timetable?.reason && (
        <p class="notice warning">{o('times.told', { reason: meet.timetable.reason })}</p>
      )}
      <ul class="cards">
        {meet.competitions.map((one) => (
          <li key={one.id} class="card">
            <Card meet={meet} competition={one} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Card({ meet, competition }: { readonly meet: MeetNow; readonly competition: CompetitionNow }) {
  const { title, startsAt, progress } = competition;
  const { phase, round, remaining, up, next } = progress;
  const slot = slotOf(meet, competition.id);
  return (
    <>
      <h3>{title}</h3>
      <p class="state">{tCode('phase', phase)}</p>
      {slot && (
        <p>
          {slot.facility.name}
          {phase === 'not started' && (
            <>
              {' '}
              · <strong>{o('meet.report', { time: timeText(Date.parse(slot.reportAt)) })}</strong>
            </>
          )}
        </p>
      )}
      {startsAt !== null && phase === 'not started' && (
        <p>{o('meet.starts', { time: timeText(Date.parse(startsAt)) })}</p>
      )}
      {up && (
        <p>
          {t('call.up')}:{' '}
          <strong>
            <span class="bib">{up.bib}</span> {up.name}
          </strong>
          {round !== null && <> · {t('standing.round', { round })}</>}
        </p>
      )}
      {next && (
        <p class="hint">
          {t('call.next')}: {next.bib} {next.name}
        </p>
      )}
      {phase === 'running' && <p class="hint">{o('meet.remaining', { count: remaining })}</p>}
    </>
  );
}
