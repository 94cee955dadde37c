import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { o } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import { useOffice, type Office } from '../office.js';
import type { CallLine, Competition } from './competition-now.js';

const ATHLETES = `query OfficeAthletes($after: String) {
  athletes(first: 100, after: $after) {
    edges { node { id givenName familyName club { name } } }
    pageInfo { hasNextPage endCursor }
  }
}`;
const MATCH = `mutation OfficeMatch($input: CompetitorMatchInput!) {
  competitorMatch(input: $input) { entry { standing hold { message remedy } } userErrors { message rule remedy } }
}`;

interface Athlete {
  readonly id: string;
  readonly givenName: string;
  readonly familyName: string;
  readonly club: { readonly name: string } | null;
}

interface Page {
  readonly athletes: {
    readonly edges: readonly { readonly node: Athlete }[];
    readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
  };
}

/** Pages of a hundred: more people than a club knows are better matched by hand. */
const PAGES = 20;
/** So many in a list can still be looked through. */
const SHOWN = 30;

/** Those whom somebody added at the circle: each is an athlete on record, or the name stands as it was written. */
export function WhoIsIt({ competition }: { readonly competition: Competition }) {
  const unmatched = (competition.callList ?? []).filter(({ isUnmatched }) => isUnmatched);
  const office = useOffice();
  const athletes = useSignal<readonly Athlete[]>([]);
  const isNeeded = unmatched.length > 0 && office.mayDirect;
  useEffect(() => {
    if (isNeeded) void athletesOf(office).then((found) => (athletes.value = found));
  }, [isNeeded]);
  if (unmatched.length === 0) return null;
  return (
    <section class="panel">
      <h3>{o('who.title')}</h3>
      <p>{o('who.why')}</p>
      {unmatched.map((line) => (
        <OneUnknown
          key={line.competitor.id}
          competitionId={competition.id}
          line={line}
          athletes={athletes.value}
        />
      ))}
    </section>
  );
}

interface OneUnknownProps {
  readonly competitionId: string;
  readonly line: CallLine;
  readonly athletes: readonly Athlete[];
}

function OneUnknown({ competitionId, line, athletes }: OneUnknownProps) {
  const act = useAct();
  const [search, chosen] = [useSignal(line.name ?? ''), useSignal('')];
  const found = athletes.filter((athlete) => fits(athlete, search.value)).slice(0, SHOWN);
  const match = (athleteId: string | null) =>
    act(MATCH, {
      ...{ competitionId, entryId: uuidV7(), competitorId: line.competitor.id },
      ...(athleteId !== null && { athleteId }),
    });
  return (
    <div class="step">
      <h4>
        {line.competitor.bib} {line.name} {line.competitor.club !== null && `(${line.competitor.club})`}
      </h4>
      {athletes.length > 0 && (
        <>
          <TextField label={o('who.search')} type="search" value={search} />
          <Select
            label={o('who.athlete')}
            value={chosen}
            options={found.map(({ id, givenName, familyName, club }) => ({
              value: id,
              text: `${familyName}, ${givenName}${club ? ` (${club.name})` : ''}`,
            }))}
          />
          <Button isDisabled={chosen.value === ''} onPress={async () => void (await match(chosen.value))}>
            {o('who.match')}
          </Button>
        </>
      )}
      <Button kind="plain" onPress={async () => void (await match(null))}>
        {o('who.accept')}
      </Button>
    </div>
  );
}

async function athletesOf(office: Office): Promise<Athlete[]> {
  const found: Athlete[] = [];
  let after: string | null = null;
  for (let page = 0; page < PAGES; page += 1) {
    const read: Page | null = await office.read<Page>(ATHLETES, { after });
    if (!read) break;
    found.push(...read.athletes.edges.map(({ node }) => node));
    if (!read.athletes.pageInfo.hasNextPage) break;
    after = read.athletes.pageInfo.endCursor;
  }
  return found;
}

/** Every word that is typed begins one of the athlete's. */
function fits({ givenName, familyName }: Athlete, typed: string): boolean {
  const names = `${givenName} ${familyName}`.toLocaleLowerCase().split(/[\s-]+/);
  const words = typed.toLocaleLowerCase().split(/[\s-]+/);
  return words.every((word) => names.some((name) => name.startsWith(word)));
}
