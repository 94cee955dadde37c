import { useSignal } from '@preact/signals';
import { verticalProgressOf, type VerticalState } from '#rules';
import { markText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { NumberPad } from '../../ui/NumberPad.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { bodyText } from './body-text.js';
import { afterKey } from './keys.js';
import { readTyped } from '../../ui/typed.js';

/** Sets the bar where it was not announced. Heights between that nobody has begun are left out. */
export function HeightForm({
  state,
  onDone,
}: {
  readonly state: VerticalState;
  readonly onDone: () => void;
}) {
  const { desk } = useOpen();
  const { unit } = state.setup;
  const text = useSignal('');
  const typed = readTyped(text.value, unit);
  const body = typed.kind === 'mark' ? barBody(state, typed.value) : null;
  const verdict = body && desk.store.tryOut(body);
  const set = async (event: Event) => {
    event.preventDefault();
    if (!body) return;
    const after = await desk.enter(body, () => bodyText(body, unit));
    if (after?.standing !== 'refused') onDone();
  };
  return (
    <form class="entry" onSubmit={set}>
      <label class="mark-field active">
        <span>{t('bar.height')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={text.value}
          onInput={({ currentTarget }) => (text.value = currentTarget.value)}
        />
        <span class="usual">{body ? bodyText(body, unit) : markText(state.bar, unit)}</span>
      </label>
      <NumberPad onKey={(key) => (text.value = afterKey(text.value, key))} />
      <p class="hint">{t('bar.leavesOut')}</p>
      {verdict?.standing === 'held' && (
        <p class="notice held">
          {t('readBack.held')} <span lang="en">{verdict.hold.message}</span>
        </p>
      )}
      {verdict?.standing === 'refused' && (
        <p class="notice refused" lang="en">
          {verdict.refusal.message}
        </p>
      )}
      <button type="submit" class="button main wide" disabled={!body || verdict?.standing === 'refused'}>
        {t('bar.set')}
      </button>
    </form>
  );
}

function barBody(state: VerticalState, height: number): Body {
  const { bar } = verticalProgressOf(state);
  const begun = new Set([...state.attempts.values()].map((jump) => jump.height));
  const leavesOut = state.heights.filter((one) => one > bar && one < height && !begun.has(one));
  return { kind: 'bar', height, leavesOut };
}
