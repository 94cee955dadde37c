import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { useOpen } from '../desk-context.js';
import { CompetitorDialog } from './CompetitorDialog.jsx';
import { LateForm } from './LateForm.jsx';

/** Everybody of the list with what is out of the ordinary; each opens what can be done about it. */
export function Starters() {
  const { desk, open } = useOpen();
  const chosen = useSignal<string | null>(null);
  const isAdding = useSignal(false);
  const { competitors, away } = open.folded.state;
  return (
    <section>
      <h2>{t('more.people')}</h2>
      <ul class="list starters">
        {competitors.map(({ key, status }) => {
          const { bib, name, flight, isUnmatched, isLeftHanded } = desk.personOf(key);
          const said = [
            status === 'DNS' ? t('status.DNS') : null,
            status === 'DQ' ? t('status.DQ') : null,
            away.has(key) ? t('away.to', { to: away.get(key)!.to }) : null,
            isUnmatched ? t('late.unmatched') : null,
            isLeftHanded ? t('hand.short') : null,
            flight === null ? null : t('call.flight', { flight }),
          ].filter((text) => text !== null);
          return (
            <li key={key}>
              <Button onPress={() => (chosen.value = key)}>
                <strong>
                  <span class="bib">{bib}</span> {name}
                </strong>
                {said.length > 0 && <span>{said.join(' · ')}</span>}
              </Button>
            </li>
          );
        })}
      </ul>
      <Button onPress={() => (isAdding.value = true)}>{t('late.add')}</Button>
      {isAdding.value && (
        <Dialog title={t('late.add')} onClose={() => (isAdding.value = false)}>
          <LateForm onDone={() => (isAdding.value = false)} />
        </Dialog>
      )}
      {chosen.value !== null && (
        <CompetitorDialog competitor={chosen.value} onClose={() => (chosen.value = null)} />
      )}
    </section>
  );
}
