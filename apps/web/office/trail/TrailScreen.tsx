import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { a } from '../../labels/account/words.js';
import { o, oCode } from '../../labels/office/words.js';
import { Button } from '../../ui/Button.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { KIND_GROUPS } from './kind-groups.js';
import { TrailLine, type TrailEntry } from './TrailLine.jsx';

const TRAIL = `query OfficeTrail($id: ID!, $after: String, $competitionId: ID, $who: String, $kinds: [String!], $device: String, $from: DateTime, $until: DateTime, $text: String) {
  meet(id: $id) {
    auditTrail(first: 30, after: $after, competitionId: $competitionId, who: $who, kinds: $kinds, device: $device, from: $from, until: $until, text: $text) {
      edges { node { id at kind bib competitorName standing actor name authority device reason before after competition { id title unit } } }
      pageInfo { hasNextPage endCursor }
    }
  }
}`;

interface Read {
  readonly meet: {
    readonly auditTrail: {
      readonly edges: readonly { readonly node: TrailEntry }[];
      readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
    };
  };
}

/** Who did what, when, on what and why: searched, the newest first. */
export function TrailScreen() {
  const office = useOffice();
  const [text, who, device, group] = [useSignal(''), useSignal(''), useSignal(''), useSignal('')];
  const [competition, from, until] = [useSignal(''), useSignal(''), useSignal('')];
  const found = useSignal<readonly TrailEntry[] | null>(null);
  const next = useSignal<string | null>(null);
  const read = async (after: string | null) => {
    const instant = (value: string) => (value === '' ? null : new Date(value).toISOString());
    const data = await office.read<Read>(TRAIL, {
      ...{ id: office.meetId.value, after, competitionId: competition.value || null },
      ...{
        who: who.value.trim() || null,
        device: device.value.trim() || null,
        text: text.value.trim() || null,
      },
      ...{ kinds: KIND_GROUPS[group.value] ?? null, from: instant(from.value), until: instant(until.value) },
    });
    if (!data) return;
    const { edges, pageInfo } = data.meet.auditTrail;
    const lines = edges.map(({ node }) => node);
    found.value = after === null ? lines : [...(found.value ?? []), ...lines];
    next.value = pageInfo.hasNextPage ? pageInfo.endCursor : null;
  };
  useEffect(() => void read(null), [office.meetId.value]);
  const search = (event: Event) => {
    event.preventDefault();
    void read(null);
  };
  const competitions = office.meet.value?.competitions ?? [];
  return (
    <section>
      <h2>{o('section.trail')}</h2>
      <form role="search" onSubmit={search}>
        <TextField label={o('trail.text')} value={text} type="search" />
        <details>
          <summary>{o('trail.narrow')}</summary>
          <div class="search">
            <TextField label={o('trail.who')} value={who} type="search" />
            <TextField label={o('trail.device')} value={device} type="search" />
            <Select
              label={o('trail.kind')}
              value={group}
              none={o('trail.all')}
              options={Object.keys(KIND_GROUPS).map((value) => ({ value, text: oCode('kinds', value) }))}
            />
            <Select
              label={o('trail.competition')}
              value={competition}
              none={o('trail.all')}
              options={competitions.map(({ id, title }) => ({ value: id, text: title }))}
            />
            <TextField label={o('trail.from')} value={from} type="datetime-local" />
            <TextField label={o('trail.until')} value={until} type="datetime-local" />
          </div>
        </details>
        <button type="submit" class="button main">
          {o('trail.search')}
        </button>
      </form>
      <Lines found={found.value} />
      {next.value !== null && <Button onPress={() => void read(next.value)}>{o('trail.more')}</Button>}
    </section>
  );
}

function Lines({ found }: { readonly found: readonly TrailEntry[] | null }) {
  if (found === null) return <p>{a('reading')}</p>;
  if (found.length === 0) return <p>{o('trail.none')}</p>;
  return (
    <ol class="trail">
      {found.map((entry) => (
        <li key={`${entry.kind} ${entry.id}`}>
          <TrailLine entry={entry} />
        </li>
      ))}
    </ol>
  );
}
