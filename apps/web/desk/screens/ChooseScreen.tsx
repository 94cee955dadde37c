import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useDesk, type Desk } from '../desk-context.js';
import { recordable, type Recordable } from '../session.js';

const AGAIN_MS = 3_000;

/** The competitions of the token, and those that are on this device already. */
export function ChooseScreen() {
  const desk = useDesk();
  const found = useSignal<readonly Recordable[]>(keptOf(desk));
  const problem = useSignal<string | null>(null);
  /** False: there was no answer, so it is asked again. */
  const look = async (): Promise<boolean> => {
    const { signIn } = desk.store;
    const rows = signIn.value && (await recordable(desk.client, signIn.value));
    if (rows === null) return true;
    if ('kind' in rows) return rows.kind !== 'unreachable' && rows.kind !== 'unavailable';
    found.value = rows;
    const [only] = rows;
    if (!only) problem.value = t('choose.none');
    return only === undefined || rows.length > 1 || openAll(desk, only);
  };
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    let isGone = false;
    const lookUntilAnswered = async () => {
      if (!(await look()) && !isGone) timer = setTimeout(() => void lookUntilAnswered(), AGAIN_MS);
    };
    void lookUntilAnswered();
    return () => {
      isGone = true;
      clearTimeout(timer);
    };
  }, []);
  const choose = async (chosen: Recordable) => {
    problem.value = (await openAll(desk, chosen)) ? null : t('choose.notKept');
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
        {found.value.map((one) => (
          <li key={one.id}>
            <Button onPress={() => choose(one)}>
              <strong>{one.title}</strong>
              <span>
                {one.meet} · {tCode('status', one.status)}
              </span>
            </Button>
          </li>
        ))}
      </ul>
    </main>
  );
}

/** Opens what is on this device at once; what is not is read first. */
async function openAll(desk: Desk, { id, group }: Recordable): Promise<boolean> {
  const ids = group?.competitionIds ?? [id];
  for (const one of ids) if (!(await isThere(desk, one))) return false;
  const [first] = ids;
  if (first !== undefined) await desk.store.keepSettings({ group, open: first });
  return first !== undefined;
}

async function isThere({ store, reading }: Desk, id: string): Promise<boolean> {
  if (!store.competitions.value.some((one) => one.id === id)) return reading.readOn(id);
  void reading.readOn(id);
  return true;
}

function keptOf({ store }: Desk): readonly Recordable[] {
  return store.competitions.value.map(({ id, head: { title, status, meet } }) => ({
    id,
    title,
    status,
    startsAt: null,
    meet: meet.name,
    group: null,
  }));
}
