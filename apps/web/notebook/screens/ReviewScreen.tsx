import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { a } from '../../labels/account/words.js';
import { dayText } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { idOf } from '../../offline/object-ids.js';
import { route } from '../../ui/route.js';
import type { HistoryThrow } from '../athlete/findings.js';
import { resultText } from '../athlete/Opened.jsx';
import { useFindings } from '../athlete/reading.js';
import { dayOf, useNotebook } from '../notebook.js';
import { implementText } from '../plots/AttemptsPlot.jsx';
import { meetsOf } from '../plots/StripPlot.jsx';
import { thrownBy } from '../practice/practice-day.js';
import { nameOf } from '../practice/words.js';
import type { AthleteNotes } from '../shapes.js';
import { FocusSection } from './FocusSection.jsx';

interface NotedTrial {
  readonly round: number;
  readonly trial: HistoryThrow | null;
  readonly observations: readonly {
    readonly id: string;
    readonly event: string;
    readonly scope: readonly string[] | null;
    readonly marks: readonly { readonly code: string; readonly severity: number }[];
    readonly note: string | null;
  }[];
}

interface Notes {
  readonly title: string;
  readonly series: readonly {
    readonly athlete: { readonly athleteId: string };
    readonly trials: readonly NotedTrial[];
  }[];
}

const NOTES = `query NotebookCompetition($id: ID!) {
  competitionNotes(competitionId: $id) {
    title
    series { athlete { athleteId } trials {
      round
      trial { id thrownIn occasion occasionName onDate variant implementGrams round outcome mark isMeasured wind foul }
      observations { id event scope marks { code severity } note }
    } }
  }
}`;

/** A competition looked back at, what was seen beside the series; and what is being worked on. */
export function ReviewScreen() {
  const notebook = useNotebook();
  const athlete = notebook.athlete(route.value.id);
  return athlete ? <Review key={athlete.athleteId} athlete={athlete} /> : <p>{n('athlete.none')}</p>;
}

function Review({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  const { event } = thrownBy(notebook, athlete);
  const filter = { event, implementGrams: null, from: null, to: null, thrownIn: null };
  const { analysis, history } = useFindings(athlete.athleteId, filter);
  const chosen = useSignal<string | null>(null);
  const meets = meetsOf(history.value ?? []);
  const open = chosen.value ?? meets.at(-1)?.occasion ?? null;
  return (
    <section class="review">
      <h2>{n('review.title', { name: athlete.name })}</h2>
      <FocusSection
        athlete={athlete}
        event={event}
        outcomes={analysis.value?.focuses ?? []}
        history={history.value ?? []}
        today={dayOf(notebook.nowMs.value)}
      />
      <h3>{n('review.competition')}</h3>
      {history.value === null && <p class="hint">{a('reading')}</p>}
      {history.value !== null && meets.length === 0 && <p>{n('review.none')}</p>}
      {open !== null && (
        <label class="field">
          <span>{n('review.which')}</span>
          <select value={open} onChange={({ currentTarget: { value } }) => (chosen.value = value)}>
            {[...meets].reverse().map((meet) => (
              <option key={meet.occasion} value={meet.occasion}>
                {dayText(meet.onDate)}, {meet.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {open !== null && <Series key={open} occasion={open} athleteId={athlete.athleteId} />}
    </section>
  );
}

function Series({ occasion, athleteId }: { readonly occasion: string; readonly athleteId: string }) {
  const notebook = useNotebook();
  const notes = useSignal<Notes | null>(null);
  useEffect(() => {
    void notebook
      .read<{ competitionNotes: Notes | null }>(NOTES, { id: idOf('Competition', occasion) })
      .then((answer) => (notes.value = answer?.competitionNotes ?? null));
  }, [occasion]);
  const series = notes.value?.series.find(({ athlete }) => athlete.athleteId === athleteId);
  if (!series) return null;
  return (
    <ol class="series">
      {series.trials.map(({ round, trial, observations }) => (
        <li key={round} class="card">
          <p>
            {n('list.round', { round })}:{' '}
            <strong>{trial ? resultText(trial) : n('review.notRecorded')}</strong>
            {trial && <span class="hint"> {implementText(trial)}</span>}
          </p>
          {observations.length === 0 && <p class="hint">{n('review.unseen')}</p>}
          {observations.map((one) => (
            <ul key={one.id} class="noted">
              {one.marks.map(({ code, severity }) => (
                <li key={code}>
                  {nameOf(notebook, one.event, code)}: {nCode('seen', String(severity))}
                </li>
              ))}
              {one.scope !== null && (
                <li class="hint">
                  {n('review.notThere', {
                    names:
                      one.scope
                        .filter((code) => !one.marks.some((mark) => mark.code === code && mark.severity > 0))
                        .map((code) => nameOf(notebook, one.event, code))
                        .join(', ') || '–',
                  })}
                </li>
              )}
              {one.note && <li>{one.note}</li>}
            </ul>
          ))}
        </li>
      ))}
    </ol>
  );
}
