import { language } from '../../labels/languages.js';
import { o } from '../../labels/office/words.js';
import { useOffice } from '../office.js';
import { addressOf, route } from '../../ui/route.js';
import { SECTIONS } from '../sections.js';
import { Header } from './Header.jsx';
import { SaidLine } from './SaidLine.jsx';
import { SignInScreen } from './SignInScreen.jsx';

/** The whole office: who is here, where one can go, and what was chosen. */
export function App() {
  const office = useOffice();
  document.documentElement.lang = language.value;
  const isOut = office.session.grants.value === null;
  return (
    <>
      <Header />
      {isOut ? <SignInScreen /> : <Work />}
    </>
  );
}

function Work() {
  const office = useOffice();
  const sections = SECTIONS.filter(({ isFor }) => isFor?.(office) ?? true);
  const { section } = route.value;
  const { key, Screen } = sections.find((one) => one.key === section) ?? sections[0]!;
  return (
    <div class="office-body">
      <nav class="sections" aria-label={o('office')}>
        {sections
          .filter(({ isWithin }) => !isWithin)
          .map((one) => (
            <a key={one.key} href={addressOf(one.key)} aria-current={one.key === key ? 'page' : undefined}>
              {o(one.label)}
            </a>
          ))}
      </nav>
      <main class="office-main">
        <SaidLine />
        {office.meetId.value === null && office.meets.value !== null ? <p>{o('meet.none')}</p> : <Screen />}
      </main>
    </div>
  );
}
