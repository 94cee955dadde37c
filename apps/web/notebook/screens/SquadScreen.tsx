import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { a } from '../../labels/account/words.js';
import { dayText } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { Choice } from '../../ui/Choice.jsx';
import { addressOf } from '../../ui/route.js';
import { useNotebook } from '../notebook.js';
import { nameOf } from '../practice/words.js';
import type { AthleteNotes } from '../shapes.js';
import { openFocuses, OVERVIEW, type SquadLine } from './squad-state.js';

/** Everybody at one look, by name: who is due, and of whom nothing is known. Nobody is ranked. */
export function SquadScreen() {
  const notebook = useNotebook();
  const lines = useSignal<readonly SquadLine[] | null>(null);
  const shown = useSignal<'all' | 'due'>('all');
  const asked = notebook.round.value;
  useEffect(() => {
    void notebook
      .read<{ squadOverview: readonly SquadLine[] }>(OVERVIEW, {})
      .then((answer) => answer && (lines.value = answer.squadOverview));
  }, [asked]);
  const athletes = notebook.athletes.value.filter(({ isCoach }) => isCoach);
  const lineOf = ({ athleteId }: AthleteNotes) =>
    lines.value?.find(({ athlete }) => athlete.athleteId === athleteId) ?? null;
  const due = athletes.filter((athlete) => lineOf(athlete)?.isDue);
  return (
    <section class="squad">
      <h2>{n('section.squad')}</h2>
      {athletes.length === 0 && <p>{n('squad.none')}</p>}
      {lines.value === null ? (
        <p class="hint">{a('reading')}</p>
      ) : (
        <Choice
          legend={n('squad.show')}
          value={shown.value}
          options={[
            { value: 'all', text: n('squad.all', { count: athletes.length }) },
            { value: 'due', text: n('squad.due', { count: due.length }) },
          ]}
          onChoose={(value) => (shown.value = value)}
        />
      )}
      <ul class="cards">
        {(shown.value === 'due' ? due : athletes).map((athlete) => (
          <li key={athlete.athleteId} class="card">
            <h3>
              <a href={addressOf('athlete', athlete.athleteId)}>{athlete.name}</a>
            </h3>
            <p class="hint">{whoText(athlete)}</p>
            <Line line={lineOf(athlete)} />
            {openFocuses(athlete).map(({ id, event, code, from }) => (
              <p key={id}>{n('squad.focus', { what: nameOf(notebook, event, code), date: dayText(from) })}</p>
            ))}
            <p class="links">
              <a href={addressOf('review', athlete.athleteId)}>{n('section.review')}</a>
              <a href={addressOf('own', athlete.athleteId)}>{n('section.own')}</a>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Line({ line }: { readonly line: SquadLine | null }) {
  const notebook = useNotebook();
  if (!line) return null;
  const { lastThrowOn, lastObservedOn, throwsInFourWeeks, isDue, notAssessed } = line;
  return (
    <>
      {isDue && <p class="notice held">{n('squad.isDue')}</p>}
      <p>
        {lastThrowOn === null
          ? n('squad.noThrows')
          : n('squad.throws', { count: throwsInFourWeeks, date: dayText(lastThrowOn) })}
      </p>
      <p>
        {lastObservedOn === null
          ? n('squad.unassessed')
          : n('squad.looked', { date: dayText(lastObservedOn) })}
      </p>
      {notAssessed.length > 0 && (
        <p class="hint">
          {n('squad.notAssessed', {
            names: notAssessed.map(({ event, code }) => nameOf(notebook, event, code)).join(', '),
          })}
        </p>
      )}
    </>
  );
}

/** Age and stage, as far as they are known. */
function whoText({ age, stages }: AthleteNotes): string {
  const parts = [
    age === null ? n('age.unknown') : n('age.years', { age }),
    ...stages.map(({ event, stage }) => `${nCode('event', event)}: ${nCode('stage', stage)}`),
  ];
  return parts.join(' · ');
}
