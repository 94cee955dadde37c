import { t } from '../../labels/languages.js';
import { NumberPad } from '../../ui/NumberPad.jsx';
import { unitIn } from '../competition/head.js';
import { useOpen } from '../desk-context.js';
import { afterKey } from './keys.js';
import { markText } from '../../labels/format.js';
import { readTyped } from '../../ui/typed.js';

/**
 * A failure that is protested on the spot: measured all the same and held until the referee rules. At a bar there is
 * nothing to measure.
 */
export function Protest() {
  const { desk, open } = useOpen();
  const draft = desk.draft.value;
  return (
    <label class="switch">
      <input
        type="checkbox"
        checked={draft.protested !== null}
        onChange={({ currentTarget }) =>
          (desk.draft.value = { ...draft, protested: currentTarget.checked ? '' : null })
        }
      />
      <span>{t(open.folded.kind === 'vertical' ? 'protest.atBar' : 'protest')}</span>
    </label>
  );
}

/** What was measured of it. */
export function ProtestedMark() {
  const { desk, open } = useOpen();
  const draft = desk.draft.value;
  const unit = unitIn(open.kept.head);
  if (draft.protested === null || open.folded.kind === 'vertical') return null;
  const { protested } = draft;
  const typed = readTyped(protested, unit);
  const change = (text: string) => (desk.draft.value = { ...desk.draft.value, protested: text });
  return (
    <>
      <label class="mark-field active">
        <span>{t('protest.mark')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={protested}
          onInput={({ currentTarget }) => change(currentTarget.value)}
        />
        <span class="usual">{typed.kind === 'mark' && markText(typed.value, unit)}</span>
      </label>
      <NumberPad onKey={(key) => change(afterKey(protested, key))} />
    </>
  );
}
