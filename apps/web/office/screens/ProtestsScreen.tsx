import { timeText } from '../../labels/format.js';
import { a } from '../../labels/account/words.js';
import { o, oCode } from '../../labels/office/words.js';
import { useOffice } from '../office.js';
import { useReading } from '../reading.js';
import { addressOf } from '../../ui/route.js';
import { isOpenStanding } from '../waiting.js';

const PROTESTS = `query OfficeProtests($id: ID!) {
  meet(id: $id) { competitions { id title protests { id standing lodgedBy lodgedAt reason timeliness } } }
}`;

interface Read {
  readonly meet: {
    readonly competitions: readonly {
      readonly id: string;
      readonly title: string;
      readonly protests: readonly {
        readonly id: string;
        readonly standing: string;
        readonly lodgedBy: string;
        readonly lodgedAt: string;
        readonly reason: string;
        readonly timeliness: string;
      }[];
    }[];
  };
}

/** Every protest of the meet, what is open first. One is lodged and decided at its competition. */
export function ProtestsScreen() {
  const read = useReading<Read>(PROTESTS, { id: useOffice().meetId.value });
  if (!read) return <p>{a('reading')}</p>;
  const all = read.meet.competitions.flatMap((at) => at.protests.map((protest) => ({ at, protest })));
  all.sort((a, b) => Number(isOpenStanding(b.protest.standing)) - Number(isOpenStanding(a.protest.standing)));
  return (
    <section>
      <h2>{o('section.protests')}</h2>
      <p class="hint">{o('protests.how')}</p>
      {all.length === 0 && <p>{o('protests.none')}</p>}
      <ul class="list">
        {all.map(({ at, protest }) => (
          <li key={protest.id} class="card">
            <h3>
              <a href={addressOf('competition', at.id)}>{at.title}</a>
            </h3>
            <p class="state">
              {oCode('protest', protest.standing)}
              {protest.timeliness !== 'IN_TIME' && ` · ${oCode('timeliness', protest.timeliness)}`}
            </p>
            <p>{protest.reason}</p>
            <p class="hint">
              {protest.lodgedBy}, {timeText(Date.parse(protest.lodgedAt))}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
