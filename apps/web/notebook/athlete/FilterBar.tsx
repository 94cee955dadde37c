import type { Signal } from '@preact/signals';
import { n, nCode } from '../../labels/notebook/words.js';
import { EVENTS, massText } from '../practice/ThrownForm.jsx';
import type { Filter } from './findings.js';

interface FilterBarProps {
  readonly filter: Signal<Filter>;
  /** That the athlete has thrown. */
  readonly masses: readonly number[];
}

/** What is looked at: which throws, and of when. */
export function FilterBar({ filter, masses }: FilterBarProps) {
  const change = (part: Partial<Filter>) => (filter.value = { ...filter.value, ...part });
  const { event, implementGrams, from, to, thrownIn } = filter.value;
  const chosen = [
    nCode('event', event),
    implementGrams === null ? n('filter.allImplements') : massText(implementGrams),
    thrownIn === null ? n('filter.both') : nCode('thrownIn', thrownIn),
  ].join(' · ');
  return (
    <details class="thrown">
      <summary>{n('filter.title', { chosen })}</summary>
      <div class="fields">
        <label class="field">
          <span>{n('thrown.event')}</span>
          <select
            value={event}
            onChange={({ currentTarget: { value } }) => change({ event: value, implementGrams: null })}
          >
            {EVENTS.map((one) => (
              <option key={one} value={one}>
                {nCode('event', one)}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span>{n('list.implement')}</span>
          <select
            value={implementGrams ?? ''}
            onChange={({ currentTarget: { value } }) =>
              change({ implementGrams: value ? Number(value) : null })
            }
          >
            <option value="">{n('filter.allImplements')}</option>
            {masses.map((mass) => (
              <option key={mass} value={mass}>
                {massText(mass)}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span>{n('filter.where')}</span>
          <select
            value={thrownIn ?? ''}
            onChange={({ currentTarget: { value } }) =>
              change({ thrownIn: (value || null) as Filter['thrownIn'] })
            }
          >
            <option value="">{n('filter.both')}</option>
            <option value="COMPETITION">{n('thrownIn.COMPETITION')}</option>
            <option value="PRACTICE">{n('thrownIn.PRACTICE')}</option>
          </select>
        </label>
        <DayField label={n('filter.from')} value={from} onChange={(day) => change({ from: day })} />
        <DayField label={n('filter.to')} value={to} onChange={(day) => change({ to: day })} />
      </div>
    </details>
  );
}

interface DayFieldProps {
  readonly label: string;
  readonly value: string | null;
  readonly onChange: (day: string | null) => void;
}

function DayField({ label, value, onChange }: DayFieldProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type="date"
        value={value ?? ''}
        onChange={({ currentTarget }) => onChange(currentTarget.value || null)}
      />
    </label>
  );
}
