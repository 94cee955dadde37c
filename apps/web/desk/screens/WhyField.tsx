import { useSignal, type Signal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { Choice } from '../../ui/Choice.jsx';

const REASONS = ['misheard', 'misread', 'typed', 'line', 'hindered', 'judges'] as const;
type Ground = (typeof REASONS)[number] | 'other';

/** Why something is changed: one tap for the usual reasons, words for another. */
export function WhyField({ why }: { readonly why: Signal<string> }) {
  const ground = useSignal<Ground | null>(null);
  const choose = (value: Ground) => {
    ground.value = value;
    why.value = value === 'other' ? '' : t(`why.${value}`);
  };
  return (
    <>
      <Choice<Ground>
        legend={t('why')}
        value={ground.value}
        options={[...REASONS, 'other' as const].map((value) => ({ value, text: t(`why.${value}`) }))}
        onChoose={choose}
      />
      {ground.value === 'other' && (
        <label class="field">
          <span>{t('why.other')}</span>
          <input value={why.value} onInput={({ currentTarget }) => (why.value = currentTarget.value)} />
        </label>
      )}
    </>
  );
}
