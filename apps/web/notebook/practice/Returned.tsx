import { n } from '../../labels/notebook/words.js';
import { Button } from '../../ui/Button.jsx';
import { useNotebook } from '../notebook.js';

/** What the server would not take: it stays here until somebody has looked at it. */
export function Returned() {
  const { store, sending } = useNotebook();
  const again = async (entryId: string) => {
    await store.change(entryId, { state: 'waiting', refusal: null });
    sending.go();
  };
  if (store.returned.value.length === 0) return null;
  return (
    <section class="returned">
      <h3>{n('returned.title')}</h3>
      <ul class="list">
        {store.returned.value.map(({ entryId, about, refusal }) => (
          <li key={entryId} class="notice refused">
            <p>{about}</p>
            <p>{refusal?.message}</p>
            {refusal?.remedy && <p>{refusal.remedy}</p>}
            <div class="buttons">
              <Button onPress={() => void again(entryId)}>{n('returned.again')}</Button>
              <Button kind="danger" onPress={() => void store.drop(entryId)}>
                {n('returned.drop')}
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
