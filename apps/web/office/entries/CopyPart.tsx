import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice, type Payload } from '../office.js';
import { COPY } from './documents.js';

/** The same meet on another day, without those who compete. */
export function CopyPart() {
  const office = useOffice();
  const [name, day] = [useSignal(''), useSignal('')];
  const isWithCrew = useSignal(false);
  const copy = async (event: Event) => {
    event.preventDefault();
    const input = {
      ...{ id: uuidV7(), meetId: office.meetId.value, name: name.value.trim(), startsOn: day.value },
      isWithCrew: isWithCrew.value,
    };
    const words = { done: e('copy.done', { name: name.value.trim() }), away: e('away') };
    if (!(await office.act<Payload>(COPY, input, words))) return;
    [name.value, day.value] = ['', ''];
    await office.findMeets();
  };
  return (
    <form onSubmit={(event) => void copy(event)}>
      <p class="hint">{e('copy.what')}</p>
      <TextField label={e('copy.name')} value={name} isRequired />
      <label class="field">
        <span>{e('copy.day')}</span>
        <input
          type="date"
          required
          value={day.value}
          onInput={({ currentTarget }) => (day.value = currentTarget.value)}
        />
      </label>
      <label class="check">
        <input
          type="checkbox"
          checked={isWithCrew.value}
          onChange={({ currentTarget }) => (isWithCrew.value = currentTarget.checked)}
        />
        <span>{e('copy.crew')}</span>
      </label>
      <button type="submit" class="button main" disabled={office.isBusy.value}>
        {e('copy.go')}
      </button>
    </form>
  );
}
