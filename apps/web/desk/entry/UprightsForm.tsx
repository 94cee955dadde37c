import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { NumberPad } from '../../ui/NumberPad.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { afterKey } from './keys.js';

interface UprightsFormProps {
  readonly competitor: string;
  /** In centimetres behind the zero line; null: nothing was asked for. */
  readonly now: number | null;
  readonly onDone: () => void;
}

/** How a vaulter wants the uprights from now on. */
export function UprightsForm({ competitor, now, onDone }: UprightsFormProps) {
  const { desk } = useOpen();
  const text = useSignal(now === null ? '' : String(now));
  const set = async (event: Event) => {
    event.preventDefault();
    if (!/^\d{1,3}$/.test(text.value)) return;
    const body: Body = { kind: 'uprights', competitor, behindZeroCm: Number(text.value) };
    const verdict = await desk.enter(body, () => t('bar.uprightsAt', { cm: text.value }));
    if (verdict?.standing !== 'refused') onDone();
  };
  return (
    <form class="entry" onSubmit={set}>
      <label class="mark-field active">
        <span>{t('bar.uprights')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={text.value}
          onInput={({ currentTarget }) => (text.value = currentTarget.value)}
        />
        <span class="usual">cm</span>
      </label>
      <NumberPad onKey={(key) => (text.value = afterKey(text.value, key))} />
      <button type="submit" class="button main wide">
        {t('bar.uprights')}
      </button>
    </form>
  );
}
