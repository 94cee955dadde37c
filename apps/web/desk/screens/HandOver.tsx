import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useDesk } from '../desk-context.js';
import { openFile } from '../keeping/files.js';
import { handOver, readHandOver } from '../keeping/hand-over.js';

/** Takes what is not sent to another device, as a file, and takes such a file in. */
export function HandOver() {
  const { store } = useDesk();
  const said = useSignal<string | null>(null);
  const save = () => {
    const file = new Blob([handOver(store.outbox.value)], { type: 'application/json' });
    openFile(file, `sectorline-${new Date().toISOString().slice(0, 16).replace(/\D/g, '')}.json`);
  };
  const readIn = async ({ currentTarget }: { readonly currentTarget: HTMLInputElement }) => {
    const [file] = currentTarget.files ?? [];
    if (!file) return;
    const entries = readHandOver(await file.text());
    currentTarget.value = '';
    if (entries) await store.takeIn(entries);
    said.value = entries ? t('more.imported', { count: entries.length }) : t('more.notImported');
  };
  return (
    <div class="hand-over">
      <Button isDisabled={store.outbox.value.length === 0} onPress={save}>
        {t('more.export')}
      </Button>
      <label class="field">
        <span>{t('more.import')}</span>
        <input type="file" accept="application/json,.json" onChange={readIn} />
      </label>
      {said.value && <p role="status">{said.value}</p>}
    </div>
  );
}
