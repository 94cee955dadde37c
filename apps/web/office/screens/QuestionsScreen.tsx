import { useSignal } from '@preact/signals';
import { localDecimals, placeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { a } from '../../labels/account/words.js';
import { o, oCode } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import { saidInEntry } from '../said-in-entry.js';
import { useOffice } from '../office.js';
import { useReading } from '../reading.js';
import { addressOf } from '../../ui/route.js';

const QUESTIONS = `query OfficeQuestions($id: ID!) {
  meet(id: $id) { questions {
    competition { id title unit } entry about holdCode message remedy bib name body
    ifCounted { obstacle changes { bib name placeBefore placeAfter markBefore markAfter } }
    ifDismissed { obstacle changes { bib name placeBefore placeAfter markBefore markAfter } }
  } }
}`;

const RULE = `mutation OfficeRule($input: EntryRuleInput!) {
  entryRule(input: $input) { entry { standing hold { message remedy } } userErrors { message rule remedy } }
}`;

interface Change {
  readonly bib: string;
  readonly name: string;
  readonly placeBefore: number | null;
  readonly placeAfter: number | null;
  readonly markBefore: string | null;
  readonly markAfter: string | null;
}

interface Effect {
  readonly obstacle: string | null;
  readonly changes: readonly Change[];
}

interface Question {
  readonly competition: { readonly id: string; readonly title: string; readonly unit: string };
  readonly entry: string;
  readonly about: string;
  readonly message: string | null;
  readonly remedy: string | null;
  readonly bib: string | null;
  readonly name: string | null;
  readonly body: unknown;
  readonly ifCounted: Effect;
  readonly ifDismissed: Effect;
}

/** Everything that waits for the referee, with what each answer would do. */
export function QuestionsScreen() {
  const office = useOffice();
  const read = useReading<{ meet: { questions: Question[] } }>(QUESTIONS, { id: office.meetId.value });
  if (!read) return <p>{a('reading')}</p>;
  const { questions } = read.meet;
  return (
    <section>
      <h2>{o('section.questions')}</h2>
      <p class="hint">{o('questions.how')}</p>
      {questions.length === 0 && <p>{o('questions.none')}</p>}
      <ul class="list">
        {questions.map((question) => (
          <li key={question.entry} class="card">
            <QuestionCard question={question} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function QuestionCard({ question }: { readonly question: Question }) {
  const act = useAct();
  const why = useSignal('');
  const { competition, bib, name, about, message, remedy } = question;
  const rule = (decision: 'COUNT' | 'DISMISS') =>
    act(RULE, {
      competitionId: competition.id,
      entryId: uuidV7(),
      targetEntryId: question.entry,
      decision,
      reason: why.value.trim(),
    });
  const isReady = why.value.trim() !== '';
  return (
    <>
      <h3>
        {bib !== null && (
          <>
            <span class="bib">{bib}</span> {name}:{' '}
          </>
        )}
        {saidInEntry(question.body, competition.unit)}
      </h3>
      <p>
        <a href={addressOf('competition', competition.id)}>{competition.title}</a> · {oCode('about', about)}
      </p>
      {message && <p>{message}</p>}
      {remedy && <p class="hint">{remedy}</p>}
      <TextField label={t('question.why')} value={why} />
      <div class="answers">
        <Answer
          effect={question.ifCounted}
          word={t('question.count')}
          isReady={isReady}
          onPress={() => rule('COUNT')}
        />
        <Answer
          effect={question.ifDismissed}
          word={t('question.dismiss')}
          isReady={isReady}
          onPress={() => rule('DISMISS')}
        />
      </div>
    </>
  );
}

interface AnswerProps {
  readonly effect: Effect;
  readonly word: string;
  readonly isReady: boolean;
  readonly onPress: () => void;
}

function Answer({ effect, word, isReady, onPress }: AnswerProps) {
  const { obstacle, changes } = effect;
  return (
    <div class="answer">
      <Button isDisabled={!isReady || obstacle !== null} onPress={onPress}>
        {word}
      </Button>
      {obstacle !== null ? (
        <p class="hint">{obstacle}</p>
      ) : changes.length === 0 ? (
        <p class="hint">{o('effect.none')}</p>
      ) : (
        <ul class="effects">
          {changes.map((change) => (
            <li key={change.bib}>{changeText(change)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function changeText({ bib, name, placeBefore, placeAfter, markBefore, markAfter }: Change): string {
  const at = (place: number | null, mark: string | null) =>
    [place === null ? '–' : placeText(place), mark === null ? null : localDecimals(mark)]
      .filter((one) => one !== null)
      .join(' ');
  return `${bib} ${name}: ${at(placeBefore, markBefore)} → ${at(placeAfter, markAfter)}`;
}
