import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { ageText, timeText } from '../../labels/format.js';
import { isLanguage, LANGUAGES, OWN_NAMES, t, type Language } from '../../labels/languages.js';
import { askForLastingStorage } from '../../offline/registration.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { hasWind } from '../competition/board.js';
import { unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useDesk, useOpen, type Desk } from '../desk-context.js';
import { bodyText } from '../entry/body-text.js';
import { CardSection } from './CardSection.jsx';
import { HandOver } from './HandOver.jsx';
import { Starters } from './Starters.jsx';

/** What is not sent, who starts, and how this device behaves. */
export function MoreScreen() {
  const { isWindsOnly } = useDesk();
  return (
    <section class="more-screen">
      <Returned />
      <Waiting />
      {!isWindsOnly.value && <CardSection />}
      {!isWindsOnly.value && <Starters />}
      <Device />
    </section>
  );
}

/** What the server would not take is never dropped silently: somebody looks at it. */
function Returned() {
  const { desk, open } = useOpen();
  const returned = desk.store.returned.value;
  if (returned.length === 0) return null;
  const again = (entryId: string) =>
    desk.store.change(entryId, { state: 'waiting', refusal: null, basedOn: open.kept.version });
  return (
    <section>
      <h2>{t('returned.title')}</h2>
      <ul class="list">
        {returned.map(({ entryId, body, refusal, state, madeAtMs }) => (
          <li key={entryId} class="notice refused">
            <p>
              <strong>
                {whoseText(desk, body)}
                {bodyText(body, unitIn(open.kept.head))}
              </strong>{' '}
              · {timeText(madeAtMs)}
            </p>
            <p lang={state === 'conflict' ? undefined : 'en'}>
              {state === 'conflict' ? t('returned.conflict') : `${refusal?.message} ${refusal?.remedy ?? ''}`}
            </p>
            <div class="pair">
              <Button onPress={() => again(entryId)}>{t('returned.again')}</Button>
              <Button kind="danger" onPress={() => desk.store.drop(entryId)}>
                {t('returned.drop')}
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The bib before what was entered. */
function whoseText(desk: Desk, body: Body): string {
  const person = desk.aboutWhom(body);
  return person === null ? '' : `${person.bib}: `;
}

function Waiting() {
  const { desk, open } = useOpen();
  const waiting = desk.store.waiting.value;
  return (
    <section>
      <h2>
        {t('more.waiting')} ({waiting.length})
      </h2>
      <ol class="plain-list">
        {waiting.map(({ entryId, body, madeAtMs }) => (
          <li key={entryId}>
            {whoseText(desk, body)}
            {bodyText(body, unitIn(open.kept.head))} · {ageText(Math.max(0, desk.nowMs.value - madeAtMs))}
          </li>
        ))}
      </ol>
      <HandOver />
    </section>
  );
}

function Device() {
  const { desk, open } = useOpen();
  const { settings, signIn } = desk.store;
  const isLasting = useSignal<boolean | null>(null);
  useEffect(() => void askForLastingStorage().then((lasting) => (isLasting.value = lasting)), []);
  const { vibrates, sounds, mode, language } = settings.value;
  return (
    <section>
      <h2>{t('more.device')}</h2>
      {signIn.value && <p>{t('more.signedInAs', { label: signIn.value.label })}</p>}
      {isLasting.value !== null && <p>{t(isLasting.value ? 'more.lasting' : 'more.notLasting')}</p>}
      {hasWind(open) && !desk.isWindsOnly.value && (
        <Switch
          text={t('more.windOnly')}
          isOn={mode === 'wind'}
          onChange={(isOn) => desk.store.keepSettings({ mode: isOn ? 'wind' : 'all' })}
        />
      )}
      <Switch
        text={t('more.vibrate')}
        isOn={vibrates}
        onChange={(isOn) => desk.store.keepSettings({ vibrates: isOn })}
      />
      <Switch
        text={t('more.sound')}
        isOn={sounds}
        onChange={(isOn) => desk.store.keepSettings({ sounds: isOn })}
      />
      <Choice<Language | 'own'>
        legend={t('more.language')}
        value={isLanguage(language) ? language : 'own'}
        options={[
          { value: 'own' as const, text: t('more.languageOwn') },
          ...LANGUAGES.map((value) => ({ value, text: OWN_NAMES[value] })),
        ]}
        onChoose={(value) => desk.store.keepSettings({ language: value === 'own' ? null : value })}
      />
      <Button onPress={() => desk.store.keepSettings({ open: null, group: null })}>
        {t('choose.other')}
      </Button>
    </section>
  );
}

interface SwitchProps {
  readonly text: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

function Switch({ text, isOn, onChange }: SwitchProps) {
  return (
    <label class="switch">
      <input
        type="checkbox"
        checked={isOn}
        onChange={({ currentTarget }) => onChange(currentTarget.checked)}
      />
      <span>{text}</span>
    </label>
  );
}
