import type { ComponentType } from 'preact';
import { language } from '../../labels/languages.js';
import { n } from '../../labels/notebook/words.js';
import type { NotebookKey } from '../../labels/notebook/en.js';
import { addressOf, route } from '../../ui/route.js';
import { SignInForm } from '../../ui/SignInForm.jsx';
import { AthleteScreen } from '../athlete/AthleteScreen.jsx';
import { useNotebook } from '../notebook.js';
import { PracticeScreen } from '../practice/PracticeScreen.jsx';
import { Header } from './Header.jsx';
import { OwnScreen } from './OwnScreen.jsx';
import { ReviewScreen } from './ReviewScreen.jsx';
import { SaidLine } from './SaidLine.jsx';
import { SquadScreen } from './SquadScreen.jsx';

interface Section {
  readonly key: string;
  readonly label: NotebookKey;
  readonly Screen: ComponentType;
  /** Reached from the page of an athlete, so not among the sections. */
  readonly isWithin?: true;
}

const FOR_COACHES: readonly Section[] = [
  { key: 'squad', label: 'section.squad', Screen: SquadScreen },
  { key: 'practice', label: 'section.practice', Screen: PracticeScreen },
  { key: 'athlete', label: 'section.athlete', Screen: AthleteScreen, isWithin: true },
  { key: 'review', label: 'section.review', Screen: ReviewScreen, isWithin: true },
];

/** For an athlete and the guardians, and for a coach who looks at what they see. */
const FOR_ALL: readonly Section[] = [{ key: 'own', label: 'section.own', Screen: OwnScreen }];

/** The whole notebook: who is here, where one can go, and what was chosen. */
export function App() {
  const notebook = useNotebook();
  document.documentElement.lang = language.value;
  const isOut = notebook.session.grants.value === null;
  return (
    <>
      <Header />
      {isOut ? (
        <main class="notebook-main sign-in">
          <SignInForm title={n('signIn.title')} session={notebook.session} onIn={() => notebook.look()} />
        </main>
      ) : (
        <Work />
      )}
    </>
  );
}

function Work() {
  const notebook = useNotebook();
  const { isCoach } = notebook;
  const sections = isCoach ? [...FOR_COACHES, ...FOR_ALL] : FOR_ALL;
  const { section } = route.value;
  const { key, Screen } = sections.find((one) => one.key === section) ?? sections[0]!;
  const shown = isCoach ? FOR_COACHES.filter(({ isWithin }) => !isWithin) : [];
  return (
    <div class="notebook-body">
      {shown.length > 0 && (
        <nav class="sections" aria-label={n('notebook')}>
          {shown.map((one) => (
            <a key={one.key} href={addressOf(one.key)} aria-current={one.key === key ? 'page' : undefined}>
              {n(one.label)}
            </a>
          ))}
        </nav>
      )}
      <main class="notebook-main">
        <SaidLine />
        <Screen />
      </main>
    </div>
  );
}
