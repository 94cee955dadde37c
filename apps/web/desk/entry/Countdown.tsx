import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { secondsText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useDesk } from '../desk-context.js';
import { warn } from './warning.js';

interface CountdownProps {
  readonly seconds: number;
  /** Why it is that long, where that is not plain. */
  readonly because: string | null;
}

/** The last seconds in which a yellow flag is shown. */
const WARNING_S = 15;

/** The time allowed for one trial. The official starts it; it decides nothing. */
export function Countdown({ seconds, because }: CountdownProps) {
  const { settings } = useDesk().store;
  const startedAtMs = useSignal<number | null>(null);
  const leftS = useSignal(seconds);
  useEffect(() => {
    const timer = setInterval(() => {
      if (startedAtMs.value === null) return;
      const left = Math.ceil(seconds - (Date.now() - startedAtMs.value) / 1000);
      const before = leftS.value;
      leftS.value = Math.max(0, left);
      if ((before > WARNING_S && left <= WARNING_S) || (before > 0 && left <= 0)) warn(settings.value);
    }, 200);
    return () => clearInterval(timer);
  }, [seconds]);
  const start = () => {
    startedAtMs.value = Date.now();
    leftS.value = seconds;
  };
  if (startedAtMs.value === null) {
    return (
      <div class="clock">
        <Button onPress={start}>{t('time.start', { time: secondsText(seconds) })}</Button>
        {because && <p>{because}</p>}
      </div>
    );
  }
  const left = leftS.value;
  const kind = left === 0 ? 'over' : left <= WARNING_S ? 'warning' : 'running';
  return (
    <div class={`clock ${kind}`}>
      <p class="clock-time" role="timer" aria-label={t('time.allowed')}>
        {secondsText(left)}
      </p>
      {kind !== 'running' && <p class="clock-word">{t(kind === 'over' ? 'time.over' : 'time.warning')}</p>}
      <Button kind="quiet" onPress={() => (startedAtMs.value = null)}>
        {t('time.stop')}
      </Button>
    </div>
  );
}
