import type { Signal } from '@preact/signals';
import { e, eCode } from '../../labels/entries/words.js';
import { Choice } from '../../ui/Choice.jsx';
import type { AthleteQuestion, Candidate, ClubQuestion, LookedAt } from './documents.js';
import { athleteKey, clubKey, type Choices } from './table-choices.js';

interface QuestionsProps {
  readonly looked: LookedAt;
  readonly choices: Signal<Choices>;
}

/** Who is whom, and which club is which: nothing is guessed, so nothing is chosen before. */
export function Questions({ looked, choices }: QuestionsProps) {
  const choose = (key: string, value: string) => (choices.value = { ...choices.value, [key]: value });
  return (
    <>
      {looked.clubQuestions.map((question) => (
        <Choice
          key={clubKey(question)}
          legend={e('club.question', { line: question.line, name: question.name })}
          options={clubOptions(question)}
          value={choices.value[clubKey(question)] ?? null}
          onChoose={(value) => choose(clubKey(question), value)}
        />
      ))}
      {looked.athleteQuestions.map((question) => (
        <Choice
          key={athleteKey(question)}
          legend={athleteLegend(question)}
          options={athleteOptions(question)}
          value={choices.value[athleteKey(question)] ?? null}
          onChoose={(value) => choose(athleteKey(question), value)}
        />
      ))}
    </>
  );
}

function clubOptions({ candidates }: ClubQuestion): { value: string; text: string }[] {
  return [
    ...candidates.map(({ id, name }) => ({ value: id, text: e('club.same', { name }) })),
    { value: 'NEW', text: e('club.new') },
    { value: 'WRITTEN', text: e('club.written') },
  ];
}

function athleteLegend({ line, name, birthDate, club }: AthleteQuestion): string {
  return e('athlete.question', { line, name: described(name, birthDate, club) });
}

function athleteOptions({ candidates }: AthleteQuestion): { value: string; text: string }[] {
  return [...candidates.map(candidateOption), { value: 'NEW', text: e('athlete.new') }];
}

function candidateOption({ athlete, line, why }: Candidate): { value: string; text: string } {
  const reason = eCode('why', why);
  if (!athlete)
    return { value: `line ${line}`, text: e('athlete.sameLine', { line: line ?? '', why: reason }) };
  const { id, givenName, familyName, birthDate, club } = athlete;
  const name = described(`${givenName} ${familyName}`, birthDate, club?.name ?? null);
  return { value: id, text: e('athlete.same', { name, why: reason }) };
}

function described(name: string, birthDate: string | null, club: string | null): string {
  return [name, birthDate, club].filter((part) => part !== null).join(', ');
}
