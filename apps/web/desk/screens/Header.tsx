import { ageText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { useDesk } from '../desk-context.js';

/** What is open, and whether everything that was entered is safe. */
export function Header() {
  const { store } = useDesk();
  const open = store.open.value;
  return (
    <header class="head">
      <div class="head-title">
        <h1>{open ? open.kept.head.title : t('desk')}</h1>
        {open && <p>{open.kept.head.meet.name}</p>}
      </div>
      <SafeState />
    </header>
  );
}

function SafeState() {
  const { store, nowMs } = useDesk();
  const waiting = store.waiting.value;
  const link = store.link.value;
  const [oldest] = waiting;
  const state = store.isFailing.value
    ? { kind: 'failing', text: t('saved.failing') }
    : store.unsaved.value.size > 0
      ? { kind: 'saving', text: t('saved.saving') }
      : oldest
        ? {
            kind: 'waiting',
            text: t('saved.waiting', {
              count: waiting.length,
              age: ageText(Math.max(0, nowMs.value - oldest.madeAtMs)),
            }),
          }
        : { kind: 'sent', text: t('saved.allSent') };
  return (
    <p class={`safe ${state.kind}`} role="status">
      <span class="safe-mark" aria-hidden="true">
        {MARKS[state.kind]}
      </span>
      <span data-saved={state.kind}>{state.text}</span>
      <span class={`link ${link}`} data-link={link}>
        {t(`link.${link}`)}
      </span>
    </p>
  );
}

/** Beside the words, never instead of them. */
const MARKS: Readonly<Record<string, string>> = { failing: '!', saving: '…', waiting: '↥', sent: '✓' };
