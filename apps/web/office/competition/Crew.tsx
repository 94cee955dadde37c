import { useSignal } from '@preact/signals';
import { o, oCode } from '../../labels/office/words.js';
import { Button } from '../../ui/Button.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { usePlainAct } from '../acting.js';
import { useOffice } from '../office.js';
import type { Competition, CrewMember } from './competition-now.js';

const CREW = `mutation OfficeCrew($input: CrewSetInput!) { crewSet(input: $input) { userErrors { message rule remedy } } }`;
const POSTS = [
  ...[
    'REFEREE',
    'CHIEF_JUDGE',
    'JUDGE',
    'RECORDER',
    'MEASURER',
    'WIND',
    'SAFETY',
    'IMPLEMENTS',
    'CALL_ROOM',
    'HELPER',
  ],
];

interface CrewProps {
  readonly competition: Competition;
  readonly crew: readonly CrewMember[];
}

/** Who works at it. */
export function Crew({ competition, crew }: CrewProps) {
  const office = useOffice();
  const act = usePlainAct();
  const [post, name] = [useSignal(''), useSignal('')];
  const set = (members: readonly CrewMember[]) =>
    act(CREW, {
      competitionId: competition.id,
      members: members.map((one) => ({ post: one.post, name: one.name })),
    });
  const add = async () => {
    if (await set([...crew, { post: post.value, name: name.value.trim() }])) name.value = '';
  };
  return (
    <details class="panel">
      <summary>{o('crew.title', { count: crew.length })}</summary>
      <ul class="crew">
        {crew.map((one, at) => (
          <li key={`${one.post} ${one.name}`}>
            {oCode('post', one.post)}: {one.name}
            {office.mayDirect && (
              <Button
                kind="quiet"
                label={o('crew.remove', { name: one.name })}
                onPress={() => set(crew.filter((_, other) => other !== at))}
              >
                ✕
              </Button>
            )}
          </li>
        ))}
      </ul>
      {office.mayDirect && (
        <div class="step">
          <Select
            label={o('crew.post')}
            value={post}
            options={POSTS.map((value) => ({ value, text: oCode('post', value) }))}
          />
          <TextField label={o('crew.name')} value={name} />
          <Button isDisabled={post.value === '' || name.value.trim() === ''} onPress={add}>
            {o('crew.add')}
          </Button>
        </div>
      )}
    </details>
  );
}
