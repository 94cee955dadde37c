import { useSignal } from '@preact/signals';
import { dayText } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import type { FocusOutcome, HistoryThrow } from '../athlete/findings.js';
import { Opened } from '../athlete/Opened.jsx';
import { intervalText, percentText, refusedText, seenText } from '../athlete/sentences.js';
import { useNotebook } from '../notebook.js';
import { nameOf, said } from '../practice/words.js';
import type { AthleteNotes, Focus } from '../shapes.js';

interface FocusSectionProps {
  readonly athlete: AthleteNotes;
  readonly event: string;
  readonly outcomes: readonly FocusOutcome[];
  readonly history: readonly HistoryThrow[];
  readonly today: string;
}

/** What is worked on, how, from when, and whether it held. */
export function FocusSection({ athlete, event, outcomes, history, today }: FocusSectionProps) {
  const notebook = useNotebook();
  const focuses = athlete.focuses.filter((one) => one.event === event);
  const end = ({ id }: Focus) =>
    void notebook.act(
      'focusEnd',
      { id: uuidV7(), athleteId: athlete.athleteId, focusId: id, to: today },
      { done: n('focus.ended'), away: n('act.away') },
    );
  return (
    <section>
      <h3>{n('focus.title')}</h3>
      {focuses.length === 0 && <p>{n('focus.none')}</p>}
      <ul class="cards">
        {[...focuses].reverse().map((focus) => {
          const name = nameOf(notebook, focus.event, focus.code);
          return (
            <li key={focus.id} class="card">
              <h4>{name}</h4>
              <p>
                {nCode('how', focus.how)}
                {focus.what && `: ${focus.what}`}
              </p>
              <p>
                {focus.to === null
                  ? n('focus.since', { date: dayText(focus.from) })
                  : n('focus.between', { from: dayText(focus.from), to: dayText(focus.to) })}
              </p>
              <Outcome
                name={name}
                outcome={outcomes.find(({ focusId }) => focusId === focus.id)}
                history={history}
              />
              {focus.to === null && (
                <Button isDisabled={notebook.isBusy.value} onPress={() => end(focus)}>
                  {n('focus.end')}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      <StartFocus athlete={athlete} event={event} today={today} />
    </section>
  );
}

interface OutcomeProps {
  readonly name: string;
  readonly outcome: FocusOutcome | undefined;
  readonly history: readonly HistoryThrow[];
}

function Outcome({ name, outcome, history }: OutcomeProps) {
  if (!outcome) return null;
  return (
    <dl class="outcome">
      <dt>{n('focus.before')}</dt>
      <dd>{seenText(outcome.before)}</dd>
      {outcome.windows.map(({ window, seen, difference, interval, refused }) => (
        <div key={window}>
          <dt>{nCode('window', window)}</dt>
          <dd>
            {seenText(seen)}{' '}
            {difference !== null && interval
              ? n('focus.change', {
                  change: `${difference < 0 ? '−' : '+'}${percentText(Math.abs(difference))}`,
                  interval: intervalText(interval, (value) => `${Math.round(100 * value)} %`),
                })
              : refused && !seen.refused && refusedText(refused)}
          </dd>
        </div>
      ))}
      <dd>
        <Opened about={name} attempts={outcome.before.attempts} history={history} />
      </dd>
    </dl>
  );
}

const HOWS = ['TASK', 'DRILL', 'FULL_THROW'] as const;

function StartFocus({ athlete, event, today }: Pick<FocusSectionProps, 'athlete' | 'event' | 'today'>) {
  const notebook = useNotebook();
  const code = useSignal('');
  const how = useSignal<(typeof HOWS)[number]>('TASK');
  const what = useSignal('');
  const faults = (notebook.store.kept.value.vocabularies[event]?.faults ?? []).filter(
    ({ isActive, isHidden }) => isActive && !isHidden,
  );
  const point = faults.find((one) => one.code === code.value);
  const start = async (submit: Event) => {
    submit.preventDefault();
    const input = {
      ...{ id: uuidV7(), athleteId: athlete.athleteId, event, code: code.value, how: how.value },
      ...{ what: what.value.trim() || null, from: today },
    };
    const words = { done: n('focus.started'), away: n('act.away') };
    if (await notebook.act('focusStart', input, words)) code.value = what.value = '';
  };
  return (
    <details class="thrown">
      <summary>{n('focus.start')}</summary>
      <form onSubmit={(submit) => void start(submit)}>
        <label class="field">
          <span>{n('focus.which')}</span>
          <select
            required
            value={code.value}
            onChange={({ currentTarget: { value } }) => (code.value = value)}
          >
            <option value="">{n('focus.choose')}</option>
            {faults.map((one) => (
              <option key={one.code} value={one.code}>
                {said(one.name)}
              </option>
            ))}
          </select>
        </label>
        {point && <p>{n('focus.try', { point: said(point.point) })}</p>}
        {point?.caution && <p class="caution">{n('caution.pain')}</p>}
        <Choice
          legend={n('focus.how')}
          value={how.value}
          options={HOWS.map((value) => ({ value, text: n(`how.${value}`) }))}
          onChoose={(value) => (how.value = value)}
        />
        <TextField label={n('focus.what')} value={what} />
        <button type="submit" class="button main" disabled={notebook.isBusy.value || code.value === ''}>
          {n('focus.startNow')}
        </button>
      </form>
    </details>
  );
}
