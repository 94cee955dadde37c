import type { Signal } from '@preact/signals';

interface SelectProps {
  readonly label: string;
  readonly value: Signal<string>;
  readonly options: readonly { readonly value: string; readonly text: string }[];
  /** What stands for nothing chosen; absent: something always is. */
  readonly none?: string;
}

/** One of many, folded up: the browser's own list, which a telephone shows in its own way. */
export function Select({ label, value, options, none = '–' }: SelectProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <select value={value.value} onChange={({ currentTarget }) => (value.value = currentTarget.value)}>
        <option value="">{none}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </label>
  );
}
