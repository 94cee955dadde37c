import type { Signal } from '@preact/signals';

interface TextFieldProps {
  readonly label: string;
  readonly value: Signal<string>;
  readonly type?: 'text' | 'password' | 'search' | 'number' | 'datetime-local';
  readonly hint?: string;
  readonly autocomplete?: string;
  readonly isRequired?: boolean;
}

/** A line to be filled in, with its name above it. */
export function TextField({
  label,
  value,
  type = 'text',
  hint,
  autocomplete = 'off',
  isRequired,
}: TextFieldProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type={type}
        autocomplete={autocomplete}
        spellcheck={false}
        required={isRequired ?? false}
        value={value.value}
        onInput={({ currentTarget }) => (value.value = currentTarget.value)}
      />
      {hint && <span class="hint">{hint}</span>}
    </label>
  );
}
