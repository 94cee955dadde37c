import { a } from '../../labels/account/words.js';
import { dayText, localDecimals } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { Button } from '../../ui/Button.jsx';
import { addressOf, route } from '../../ui/route.js';
import { useFindings } from '../athlete/reading.js';
import { dayOf, useNotebook, type Notebook } from '../notebook.js';
import { AttemptsPlot, implementText, metres } from '../plots/AttemptsPlot.jsx';
import { thrownBy } from '../practice/practice-day.js';
import { pointOf, said } from '../practice/words.js';
import type { AthleteNotes } from '../shapes.js';
import { ConsentSection } from './ConsentSection.jsx';
import { ReleaseSection } from './ReleaseSection.jsx';
import { openFocuses } from './squad-state.js';

/** What an athlete and the parents see; a coach sees the same, and decides what is in it. */
export function OwnScreen() {
  const notebook = useNotebook();
  const all = notebook.athletes.value;
  const athlete = notebook.athlete(route.value.id) ?? (notebook.isCoach ? null : (all[0] ?? null));
  if (!athlete) return <p>{n(all.length === 0 ? 'own.nobody' : 'athlete.none')}</p>;
  return (
    <>
      {all.length > 1 && !notebook.isCoach && (
        <p class="links">
          {all.map((one) => (
            <a key={one.athleteId} href={addressOf('own', one.athleteId)}>
              {one.name}
            </a>
          ))}
        </p>
      )}
      <Own key={athlete.athleteId} athlete={athlete} />
    </>
  );
}

function Own({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  return (
    <section class="own">
      <Sheet athlete={athlete} />
      <div class="beside">
        <Button onPress={() => print()}>{n('own.print')}</Button>
        {athlete.isCoach && <ReleaseSection athlete={athlete} />}
        <ConsentSection athlete={athlete} today={dayOf(notebook.nowMs.value)} />
      </div>
    </section>
  );
}

function isReleased({ releases }: AthleteNotes, what: string): boolean {
  return releases.some((one) => one.what === what && one.isOpen);
}

/** One page, in words for somebody of fourteen and the parents: own throws, what is worked on, nothing that compares. */
function Sheet({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  const { event } = thrownBy(notebook, athlete);
  const filter = { event, implementGrams: null, from: null, to: null, thrownIn: null };
  const { analysis, history } = useFindings(athlete.athleteId, filter);
  const throws = history.value ?? [];
  const marked = throws.filter(({ mark }) => mark !== null);
  const [first] = throws;
  return (
    <div class="sheet">
      <h2>{athlete.name}</h2>
      <p>{n('own.asOf', { event: nCode('event', event), date: dayText(dayOf(notebook.nowMs.value)) })}</p>
      {history.value === null && <p class="hint">{a('reading')}</p>}
      {history.value !== null && !first && <p>{n('own.nothing')}</p>}
      {first && (
        <p>{n('own.count', { count: throws.length, date: dayText(first.onDate), marked: marked.length })}</p>
      )}
      <ul class="cards">
        {bestsOf(throws).map(({ one, before }) => (
          <li key={implementText(one)} class="card">
            <h3>{implementText(one)}</h3>
            <p>{n('own.best', { mark: localDecimals(one.mark!), date: dayText(one.onDate) })}</p>
            {before !== null && <p>{n('own.further', { metres: metres(before) })}</p>}
          </li>
        ))}
      </ul>
      {throws.length > 0 && <AttemptsPlot history={throws} implements={ownLines(analysis.value)} />}
      <Try athlete={athlete} notebook={notebook} tryNext={analysis.value?.tryNext ?? null} />
      {analysis.value?.askHowTheAthleteFeels && athlete.isCoach && (
        <p class="notice held only-coach">{n('athlete.ask')}</p>
      )}
      <p class="hint">{n('own.how')}</p>
    </div>
  );
}

/** Without a trend: a line that goes on is a forecast, and nobody makes forecasts of children. */
function ownLines(analysis: ReturnType<typeof useFindings>['analysis']['value']) {
  return (analysis?.implements ?? []).map(
    ({ implement, implementGrams, variant, throws, best, progress }) => ({
      ...{ implement, implementGrams, variant, throws, best, progress },
    }),
  );
}

/** The best with each implement, and how much further it is than the best of the first day. */
function bestsOf(throws: Parameters<typeof AttemptsPlot>[0]['history']) {
  const groups = new Map<string, (typeof throws)[number][]>();
  for (const one of throws.filter(({ mark, isMeasured }) => mark !== null && isMeasured))
    groups.set(implementText(one), [...(groups.get(implementText(one)) ?? []), one]);
  return [...groups.values()].map((all) => {
    const cm = (one: (typeof throws)[number]): number => Math.round(Number(one.mark) * 100);
    const one = all.reduce((most, other) => (cm(other) > cm(most) ? other : most));
    const [{ onDate: firstDay }] = all as [(typeof throws)[number]];
    const first = Math.max(...all.filter(({ onDate }) => onDate === firstDay).map(cm));
    const more = cm(one) - first;
    return { one, before: more > 0 ? more : null };
  });
}

interface TryProps {
  readonly athlete: AthleteNotes;
  readonly notebook: Notebook;
  readonly tryNext: { readonly code: string; readonly point: string } | null;
}

/** One positive thing to try: what is worked on, if the coach shows it, else what stands out. */
function Try({ athlete, notebook, tryNext }: TryProps) {
  const isShown = isReleased(athlete, 'FOCUS');
  const focuses = isShown ? openFocuses(athlete) : [];
  const points = focuses.flatMap(({ event, code, what }) => {
    const point = pointOf(notebook, event, code);
    return point ? [what ? `${said(point.point)} (${what})` : said(point.point)] : [];
  });
  const shown = athlete.isChild ? points.slice(0, 1) : points;
  const all =
    shown.length > 0 ? shown : tryNext && isReleased(athlete, 'ANALYSIS') ? [said(tryNext.point)] : [];
  return (
    <section>
      <h3>{n('own.tryTitle')}</h3>
      {all.length === 0 && <p>{n('own.justThrow')}</p>}
      {all.map((point) => (
        <p key={point} class="try">
          {point}
        </p>
      ))}
    </section>
  );
}
