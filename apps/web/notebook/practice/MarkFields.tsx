import { useId } from 'preact/hooks';
import type { Signal } from '@preact/signals';
import { foulsOf, type EventCode } from '#rules';
import { tCode } from '../../labels/languages.js';
import { n } from '../../labels/notebook/words.js';
import { Choice } from '../../ui/Choice.jsx';
import { isUnreadable, type Draft } from './draft.js';

/** How far, if anybody looked; that it was paced; that it would not have counted. */
export function MarkFields({ event, draft }: { readonly event: string; readonly draft: Signal<Draft> }) {
  const { mark, isMeasured, isFoul, foul } = draft.value;
  const name = useId();
  const change = (part: Partial<Draft>) => (draft.value = { ...draft.value, ...part });
  const isUnread = isUnreadable(draft.value);
  return (
    <div class="mark-fields">
      {event !== 'HIGH_JUMP' && (
        <div class="fields">
          <label class="field">
            <span>{n('mark.label')}</span>
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={mark}
              disabled={isFoul}
              aria-invalid={isUnread}
              aria-describedby={`${name}-how`}
              onInput={({ currentTarget: { value } }) => change({ mark: value })}
            />
            <span class="hint" id={`${name}-how`}>
              {isUnread ? n('mark.unreadable') : n('mark.optional')}
            </span>
          </label>
        </div>
      )}
      {mark !== '' && !isFoul && (
        <Choice
          legend={n('mark.how')}
          value={isMeasured ? 'measured' : 'estimated'}
          options={[
            { value: 'measured', text: n('mark.measured') },
            { value: 'estimated', text: n('mark.estimated') },
          ]}
          onChoose={(value) => change({ isMeasured: value === 'measured' })}
        />
      )}
      <label class="switch">
        <input
          type="checkbox"
          checked={isFoul}
          onChange={({ currentTarget: { checked } }) => change({ isFoul: checked, foul: null })}
        />
        <span>{n('mark.foul')}</span>
      </label>
      {isFoul && (
        <label class="field">
          <span>{n('mark.why')}</span>
          <select
            value={foul ?? ''}
            onChange={({ currentTarget: { value } }) => change({ foul: value || null })}
          >
            <option value="">{n('mark.whyUnsaid')}</option>
            {reasonsOf(event).map((code) => (
              <option key={code} value={code}>
                {tCode('foul', code)}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

function reasonsOf(event: string): readonly string[] {
  const rules = foulsOf(event.toLowerCase().replace('_', '-') as EventCode);
  return [...new Set(rules.map(({ code }) => code))];
}
