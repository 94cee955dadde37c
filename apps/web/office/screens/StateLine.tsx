import { timeText } from '../../labels/format.js';
import { o, oCode } from '../../labels/office/words.js';
import type { ResultStateNow } from '../meet-now.js';
import { useOffice } from '../office.js';

/** Beside the word, never instead of it. */
const MARKS: Readonly<Record<string, string>> = {
  RUNNING: '▶',
  UNOFFICIAL: '○',
  POSTED: '◔',
  UNDER_PROTEST: '!',
  OFFICIAL: '✓',
  AMENDED: '✓',
};

/** Where a result stands, and until when it may be protested. */
export function StateLine({ state, phase }: { readonly state: ResultStateNow; readonly phase: string }) {
  const { nowMs } = useOffice();
  const until = state.protestsUntil === null ? null : Date.parse(state.protestsUntil);
  const word = phase === 'not started' ? 'NOT_STARTED' : state.state;
  return (
    <p class={`state ${state.isUnderProtest ? 'protest' : state.state.toLowerCase()}`}>
      <span class="state-mark" aria-hidden="true">
        {state.isUnderProtest ? '!' : (MARKS[word] ?? '·')}
      </span>
      <span>
        {oCode('state', word)}
        {state.isUnderProtest && state.state !== 'UNDER_PROTEST' && `, ${o('state.protest')}`}
        {state.isReopened && `, ${o('state.reopened')}`}
        {state.revision > 1 && ` (${o('state.revision', { number: state.revision })})`}
        {state.postedAt !== null &&
          ` · ${o('state.postedAt', { time: timeText(Date.parse(state.postedAt)) })}`}
        {until !== null && (
          <>
            {' · '}
            {until >= nowMs.value
              ? o('state.until', { time: timeText(until) })
              : o('state.over', { time: timeText(until) })}
          </>
        )}
      </span>
    </p>
  );
}
