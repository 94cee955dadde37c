import { a } from '../../labels/account/words.js';
import { o } from '../../labels/office/words.js';
import { useOffice } from '../office.js';
import { useReading } from '../reading.js';
import { addressOf, route } from '../../ui/route.js';
import { StateLine } from '../screens/StateLine.jsx';
import { COMPETITION, type Competition } from './competition-now.js';
import { Crew } from './Crew.jsx';
import { Disqualify } from './Disqualify.jsx';
import { Protests } from './Protests.jsx';
import { Signing } from './Signing.jsx';
import { Standing } from './Standing.jsx';
import { WhoIsIt } from './WhoIsIt.jsx';

/** One competition: where its result stands, and everything that is decided about it. */
export function CompetitionScreen() {
  const office = useOffice();
  const read = useReading<{ competition: Competition | null }>(COMPETITION, { id: route.value.id ?? '' });
  if (!read?.competition) return <p>{a('reading')}</p>;
  const { competition } = read;
  return (
    <div class="competition-screen" key={competition.id}>
      <p>
        <a href={addressOf('meet')}>← {o('section.meet')}</a>
      </p>
      <h2>{competition.title}</h2>
      <StateLine state={competition.resultState} phase={competition.progress.phase} />
      {office.mayDecide && <WhoIsIt competition={competition} />}
      <Protests competition={competition} />
      <Standing competition={competition} />
      <Signing competition={competition} />
      {office.mayDecide && <Disqualify competition={competition} />}
      {competition.crew && <Crew competition={competition} crew={competition.crew} />}
    </div>
  );
}
