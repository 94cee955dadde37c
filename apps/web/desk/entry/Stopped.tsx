import { useSignal } from '@preact/signals';
import { INTERRUPTION_CAUSES, INTERRUPTION_CAUTIONS, waitsUntil, type InterruptionCause } from '#rules';
import { timeText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { useOpen } from '../desk-context.js';
import { AllClear } from './AllClear.jsx';

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
  const { desk, open } = useOpen();
  const isClearing = useSignal(false);
  const { safety, setup } = open.folded.state;
  if (safety.stops.length === 0) return null;
  const until = waitsUntil(safety.stops, setup.rules);
  return (
    <>
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
        {until !== null && <Lightning until={until} nowMs={desk.nowMs.value} />}
        <p>{t('safety.decides')}</p>
        <Button onPress={() => (isClearing.value = true)}>{t('clear')}</Button>
      </section>
      {isClearing.value && <AllClear onClose={() => (isClearing.value = false)} />}
    </>
  );
}

/** The wait after lightning. Each new flash or thunder starts it anew, with one tap. */
function Lightning({ until, nowMs }: { readonly until: number; readonly nowMs: number }) {
  const { desk } = useOpen();
  // The page's own clock may be some seconds old.
  const minutes = Math.max(0, Math.ceil((until - Math.max(nowMs, Date.now())) / 60_000));
  const again = () =>
    desk.enter({ kind: 'interruption', cause: 'lightning', note: null, seenAt: Date.now() }, () =>
      t('stop.again'),
    );
  return (
    <>
      <p>
        {t('stop.until', { time: timeText(until) })} ·{' '}
        <strong role="timer">{t('stop.left', { count: minutes })}</strong>
      </p>
      <Button kind="danger" onPress={again}>
        {t('stop.again')}
      </Button>
    </>
  );
}

/** Before anybody warms up: nobody has confirmed the checklist of the event yet. */
export function FirstChecklist() {
  const { open } = useOpen();
  const isChecking = useSignal(false);
  const { safety, attempts } = open.folded.state;
  if (safety.isConfirmed || safety.stops.length > 0 || attempts.size > 0) return null;
  return (
    <div class="first-checklist">
      <Button onPress={() => (isChecking.value = true)}>{t('first.open')}</Button>
      {isChecking.value && <AllClear onClose={() => (isChecking.value = false)} />}
    </div>
  );
}
