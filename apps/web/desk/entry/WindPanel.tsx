import { useSignal } from '@preact/signals';
import type { AttemptState, CompetitionState } from '#rules';
import { windText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { NumberPad } from '../../ui/NumberPad.jsx';
import { attemptText, withoutWind } from '../competition/distance-board.js';
import { useOpen } from '../desk-context.js';
import { afterKey } from './keys.js';
import { readTypedWind } from '../../ui/typed.js';

/** A second device at the gauge: gives winds to trials that another one entered. */
export function WindPanel({ state }: { readonly state: CompetitionState }) {
  const { desk } = useOpen();
  const chosen = useSignal<string | null>(null);
  const text = useSignal('');
  const missing = withoutWind(state);
  const attempt = missing.find(({ id }) => id === chosen.value) ?? missing.at(-1);
  if (!attempt) return <p class="entry">{t('wind.allThere')}</p>;
  const reading = readTypedWind(text.value);
  const record = async (wind: number | 'NWI') => {
    const who = desk.personOf(attempt.competitor).bib;
    text.value = '';
    chosen.value = null;
    await desk.enter({ kind: 'wind', attempt: attempt.id, wind }, () =>
      t('done.recorded', { who, what: `${t('wind')} ${windText(wind)}` }),
    );
  };
  return (
    <form
      class="entry"
      onSubmit={(event) => {
        event.preventDefault();
        if (reading !== null) void record(reading);
      }}
    >
      <Missing state={state} missing={missing} at={attempt} onChoose={(id) => (chosen.value = id)} />
      <label class="mark-field active">
        <span>{t('wind')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={text.value}
          onInput={({ currentTarget }) => (text.value = currentTarget.value)}
        />
        <span class="usual">{reading === null ? '' : windText(reading)}</span>
      </label>
      <NumberPad
        onKey={(key) => (text.value = afterKey(text.value, key))}
        extra={[{ key: 'sign', text: '±', label: t('key.sign') }]}
      />
      <button type="submit" class="button main wide" disabled={reading === null}>
        {t('record')}
      </button>
      <Button onPress={() => record('NWI')}>{t('wind.none')}</Button>
    </form>
  );
}

interface MissingProps {
  readonly state: CompetitionState;
  readonly missing: readonly AttemptState[];
  readonly at: AttemptState;
  readonly onChoose: (id: string) => void;
}

function Missing({ state, missing, at, onChoose }: MissingProps) {
  const { desk } = useOpen();
  return (
    <section>
      <h2>{t('wind.missing')}</h2>
      <ul class="list short">
        {missing.map((attempt) => {
          const { bib, name } = desk.personOf(attempt.competitor);
          return (
            <li key={attempt.id}>
              <Button isPressed={attempt.id === at.id} onPress={() => onChoose(attempt.id)}>
                <strong>
                  {bib} {name}
                </strong>
                <span>
                  {t('standing.round', { round: attempt.round })}: {attemptText(attempt, state.setup.unit)}
                </span>
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
