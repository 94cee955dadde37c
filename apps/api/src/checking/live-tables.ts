import { globalId } from '../platform/inputs/global-id.js';
import type { Checked } from './check-competition.js';
import { difference, type PlaceRow } from './place-rows.js';

/** A server that is running on the same database. */
export interface LiveServer {
  readonly url: string;
  readonly token: string;
}

interface LiveTable {
  readonly version: number;
  readonly rows: readonly {
    readonly bib: string;
    readonly place: number | null;
    readonly mark: string | null;
  }[];
}

const TABLE = `query Table($id: ID!) { competition(id: $id) { table { version rows { bib place mark } } } }`;

/**
 * What the server shows of a competition against what was counted of it: in words where they differ, `'moved'` where
 * the server has another version by now, null where they agree.
 */
export async function compareWithLive(server: LiveServer, { row, places }: Checked): Promise<string | null> {
  const table = await tableOf(server, row.id);
  if (table === null) return 'the server does not show it';
  if (table.version < row.version)
    return `the server shows version ${table.version}, and ${row.version} is stored`;
  if (table.version > row.version) return 'moved';
  const shown: PlaceRow[] = table.rows.map(({ bib, place, mark }) => ({ bib, place, mark }));
  return difference(places, shown);
}

async function tableOf({ url, token }: LiveServer, id: string): Promise<LiveTable | null> {
  const response = await fetch(new URL('/graphql', url), {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
    body: JSON.stringify({ query: TABLE, variables: { id: globalId('Competition', id) } }),
  });
  const answer = (await response.json()) as { data?: { competition: { table: LiveTable } | null } | null };
  return answer.data?.competition?.table ?? null;
}
