import { useSignal } from '@preact/signals';
import { windText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { NumberPad } from '../../ui/NumberPad.jsx';
import type { Body } from '../competition/request.js';
import { afterKey } from '../entry/keys.js';
import { readTypedWind } from '../../ui/typed.js';

interface WindFormProps {
  /** The id of the trial. */
  readonly attempt: string;
  readonly onEnter: (body: Body) => Promise<void>;
}

/** The wind of one trial, read late or read wrongly. */
export function WindForm({ attempt, onEnter }: WindFormProps) {
  const text = useSignal('');
  const reading = readTypedWind(text.value);
  return (
    <>
      <label class="mark-field active">
        <span>{t('wind')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={text.value}
          onInput={({ currentTarget }) => (text.value = currentTarget.value)}
        />
        <span class="usual">{reading === null ? t('wind.unreadable') : windText(reading)}</span>
      </label>
      <NumberPad
        onKey={(key) => (text.value = afterKey(text.value, key))}
        extra={[{ key: 'sign', text: '±', label: t('key.sign') }]}
      />
      <div class="pair">
        <Button
          kind="main"
          isDisabled={reading === null}
          onPress={() => reading !== null && onEnter({ kind: 'wind', attempt, wind: reading })}
        >
          {t('record')}
        </Button>
        <Button onPress={() => onEnter({ kind: 'wind', attempt, wind: 'NWI' })}>{t('wind.none')}</Button>
      </div>
    </>
  );
}
