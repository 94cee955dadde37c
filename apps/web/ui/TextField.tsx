import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';

interface TextFieldProps {
  readonly label: string;
  readonly value: Signal<string>;
  readonly type?: 'text' | 'password' | 'search' | 'number' | 'time' | 'datetime-local';
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
  const id = useId();
  return (
    <div class="text-field">
      <label class="field">
        <span>{label}</span>
        <input
          type={type}
          autocomplete={autocomplete}
          spellcheck={false}
          required={isRequired ?? false}
          aria-describedby={hint === undefined ? undefined : id}
          value={value.value}
          onInput={({ currentTarget }) => (value.value = currentTarget.value)}
        />
      </label>
      {hint !== undefined && (
        <p class="hint" id={id}>
          {hint}
        </p>
      )}
    </div>
  );
}
