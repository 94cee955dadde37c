import { useSignal } from '@preact/signals';
import { safetyChecklist, SAFETY_CAUTION, type SafetyCheckCode } from '#rules';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { useOpen } from '../desk-context.js';

/** Goes through the checklist of the event, point by point: before the first warm-up trial and after every stop. */
export function AllClear({ onClose }: { readonly onClose: () => void }) {
  const { desk, open } = useOpen();
  const { safety, setup } = open.folded.state;
  const checks = safetyChecklist(setup.event);
  const isFirst = safety.stops.length === 0;
  const confirmed = useSignal<ReadonlySet<SafetyCheckCode>>(new Set());
  const hasNewWarmUp = useSignal(false);
  const toggle = (code: SafetyCheckCode, isOn: boolean) => {
    const others = [...confirmed.value].filter((one) => one !== code);
    confirmed.value = new Set(isOn ? [...others, code] : others);
  };
  const clear = async () => {
    const codes = checks.map(({ code }) => code).filter((code) => confirmed.value.has(code));
    const verdict = await desk.enter(
      {
        kind: 'all-clear',
        confirmed: codes,
        newWarmUp: hasNewWarmUp.value,
        clearedAt: Date.now(),
        despite: null,
      },
      () => t(isFirst ? 'first.confirm' : 'clear.confirm'),
    );
    if (verdict?.standing !== 'refused') onClose();
  };
  const said = desk.said.value;
  return (
    <Dialog title={t(isFirst ? 'first.title' : 'clear')} onClose={onClose}>
      {checks.map(({ code, sentence }) => (
        <label key={code} class="switch">
          <input
            type="checkbox"
            checked={confirmed.value.has(code)}
            onChange={({ currentTarget }) => toggle(code, currentTarget.checked)}
          />
          <span>
            {tCode('check', code)}{' '}
            <span class="hint" lang="en">
              {sentence}
            </span>
          </span>
        </label>
      ))}
      {!isFirst && (
        <label class="switch">
          <input
            type="checkbox"
            checked={hasNewWarmUp.value}
            onChange={({ currentTarget }) => (hasNewWarmUp.value = currentTarget.checked)}
          />
          <span>{t('clear.warmUp')}</span>
        </label>
      )}
      <p class="hint" lang="en">
        {SAFETY_CAUTION}
      </p>
      {said?.kind === 'refused' && (
        <p class="notice refused" role="alert" lang="en">
          {said.text} {said.remedy}
        </p>
      )}
      <Button kind="main" isDisabled={confirmed.value.size < checks.length} onPress={clear}>
        {t(isFirst ? 'first.confirm' : 'clear.confirm')}
      </Button>
    </Dialog>
  );
}
