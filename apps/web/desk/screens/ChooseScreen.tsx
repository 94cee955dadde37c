import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useDesk, type Desk } from '../desk-context.js';
import { recordable, type Recordable } from '../session.js';

/** The competitions of the token, and those that are on this device already. */
export function ChooseScreen() {
  const desk = useDesk();
  const found = useSignal<readonly Recordable[]>(keptOf(desk));
  const problem = useSignal<string | null>(null);
  useEffect(() => {
    const { signIn } = desk.store;
    if (!signIn.value) return;
    void recordable(desk.client, signIn.value).then((rows) => {
      if ('kind' in rows) return;
      found.value = rows;
      const [only] = rows;
      if (only && rows.length === 1) void openOne(desk, only.id);
      else if (!only) problem.value = t('choose.none');
    });
  }, []);
  const choose = async (id: string) => {
    problem.value = (await openOne(desk, id)) ? null : t('choose.notKept');
  };
  return (
    <main class="page">
      <h2>{t('choose.title')}</h2>
      {problem.value && (
        <p class="notice refused" role="alert">
          {problem.value}
        </p>
      )}
      <ul class="list">
        {found.value.map(({ id, title, status, meet }) => (
          <li key={id}>
            <Button onPress={() => choose(id)}>
              <strong>{title}</strong>
              <span>
                {meet} · {tCode('status', status)}
              </span>
            </Button>
          </li>
        ))}
      </ul>
    </main>
  );
}

/** Opens what is on this device at once; what is not is read first. */
async function openOne(desk: Desk, id: string): Promise<boolean> {
  const { store, reading } = desk;
  const isKept = store.competitions.value.some((one) => one.id === id);
  const isRead = isKept ? void reading.readOn(id) : await reading.readOn(id);
  if (!isKept && isRead !== true) return false;
  await store.keepSettings({ open: id });
  return true;
}

function keptOf({ store }: Desk): readonly Recordable[] {
  return store.competitions.value.map(({ id, head: { title, status, meet } }) => ({
    id,
    title,
    status,
    startsAt: null,
    meet: meet.name,
  }));
}
