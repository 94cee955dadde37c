import { a } from '../../labels/account/words.js';
import { ageText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { n } from '../../labels/notebook/words.js';
import { Button } from '../../ui/Button.jsx';
import { useNotebook } from '../notebook.js';

/** Who works here, and what of the writing is on its way. */
export function Header() {
  const notebook = useNotebook();
  const { session, store } = notebook;
  const unsent = store.outbox.value.length;
  return (
    <header class="head">
      <h1>{n('notebook')}</h1>
      {session.grants.value !== null && (
        <div class="who">
          <SentState />
          <span class="name">{session.name.value}</span>
          {unsent > 0 ? (
            <span class="hint">{n('signOut.later')}</span>
          ) : (
            <Button kind="quiet" onPress={() => void notebook.signOut()}>
              {a('signOut')}
            </Button>
          )}
        </div>
      )}
    </header>
  );
}

/** How many throws wait on this phone, and since when. */
function SentState() {
  const { store, link, nowMs } = useNotebook();
  const waiting = store.waiting.value;
  const oldest = Math.min(...waiting.map(({ madeAtMs }) => madeAtMs));
  const isAway = link.value === 'offline' || link.value === 'no-right';
  return (
    <p
      class={`link ${isAway ? 'offline' : ''}`}
      role="status"
      data-link={link.value}
      data-saved={waiting.length > 0 ? 'waiting' : 'sent'}
    >
      {t(`link.${link.value}`)}
      {' · '}
      {waiting.length === 0
        ? t('saved.allSent')
        : t('saved.waiting', {
            count: waiting.length,
            age: ageText(Math.max(0, nowMs.value - oldest)),
          })}
    </p>
  );
}
