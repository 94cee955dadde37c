import {
  combinedEntrants,
  combinedEvents,
  combinedJournal,
  meets,
  type CombinedEntrantRow,
  type CombinedEventRow,
  type MeetRow,
  type NewCombinedEvent,
  type Tx,
} from '#persistence';
import {
  COMBINED_TABLES,
  combinedCardOf,
  isTrackEvent,
  normaliseSheet,
  writeSheet,
  type CombinedBody,
  type CombinedCard,
  type CombinedCompetitor,
  type CombinedEventCode,
  type CombinedMark,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { isDeepStrictEqual } from 'node:util';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { combinedSheet } from './combined-documents.js';
import { CombinedEventsService } from './combined-events.service.js';

export type ImportPlace = Pick<NewCombinedEvent, 'organisationId' | 'id' | 'meetId' | 'title'>;

export type CombinedImported =
  | { readonly combined: CombinedEventRow; readonly replayed: boolean }
  | { readonly refusal: Refusal };

/** Makes a combined event of a sheet: its entrants, and every time and mark as an entry of its journal. */
@Injectable()
export class CombinedImportService {
  constructor(private readonly events: CombinedEventsService) {}

  /** In the caller's transaction, which has checked that the viewer directs the meet. */
  async store(tx: Tx, card: CombinedCard, place: ImportPlace, viewer: Identity): Promise<CombinedImported> {
    const { organisationId, id } = place;
    const there = await combinedEvents.lock(tx, organisationId, id);
    if (there) return this.replay(tx, there, card, place);
    const meet = await meets.find(tx, organisationId, place.meetId);
    if (!meet) return { refusal: notFound('meet', ['meetId']) };
    await combinedEvents.insert(tx, eventOf(card, place, meet));
    const entrants = card.rows.map((row, index) => entrantOf(row, index + 1, place));
    await combinedEntrants.insert(tx, entrants);
    for (const body of bodiesOf(card, entrants)) await append(tx, body, place, viewer);
    await combinedEvents.bumpVersion(tx, organisationId, id, 'open');
    const row = await combinedEvents.lock(tx, organisationId, id);
    if (!row) throw new Error(`Combined event ${id} went away while it was made.`);
    await this.checkAgainst(tx, row, card);
    return { combined: row, replayed: false };
  }

  /** The journal must fold into the card that it was made from: if ever it did not, nothing is kept. */
  private async checkAgainst(tx: Tx, row: CombinedEventRow, card: CombinedCard): Promise<void> {
    const [loaded] = await this.events.load(tx, [row]);
    const names = new Map(card.rows.map(({ bib, name, club }) => [bib, { name, club }]));
    const bibs = new Map(loaded!.entrants.map(({ entrant }) => [entrant.id, entrant.bib]));
    const folded = combinedCardOf(loaded!.state, card.table, row.timing, (key) => names.get(bibs.get(key)!)!);
    if (!isDeepStrictEqual(folded, card)) {
      throw new Error('The journal made of a sheet does not fold into its card.');
    }
  }

  /** The same import, sent again, is answered with what it made; anything else under the id is refused. */
  private async replay(
    tx: Tx,
    there: CombinedEventRow,
    card: CombinedCard,
    { meetId, title }: ImportPlace,
  ): Promise<CombinedImported> {
    const [loaded] = await this.events.load(tx, [there]);
    const now = combinedSheet(loaded!, ({ name }) => name);
    const isSame =
      there.meetId === meetId &&
      there.title === title &&
      isDeepStrictEqual(normaliseSheet(now), normaliseSheet(writeSheet({ kind: 'combined', card })));
    return isSame ? { combined: there, replayed: true } : { refusal: ID_REUSED };
  }
}

/** Equal totals share the place in the sheet format, whatever the rules of the meet. */
function eventOf({ table, timing }: CombinedCard, place: ImportPlace, meet: MeetRow): NewCombinedEvent {
  const { scoredBy } = COMBINED_TABLES[table];
  return {
    ...place,
    ...{ programme: table, scoredBy, categorySex: scoredBy, categoryAge: null },
    ...{ rules: meet.rules, edition: meet.edition, ties: 'stay', timing },
  };
}

function entrantOf(
  { bib, name, club }: CombinedCompetitor,
  position: number,
  { organisationId, id: combinedEventId }: ImportPlace,
): CombinedEntrantRow {
  return {
    ...{ organisationId, id: uuidV7(), combinedEventId, athleteId: null, clubId: null },
    ...{ listedName: name === '' ? null : name, listedClub: club, bib, position, guest: false },
  };
}

/** Event by event, as they were held. */
function bodiesOf(
  { table, timing, rows }: CombinedCard,
  entrants: readonly CombinedEntrantRow[],
): CombinedBody[] {
  return COMBINED_TABLES[table].events.flatMap((event, index) =>
    rows.map(({ marks }, at): CombinedBody => {
      const mark = marks[index] ?? null;
      const taken = typeof mark === 'number' && isTrackEvent(event) ? timing : null;
      return {
        ...{ kind: 'result', entrant: entrants[at]!.id, event, outcome: outcomeOf(mark, event) },
        ...{ hundredths: typeof mark === 'number' ? mark : null, timing: taken, wind: null },
      };
    }),
  );
}

/** Without a mark a sheet does not say why: who ran did not finish, who jumped or threw had no valid mark. */
function outcomeOf(mark: CombinedMark, event: CombinedEventCode): 'valid' | 'DNS' | 'DNF' | 'NM' {
  if (typeof mark === 'number') return 'valid';
  if (mark === 'DNS') return 'DNS';
  return isTrackEvent(event) ? 'DNF' : 'NM';
}

async function append(
  tx: Tx,
  body: CombinedBody,
  { organisationId, id: combinedEventId }: ImportPlace,
  viewer: Identity,
): Promise<void> {
  await combinedJournal.append(tx, {
    ...{ organisationId, combinedEventId, entryId: uuidV7(), kind: body.kind, body },
    ...{ standing: 'accepted', verdict: { standing: 'accepted', notices: [] } },
    ...{ authority: 'director', actor: viewer.holder ?? '', device: 'sheet', deviceAt: null },
    fingerprint: fingerprintOf(combinedEventId, body),
  });
}

const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was made under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});
