import type { Signal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { useOffice } from '../office.js';

/** One of the competitions of the meet. */
export function CompetitionField({ value }: { readonly value: Signal<string> }) {
  const meet = useOffice().meet.value;
  return (
    <label class="field">
      <span>{e('competition')}</span>
      <select
        required
        value={value.value}
        onChange={({ currentTarget }) => (value.value = currentTarget.value)}
      >
        <option value="">{e('choose')}</option>
        {meet?.competitions.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </select>
    </label>
  );
}
