import { t } from '../../labels/languages.js';
import { useDesk, type Tab } from '../desk-context.js';
import { ChooseScreen } from './ChooseScreen.jsx';
import { EntryScreen } from './EntryScreen.jsx';
import { Header } from './Header.jsx';
import { MoreScreen } from './MoreScreen.jsx';
import { SignInForm, SignInScreen } from './SignInScreen.jsx';
import { StandingScreen } from './StandingScreen.jsx';
import { TrialDialog } from './TrialDialog.jsx';

/** The whole desk. What is on this device is shown whether there is a network or not. */
export function App() {
  const desk = useDesk();
  const { signIn, open, link } = desk.store;
  const isOut = signIn.value === null || (link.value === 'no-right' && open.value === null);
  return (
    <>
      <Header />
      {isOut ? <SignInScreen /> : open.value ? <Competition /> : <ChooseScreen />}
    </>
  );
}

const TABS: readonly Tab[] = ['entry', 'standing', 'more'];

function Competition() {
  const desk = useDesk();
  const tab = desk.tab.value;
  const trial = desk.trial.value;
  const returned = desk.store.returned.value.length;
  const turnTo = (name: Tab) => {
    desk.tab.value = name;
    scrollTo(0, 0);
  };
  return (
    <>
      <main class={`work tab-${tab}`}>
        {desk.store.link.value === 'no-right' && (
          <details class="notice refused">
            <summary>{t('signIn.again')}</summary>
            <SignInForm />
          </details>
        )}
        {tab === 'more' ? (
          <MoreScreen />
        ) : (
          <>
            <EntryScreen />
            <StandingScreen />
          </>
        )}
      </main>
      <nav class="tabs" aria-label={t('desk')}>
        {TABS.map((name) => (
          <button
            key={name}
            type="button"
            aria-current={name === tab ? 'page' : undefined}
            class={`tab to-${name}`}
            onClick={() => turnTo(name)}
          >
            {t(`tab.${name}`)}
            {name === 'more' && returned > 0 && <span class="count"> ({returned})</span>}
          </button>
        ))}
      </nav>
      {trial !== null && <TrialDialog id={trial} />}
    </>
  );
}
