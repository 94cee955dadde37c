import { useSignal } from '@preact/signals';
import { eventOf } from '#rules';
import { localDecimals } from '../../labels/format.js';
import { language, t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { hasWind } from '../competition/board.js';
import { eventIn } from '../competition/head.js';
import { useOpen } from '../desk-context.js';
import { openFile } from '../keeping/files.js';

/** Stands in the way of the next call: what has to be done while the mark is still in the ground. */
export function RecordNotice() {
  const { desk, open } = useOpen();
  const { claims } = desk.store;
  const isPrinting = useSignal(false);
  const problem = useSignal<string | null>(null);
  const print = async () => {
    isPrinting.value = true;
    const form = await desk.client.paper(
      `/print/competitions/${open.kept.id}/record-form.pdf?lang=${language.value}`,
    );
    isPrinting.value = false;
    problem.value = form ? null : t('claim.notPrinted');
    if (form) openFile(form, 'record-form.pdf');
  };
  const isThrow = eventOf(eventIn(open.kept.head)).kind === 'throw';
  const steps = [
    t('claim.stays'),
    t('claim.again'),
    ...(isThrow ? [t('claim.implement')] : []),
    ...(hasWind(open) ? [t('claim.wind')] : []),
    t('claim.names'),
  ];
  return (
    <section class="read-back" role="alert">
      <h2>{t('claim.title')}</h2>
      {claims.value.map(({ kind, bib, mark, before, of }) => (
        <p key={`${kind} ${bib} ${of}`}>
          <strong>{tCode('claim', kind)}</strong> {of} ·{' '}
          {t('claim.mark', {
            who: bib,
            mark: localDecimals(mark),
            before: before === null ? '–' : localDecimals(before),
          })}
        </p>
      ))}
      <ol class="steps">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <Button onPress={print} isDisabled={isPrinting.value}>
        {t('claim.print')}
      </Button>
      {problem.value && (
        <p class="notice refused" role="alert">
          {problem.value}
        </p>
      )}
      <p class="hint">{t('safety.decides')}</p>
      <Button kind="main" onPress={() => (claims.value = [])}>
        {t('claim.done')}
      </Button>
    </section>
  );
}
