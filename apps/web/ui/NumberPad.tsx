import { t } from '../labels/languages.js';

interface NumberPadProps {
  /** Called with a character, or with `back` or `clear`. */
  readonly onKey: (key: string) => void;
  /** The keys of the last row beside the zero, such as those for feet or a sign. */
  readonly extra?: readonly { readonly key: string; readonly text: string; readonly label: string }[];
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

/**
 * Digits as on a telephone. The field above takes the same from a keyboard, so the keys are left out of the order of
 * the tab key.
 */
export function NumberPad({ onKey, extra = [] }: NumberPadProps) {
  const key = (name: string, text: string, label?: string) => (
    <button
      key={name}
      type="button"
      class="pad-key"
      tabIndex={-1}
      aria-label={label}
      onClick={() => onKey(name)}
    >
      {text}
    </button>
  );
  return (
    <div class="pad" role="group" aria-label={t('mark')}>
      {DIGITS.map((digit) => key(digit, digit))}
      {key('clear', 'C', t('key.clear'))}
      {key('0', '0')}
      {key('back', '⌫', t('key.back'))}
      {extra.map((one) => key(one.key, one.text, one.label))}
    </div>
  );
}
