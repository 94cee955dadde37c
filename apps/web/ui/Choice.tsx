import { useId } from 'preact/hooks';

interface ChoiceProps<V extends string> {
  readonly legend: string;
  readonly options: readonly { readonly value: V; readonly text: string }[];
  readonly value: V | null;
  readonly onChoose: (value: V) => void;
}

/** One of several, all in sight: radio buttons that look like buttons. */
export function Choice<V extends string>({ legend, options, value, onChoose }: ChoiceProps<V>) {
  const name = useId();
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      <div class="choices">
        {options.map((option) => (
          <label key={option.value} class="chip">
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
            />
            <span>{option.text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
