import {
  competitions,
  draws,
  meets,
  type CompetitionRow,
  type DrawAmendmentRow,
  type DrawnFlight,
  type DrawRow,
  type NewDraw,
  type Tx,
} from '#persistence';
import { DRAW_PROCEDURE, drawFlights } from '#rules';
import { Injectable } from '@nestjs/common';
import { StartListService, type ArrangedLine } from '../entries/start-list.service.js';
import { Database } from '../platform/database/database.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { rosterOf, type RosterLine } from '../platform/roster/roster.js';
import { entriesOf, labelsOf, problemRefusal, termsOf } from './draw-terms.js';
import type { StartListDrawInput } from './draws.inputs.js';

export type Drawing =
  | {
      readonly flights: readonly DrawnFlight[];
      /** Null: a preview. */
      readonly draw: DrawRow | null;
      readonly competition: CompetitionRow;
      readonly replayed: boolean;
    }
  | { readonly refusal: UserError };

/** A draw with what was added beside it. */
export interface KeptDraw {
  readonly row: DrawRow;
  readonly isInForce: boolean;
  readonly amendments: readonly DrawAmendmentRow[];
}

/** Draws start lists, and keeps every draw. */
@Injectable()
export class DrawsService {
  constructor(
    private readonly database: Database,
    private readonly lists: StartListService,
  ) {}

  /** Draws the start list anew and keeps how, or says what would be drawn. */
  async draw(input: StartListDrawInput, viewer: Identity): Promise<Drawing> {
    const drawing = await this.database.write((tx) => this.drawn(tx, input, viewer));
    if ('competition' in drawing && drawing.draw && !drawing.replayed)
      this.lists.announce(drawing.competition);
    return drawing;
  }

  /** For each of these competitions its draws in their order. Two statements. */
  async ofCompetitions(of: readonly CompetitionRow[]): Promise<KeptDraw[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const { rows, amendments } = await this.database.snapshot(async (at) => {
      const found = await draws.ofCompetitions(
        at,
        organisationId,
        of.map(({ id }) => id),
      );
      const ids = found.map(({ id }) => id);
      return { rows: found, amendments: await draws.amendmentsOf(at, organisationId, ids) };
    });
    return of.map(({ id }) => {
      const own = rows.filter(({ competitionId }) => competitionId === id);
      return own.map((row) => ({
        row,
        isInForce: row === own.at(-1),
        amendments: amendments.filter(({ drawId }) => drawId === row.id),
      }));
    });
  }

  private async drawn(tx: Tx, input: StartListDrawInput, viewer: Identity): Promise<Drawing> {
    const { organisationId } = viewer;
    const locked = await this.lists.lock(tx, input.competitionId, viewer, ['competitionId']);
    const there = input.id && !input.isPreview ? await draws.find(tx, organisationId, input.id) : null;
    if (there) return replay(tx, there, input);
    if ('refusal' in locked) return locked;
    const { competition } = locked;
    if (competition.version !== input.expectedVersion)
      return { refusal: versionConflict(competition.version) };
    if (!input.reason && (await draws.latest(tx, organisationId, competition.id)))
      return { refusal: REASON_MISSING };
    const meet = await meets.find(tx, organisationId, competition.meetId);
    const roster = await rosterOf(tx, { competition, meet: meet! });
    const made = newDraw(input, competition, roster, viewer);
    if ('refusal' in made) return made;
    if (input.isPreview) return { flights: made.flights, draw: null, competition, replayed: false };
    await draws.add(tx, made);
    const arranged = await this.lists.arrange(tx, competition, linesOf(made.flights, roster));
    const draw = await draws.find(tx, organisationId, made.id);
    return { flights: made.flights, draw, competition: arranged, replayed: false };
  }
}

/** The same request, sent again. */
async function replay(tx: Tx, draw: DrawRow, input: StartListDrawInput): Promise<Drawing> {
  const competition = await competitions.find(tx, draw.organisationId, draw.competitionId);
  const isSame =
    draw.competitionId === input.competitionId &&
    draw.seed === input.seed &&
    draw.method === input.method &&
    draw.clubmatesApart === input.areClubmatesApart &&
    draw.reason === (input.reason ?? null) &&
    (input.flights ?? draw.flights.length) === draw.flights.length;
  if (!competition || !isSame) return { refusal: ID_REUSED };
  return { flights: draw.flights, draw, competition, replayed: true };
}

function newDraw(
  input: StartListDrawInput,
  competition: CompetitionRow,
  roster: readonly RosterLine[],
  { holder }: Identity,
): NewDraw | { readonly refusal: UserError } {
  const terms = termsOf(input, competition, roster);
  if ('refusal' in terms) return terms;
  const outcome = drawFlights(entriesOf(roster, terms), terms);
  if (!outcome.ok) return { refusal: problemRefusal(outcome.problems[0]!) };
  const labels = labelsOf(terms.flights);
  return {
    organisationId: competition.organisationId,
    id: input.id ?? uuidV7(),
    competitionId: competition.id,
    procedure: DRAW_PROCEDURE,
    seed: terms.seed,
    method: terms.method,
    clubmatesApart: terms.clubmatesApart,
    entries: outcome.draw.entries,
    flights: outcome.draw.flights.map((bibs, at) => ({ label: labels[at] ?? null, bibs })),
    reason: input.reason ?? null,
    drawnBy: holder ?? '',
    qualificationId: null,
  };
}

/** The whole list in its new order: flight by flight. */
function linesOf(flights: readonly DrawnFlight[], roster: readonly RosterLine[]): ArrangedLine[] {
  const ids = new Map(roster.map(({ competitor }) => [competitor.bib, competitor.id]));
  return flights.flatMap(({ label, bibs }) => bibs.map((bib) => ({ id: ids.get(bib)!, flight: label })));
}

const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was drawn under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});

const REASON_MISSING = refusal({
  code: 'REASON_MISSING',
  path: ['reason'],
  message: 'The start list is drawn already.',
  remedy: 'Say why it is drawn again; the draw before stays on record.',
});
