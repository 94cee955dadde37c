import { useSignal } from '@preact/signals';
import { timeText } from '../../labels/format.js';
import { o, oCode } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import { useOffice } from '../office.js';
import { isOpenStanding } from '../waiting.js';
import type { Competition, DecisionRequest } from './competition-now.js';

const ANSWER = `entry { standing hold { message remedy } } userErrors { message rule remedy }`;
const POST = `mutation OfficePost($input: ResultPostInput!) { resultPost(input: $input) { userErrors { message rule remedy } } }`;
const SIGN = `mutation OfficeSign($input: CompetitionSignOffInput!) { competitionSignOff(input: $input) { ${ANSWER} } }`;
const CONFIRM = `mutation OfficeConfirm($input: CompetitionConfirmInput!) { competitionConfirm(input: $input) { ${ANSWER} } }`;
const REOPEN = `mutation OfficeReopen($input: CompetitionReopenInput!) { competitionReopen(input: $input) { ${ANSWER} } }`;

interface Props {
  readonly competition: Competition;
}

/** Posting, signing and opening again, each where it is its turn. */
export function Signing({ competition }: Props) {
  const office = useOffice();
  const { status, decisionRequests, resultState } = competition;
  const [newest] = decisionRequests;
  const request = newest?.entryId === null ? newest : null;
  const isOfficial = status === 'OFFICIAL';
  return (
    <section class="panel">
      <h3>{o('signing.title')}</h3>
      {office.mayDecide && !isOfficial && resultState.postedAt === null && <Post competition={competition} />}
      {request && <Confirm competition={competition} request={request} />}
      {!isOfficial && request?.kind !== 'SIGN_OFF' && <Sign competition={competition} />}
      {isOfficial && office.has('DIRECTOR') && request?.kind !== 'REOPENING' && (
        <Reopen competition={competition} />
      )}
      {isOfficial && !office.has('DIRECTOR') && <p class="hint">{o('signing.directorReopens')}</p>}
    </section>
  );
}

/** Why trials are outstanding, asked only when some are. */
function useIncomplete({ progress }: Competition) {
  const why = useSignal('');
  const isComplete = progress.phase === 'complete' || progress.phase === 'official';
  return {
    incomplete: isComplete ? null : why.value.trim(),
    isReady: isComplete || why.value.trim() !== '',
    field: isComplete ? null : <TextField label={o('signing.incomplete')} value={why} />,
  };
}

function Post({ competition }: Props) {
  const act = useAct();
  const { incomplete, isReady, field } = useIncomplete(competition);
  const place = useSignal('');
  const { id: competitionId, table, protestTimes } = competition;
  const time = protestTimes.find(({ ground }) => ground === 'RULES');
  const post = () =>
    act(POST, {
      ...{ competitionId, entryId: uuidV7(), expectedVersion: table.version, incomplete },
      place: place.value.trim() || null,
    });
  return (
    <div class="step">
      {time && time.minutes !== null && (
        <p class="hint">{o('signing.postHow', { minutes: time.minutes, rule: time.rule })}</p>
      )}
      {field}
      <TextField label={o('signing.place')} value={place} />
      <Button isDisabled={!isReady} onPress={post}>
        {o('signing.post')}
      </Button>
    </div>
  );
}

/** Why it is signed before protests are decided and their time is over, asked only while that is so. */
function useDespite({ protests, resultState }: Competition) {
  const { nowMs } = useOffice();
  const why = useSignal('');
  const isOpen = protests.some(({ standing }) => isOpenStanding(standing));
  const until = resultState.protestsUntil === null ? 0 : Date.parse(resultState.protestsUntil);
  const isRunning = until >= nowMs.value;
  const field = (isOpen || isRunning) && (
    <>
      <p class="notice warning">
        {isOpen ? o('signing.protestOpen') : o('signing.timeRuns', { time: timeText(until) })}
      </p>
      <TextField label={o('signing.despite')} value={why} />
    </>
  );
  return {
    despite: why.value.trim() || null,
    isReady: (!isOpen && !isRunning) || why.value.trim() !== '',
    field,
  };
}

function Sign({ competition }: Props) {
  const office = useOffice();
  const act = useAct();
  const incomplete = useIncomplete(competition);
  const despite = useDespite(competition);
  const { id: competitionId, table, meet } = competition;
  const isFirst = meet.needsSecondPerson;
  if (!office.mayDecide && !isFirst) return <p class="hint">{o('signing.refereeSigns')}</p>;
  const sign = () =>
    act(SIGN, {
      ...{ competitionId, entryId: uuidV7(), expectedVersion: table.version },
      ...{ incomplete: incomplete.incomplete, despite: isFirst ? null : despite.despite },
    });
  return (
    <div class="step">
      {isFirst && <p class="hint">{o('signing.two')}</p>}
      {incomplete.field}
      {!isFirst && despite.field}
      <Button kind="main" isDisabled={!incomplete.isReady || (!isFirst && !despite.isReady)} onPress={sign}>
        {o('signing.sign')}
      </Button>
    </div>
  );
}

/** The second person's word. */
function Confirm({ competition, request }: Props & { readonly request: DecisionRequest }) {
  const office = useOffice();
  const act = useAct();
  const despite = useDespite(competition);
  const isSignature = request.kind === 'SIGN_OFF';
  const who = oCode('authority', request.authority);
  const confirm = () =>
    act(CONFIRM, {
      ...{ competitionId: competition.id, entryId: uuidV7(), requestId: request.id },
      despite: isSignature ? despite.despite : null,
    });
  return (
    <div class="step">
      <p class="notice held">
        {o(isSignature ? 'signing.signedBy' : 'signing.reopenAsked', {
          who,
          time: timeText(Date.parse(request.askedAt)),
        })}
        {request.reason !== null && ` ${request.reason}`}
      </p>
      {isSignature && request.version !== competition.version ? (
        <>
          <p>{o('signing.changed')}</p>
          <Sign competition={competition} />
        </>
      ) : office.mayDecide ? (
        <>
          {isSignature && despite.field}
          <Button kind="main" isDisabled={isSignature && !despite.isReady} onPress={confirm}>
            {o('signing.confirm')}
          </Button>
        </>
      ) : (
        <p class="hint">{o('signing.secondSigns')}</p>
      )}
    </div>
  );
}

function Reopen({ competition }: Props) {
  const act = useAct();
  const why = useSignal('');
  const reason = why.value.trim();
  return (
    <details class="step">
      <summary>{o('signing.reopen')}</summary>
      <p class="hint">{o('signing.reopenHow')}</p>
      <TextField label={o('reason')} value={why} />
      <Button
        kind="danger"
        isDisabled={reason === ''}
        onPress={() => act(REOPEN, { competitionId: competition.id, entryId: uuidV7(), reason })}
      >
        {o('signing.reopen')}
      </Button>
    </details>
  );
}
