import { useSignal } from '@preact/signals';
import { timeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';

/** No competition is called so. */
const OTHER = ' ';
const MINUTES = ['10', '20', '30', '45'] as const;

/** Excused to another event, with the referee’s leave: where to, and for how long. */
export function AwayForm({
  competitor,
  onEnter,
}: {
  readonly competitor: string;
  readonly onEnter: (body: Body) => Promise<void>;
}) {
  const { desk, open } = useOpen();
  const { alsoEntered } = desk.personOf(competitor);
  const chosen = useSignal<string>(alsoEntered[0]?.title ?? OTHER);
  const words = useSignal('');
  const to = chosen.value === OTHER ? words.value.trim() : chosen.value;
  const minutes = useSignal<(typeof MINUTES)[number] | 'open'>('20');
  const away = open.folded.state.away.get(competitor);
  const until = minutes.value === 'open' ? null : Date.now() + Number(minutes.value) * 60_000;
  if (away) {
    return (
      <>
        <p>
          {t('away.to', { to: away.to })}
          {away.until !== null && ` · ${t('away.until', { time: timeText(away.until) })}`}
        </p>
        <Button kind="main" onPress={() => onEnter({ kind: 'excuse', competitor, to: null, until: null })}>
          {t('away.back')}
        </Button>
      </>
    );
  }
  return (
    <>
      <p class="hint">{t('away.how')}</p>
      {alsoEntered.length > 0 && (
        <Choice<string>
          legend={t('away.where')}
          value={chosen.value}
          options={[
            ...alsoEntered.map(({ title }) => ({ value: title, text: title })),
            { value: OTHER, text: t('away.elsewhere') },
          ]}
          onChoose={(value) => (chosen.value = value)}
        />
      )}
      {chosen.value === OTHER && <TextField label={t('away.where')} value={words} />}
      <Choice<(typeof MINUTES)[number] | 'open'>
        legend={t('away.howLong')}
        value={minutes.value}
        options={[
          ...MINUTES.map((value) => ({ value, text: t('age.minutes', { count: value }) })),
          { value: 'open' as const, text: t('away.open') },
        ]}
        onChoose={(value) => (minutes.value = value)}
      />
      <Button
        kind="main"
        isDisabled={to === ''}
        onPress={() => onEnter({ kind: 'excuse', competitor, to, until })}
      >
        {t('away.go')}
      </Button>
    </>
  );
}
