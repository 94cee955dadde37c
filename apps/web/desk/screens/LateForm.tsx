import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOpen } from '../desk-context.js';
import { Refused } from './Refused.jsx';

/**
 * Somebody who is on no list: a name and a club as they are told, last in the order. Who it is, the director says
 * later; trials go on at once, also without a network.
 */
export function LateForm({ onDone }: { readonly onDone: () => void }) {
  const { desk } = useOpen();
  const bib = useSignal('');
  const name = useSignal('');
  const club = useSignal('');
  const flights = [...new Set(desk.people.value.flatMap((person) => person.flight ?? []))];
  const flight = useSignal<string | null>(flights.at(-1) ?? null);
  const isWhole = bib.value.trim() !== '' && name.value.trim() !== '';
  const add = async (event: Event) => {
    event.preventDefault();
    if (!isWhole) return;
    const competitor = uuidV7();
    const verdict = await desk.enter(
      {
        ...{ kind: 'late-entry', competitor, bib: bib.value.trim(), flight: flight.value },
        ...{ listedName: name.value.trim(), listedClub: club.value.trim() || null },
      },
      () => t('late.added', { who: bib.value.trim() }),
      competitor,
    );
    if (verdict && verdict.standing !== 'refused') onDone();
  };
  return (
    <form class="entry" onSubmit={add}>
      <p class="hint">{t('late.how')}</p>
      <TextField label={t('list.bib')} value={bib} />
      <TextField label={t('late.name')} value={name} />
      <TextField label={t('late.club')} value={club} />
      {flights.length > 1 && (
        <Choice<string>
          legend={t('list.flight')}
          value={flight.value}
          options={flights.map((value) => ({ value, text: value }))}
          onChoose={(value) => (flight.value = value)}
        />
      )}
      <Refused />
      <button type="submit" class="button main wide" disabled={!isWhole}>
        {t('late.add')}
      </button>
    </form>
  );
}
