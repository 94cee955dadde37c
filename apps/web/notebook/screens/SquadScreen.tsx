import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { a } from '../../labels/account/words.js';
import { dayText } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { Choice } from '../../ui/Choice.jsx';
import { dayOf, useNotebook } from '../notebook.js';
import { nameOf } from '../practice/words.js';
import type { AthleteNotes } from '../shapes.js';
import { daysBefore, LOOKED_BACK_DAYS, openFocuses, RECENT, squadState, type Recent } from './squad-state.js';

/** Everybody at one look, by name: who is due, and of whom nothing is known. Nobody is ranked. */
export function SquadScreen() {
  const notebook = useNotebook();
  const recent = useSignal<readonly Recent[] | null>(null);
  const shown = useSignal<'all' | 'due'>('all');
  const today = dayOf(notebook.nowMs.value);
  useEffect(() => {
    void notebook
      .read<{ notebookAthletes: readonly Recent[] }>(RECENT, { from: daysBefore(today, LOOKED_BACK_DAYS) })
      .then((answer) => answer && (recent.value = answer.notebookAthletes));
  }, [today, notebook.round.value]);
  const athletes = notebook.athletes.value.filter(({ isCoach }) => isCoach);
  const rows = athletes.map((athlete) => ({
    athlete,
    state: squadState(
      recent.value?.find(({ athleteId }) => athleteId === athlete.athleteId),
      today,
    ),
  }));
  const due = rows.filter(({ state }) => state.isDue);
  return (
    <section class="squad">
      <h2>{n('section.squad')}</h2>
      {athletes.length === 0 && <p>{n('squad.none')}</p>}
      {recent.value === null ? (
        <p class="hint">{a('reading')}</p>
      ) : (
        <Choice
          legend={n('squad.show')}
          value={shown.value}
          options={[
            { value: 'all', text: n('squad.all', { count: rows.length }) },
            { value: 'due', text: n('squad.due', { count: due.length }) },
          ]}
          onChoose={(value) => (shown.value = value)}
        />
      )}
      <ul class="cards">
        {(shown.value === 'due' ? due : rows).map(({ athlete, state }) => (
          <li key={athlete.athleteId} class="card">
            <h3>{athlete.name}</h3>
            <p class="hint">{whoText(athlete)}</p>
            {recent.value !== null && (
              <>
                <p>
                  {state.lastThrow === null
                    ? n('squad.noThrows', { days: LOOKED_BACK_DAYS })
                    : n('squad.throws', {
                        count: state.throws,
                        days: LOOKED_BACK_DAYS,
                        date: dayText(state.lastThrow),
                      })}
                </p>
                {state.isUnassessed ? (
                  <p class="notice held">{n('squad.unassessed', { days: LOOKED_BACK_DAYS })}</p>
                ) : (
                  <p>{n('squad.looked', { count: state.looked })}</p>
                )}
              </>
            )}
            {openFocuses(athlete).map(({ id, event, code, from }) => (
              <p key={id}>{n('squad.focus', { what: nameOf(notebook, event, code), date: dayText(from) })}</p>
            ))}
          </li>
        ))}
      </ul>
    </section>
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
