import { useSignal } from '@preact/signals';
import {
  INTERRUPTION_CAUSES,
  INTERRUPTION_CAUTIONS,
  safetyChecklist,
  SAFETY_CAUTION,
  waitsUntil,
  type InterruptionCause,
  type SafetyCheckCode,
} from '#rules';
import { timeText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { useOpen } from '../desk-context.js';

/** Stops the competition at once: nobody is called until the all-clear. */
export function StopButton() {
  const { desk } = useOpen();
  const isAsking = useSignal(false);
  const cause = useSignal<InterruptionCause | null>(null);
  const stop = async () => {
    if (cause.value === null) return;
    const body = { kind: 'interruption', cause: cause.value, note: null, seenAt: Date.now() } as const;
    const verdict = await desk.enter(body, () => t('stop.title'));
    if (verdict?.standing !== 'refused') isAsking.value = false;
  };
  return (
    <>
      <Button kind="danger" onPress={() => (isAsking.value = true)}>
        {t('stop')}
      </Button>
      {isAsking.value && (
        <Dialog title={t('stop')} onClose={() => (isAsking.value = false)}>
          <Choice<InterruptionCause>
            legend={t('stop.why')}
            value={cause.value}
            options={INTERRUPTION_CAUSES.map((value) => ({ value, text: tCode('cause', value) }))}
            onChoose={(value) => (cause.value = value)}
          />
          <Button kind="danger" isDisabled={cause.value === null} onPress={stop}>
            {t('stop.go')}
          </Button>
        </Dialog>
      )}
    </>
  );
}

/** What has stopped the competition, and the checklist that lets it go on. */
export function Stopped() {
  const { open } = useOpen();
  const isClearing = useSignal(false);
  const { safety, setup } = open.folded.state;
  if (safety.stops.length === 0) return null;
  const until = waitsUntil(safety.stops, setup.rules);
  return (
    <section class="notice refused stopped">
      <h2>{t('stop.title')}</h2>
      <ul>
        {safety.stops.map(({ entry, cause, seenAt }) => (
          <li key={entry}>
            {tCode('cause', cause)} · {timeText(seenAt)}
            <br />
            <span lang="en">{INTERRUPTION_CAUTIONS[cause]}</span>
          </li>
        ))}
      </ul>
      {until !== null && <p>{t('stop.until', { time: timeText(until) })}</p>}
      <p>{t('safety.decides')}</p>
      <Button onPress={() => (isClearing.value = true)}>{t('clear')}</Button>
      {isClearing.value && <AllClear onClose={() => (isClearing.value = false)} />}
    </section>
  );
}

function AllClear({ onClose }: { readonly onClose: () => void }) {
  const { desk, open } = useOpen();
  const checks = safetyChecklist(open.folded.state.setup.event);
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
      () => t('clear.confirm'),
    );
    if (verdict?.standing !== 'refused') onClose();
  };
  const said = desk.said.value;
  return (
    <Dialog title={t('clear')} onClose={onClose}>
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
      <label class="switch">
        <input
          type="checkbox"
          checked={hasNewWarmUp.value}
          onChange={({ currentTarget }) => (hasNewWarmUp.value = currentTarget.checked)}
        />
        <span>{t('clear.warmUp')}</span>
      </label>
      <p class="hint" lang="en">
        {SAFETY_CAUTION}
      </p>
      {said?.kind === 'refused' && (
        <p class="notice refused" role="alert" lang="en">
          {said.text} {said.remedy}
        </p>
      )}
      <Button kind="main" isDisabled={confirmed.value.size < checks.length} onPress={clear}>
        {t('clear.confirm')}
      </Button>
    </Dialog>
  );
}
