import { useSignal } from '@preact/signals';
import { n } from '../../labels/notebook/words.js';
import { Button } from '../../ui/Button.jsx';
import { useNotebook } from '../notebook.js';
import { Returned } from './Returned.jsx';
import { ThrowForm } from './ThrowForm.jsx';

/** At the circle, with one thumb: who throws, what was seen, next. */
export function PracticeScreen() {
  const notebook = useNotebook();
  const chosen = useSignal<string | null>(null);
  const athletes = notebook.athletes.value.filter(({ isCoach }) => isCoach);
  const athlete = athletes.find(({ athleteId }) => athleteId === chosen.value);
  return (
    <section class="practice">
      <h2>{n('section.practice')}</h2>
      <Returned />
      <ul class="who-throws">
        {athletes.map(({ athleteId, name }) => (
          <li key={athleteId}>
            <Button isPressed={athleteId === chosen.value} onPress={() => (chosen.value = athleteId)}>
              {name}
            </Button>
          </li>
        ))}
      </ul>
      {athlete ? (
        <ThrowForm key={athlete.athleteId} athlete={athlete} />
      ) : (
        <>
          <p>{n('practice.choose')}</p>
          <p class="hint">{n('practice.safety')}</p>
        </>
      )}
    </section>
  );
}
