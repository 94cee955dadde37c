import {
  competitions,
  draws,
  qualifications,
  type CompetitionRow,
  type CompetitorRow,
  type DrawRow,
  type NewDraw,
  type QualificationRow,
  type Tx,
} from '#persistence';
import { DRAW_PROCEDURE, drawFinal } from '#rules';
import { Injectable } from '@nestjs/common';
import { StartListService } from '../entries/start-list.service.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { fillFinal, finalistsOf } from './final-list.js';
import { mergedOf, openGroups, ruleOf, type Merged } from './merged-groups.js';
import type { QualificationFinalDrawInput } from './qualifications.inputs.js';
import { isFinalOf, takenElsewhere } from './qualifications.service.js';
import {
  FINAL_DIFFERS,
  FINAL_MISSING,
  FINAL_SET,
  groupsOpen,
  ID_REUSED,
  NOBODY_QUALIFIED,
  questionsOpen,
  REASON_MISSING,
} from './refusals.js';

export type FinalDrawing =
  | {
      /** By bib. */
      readonly order: readonly string[];
      /** Null: a preview. */
      readonly draw: DrawRow | null;
      /** Null: a preview of one that is not set up. */
      readonly final: CompetitionRow | null;
      readonly replayed: boolean;
    }
  | { readonly refusal: Refusal };

interface Drawn {
  readonly order: readonly string[];
  readonly finalists: ReadonlyMap<string, CompetitorRow>;
}

/** Makes the start list of a final from its qualification, by lot. */
@Injectable()
export class FinalDrawService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly lists: StartListService,
  ) {}

  async draw(input: QualificationFinalDrawInput, viewer: Identity): Promise<FinalDrawing> {
    const drawing = await this.database.write((tx) => this.drawn(tx, input, viewer));
    if ('draw' in drawing && drawing.draw && drawing.final && !drawing.replayed)
      this.lists.announce(drawing.final);
    return drawing;
  }

  private async drawn(tx: Tx, input: QualificationFinalDrawInput, viewer: Identity): Promise<FinalDrawing> {
    const { organisationId } = viewer;
    const row = await qualifications.lock(tx, organisationId, input.qualificationId);
    if (!row) return { refusal: notFound('qualification', ['qualificationId']) };
    viewer.requireDirector(row.meetId);
    const there = input.id && !input.isPreview ? await draws.find(tx, organisationId, input.id) : null;
    if (there) return replay(tx, there, input);
    const named = row.finalId ?? input.finalId ?? null;
    if (row.finalId !== null && (input.finalTitle || (input.finalId ?? row.finalId) !== row.finalId))
      return { refusal: FINAL_SET };
    const locked = await this.lockAll(tx, row, named);
    const merged = mergedOf(locked.groups);
    const first = merged.groups[0]!.row;
    const refused =
      (await finalProblem(tx, input, { ...row, finalId: named }, first, locked.final)) ??
      standingProblem(merged, input.reason ?? null);
    if (refused) return { refusal: refused };
    const drawn = drawnOf(merged, input.seed);
    if ('refusal' in drawn) return drawn;
    if (input.isPreview) return { order: drawn.order, draw: null, final: locked.final, replayed: false };
    const final = locked.final ?? (await setUpFinal(tx, first, input.finalTitle ?? ''));
    return this.store(tx, input, viewer, row, final, drawn);
  }

  /** In the order of ids, as everybody who locks several. */
  private async lockAll(
    tx: Tx,
    { organisationId, groupIds }: QualificationRow,
    finalId: string | null,
  ): Promise<{ readonly groups: Merged['groups']; readonly final: CompetitionRow | null }> {
    const rows = new Map<string, CompetitionRow>();
    for (const id of [...groupIds, ...(finalId === null ? [] : [finalId])].sort()) {
      const row = await competitions.lock(tx, organisationId, id);
      if (row) rows.set(id, row);
    }
    const groups: Merged['groups'][number][] = [];
    for (const id of groupIds) groups.push(await this.memory.locked(tx, rows.get(id)!));
    return { groups, final: finalId === null ? null : (rows.get(finalId) ?? null) };
  }

  private async store(
    tx: Tx,
    input: QualificationFinalDrawInput,
    viewer: Identity,
    row: QualificationRow,
    final: CompetitionRow,
    { order, finalists }: Drawn,
  ): Promise<FinalDrawing> {
    const open = await this.lists.lock(tx, final.id, viewer, ['finalId']);
    if ('refusal' in open) return open;
    const ids = await fillFinal(tx, final, finalists);
    if ('refusal' in ids) return ids;
    const draw = newDraw(input, viewer, final, order);
    await draws.add(tx, draw);
    if (row.finalId === null) await qualifications.setFinal(tx, row.organisationId, row.id, final.id);
    const lines = order.map((bib) => ({ id: ids.get(bib)!, flight: null }));
    const arranged = await this.lists.arrange(tx, final, lines);
    return {
      order,
      draw: await draws.find(tx, row.organisationId, draw.id),
      final: arranged,
      replayed: false,
    };
  }
}

/** What speaks against this final, or that there is none. Null: it is the one, or will be set up. */
async function finalProblem(
  tx: Tx,
  { finalTitle, finalId, reason }: QualificationFinalDrawInput,
  wanted: QualificationRow,
  first: CompetitionRow,
  final: CompetitionRow | null,
): Promise<Refusal | null> {
  if (wanted.finalId === null) return finalTitle && !first.vertical ? null : FINAL_MISSING;
  if (finalTitle && finalId) return FINAL_SET;
  if (!final) return notFound('competition', ['finalId']);
  if (!isFinalOf(first, final)) return FINAL_DIFFERS;
  const taken = await takenElsewhere(tx, wanted);
  if (taken) return taken;
  return !reason && (await draws.latest(tx, final.organisationId, final.id)) ? REASON_MISSING : null;
}

function standingProblem({ groups, table }: Merged, reason: string | null): Refusal | null {
  const titlesOf = (some: Merged['groups']): string[] => some.map(({ row }) => row.title);
  const disputed = groups.filter(({ state }) => state.questions.length > 0);
  if (disputed.length > 0) return questionsOpen(titlesOf(disputed));
  const open = openGroups(groups);
  if (open.length > 0 && reason === null) return groupsOpen(titlesOf(open), ruleOf(groups[0]!.row));
  return table.finalists.length === 0 ? NOBODY_QUALIFIED : null;
}

function drawnOf(merged: Merged, seed: string): Drawn | { readonly refusal: Refusal } {
  const finalists = finalistsOf(merged);
  if ('refusal' in finalists) return finalists;
  const outcome = drawFinal(merged.table, seed);
  if (outcome.ok) return { order: outcome.draw.flights[0]!, finalists };
  const { code, message } = outcome.problems[0]!;
  return { refusal: refusal({ code, path: ['seed'], message, remedy: 'Change it, and draw again.' }) };
}

/** As the groups are, with the rule set's own plan of a final. */
async function setUpFinal(tx: Tx, group: CompetitionRow, title: string): Promise<CompetitionRow> {
  const { organisationId, meetId, event, rules, edition, indoor, unit } = group;
  const { categorySex, categoryAge, implementGrams } = group;
  const id = uuidV7();
  await competitions.insert(tx, {
    ...{ organisationId, id, meetId, title, event, rules, edition, indoor, unit },
    ...{ categorySex, categoryAge, implementGrams, stage: 'final', qualifying: null, plan: {} },
    ...{ vertical: null, scoring: null, startsAt: null },
  });
  return (await competitions.find(tx, organisationId, id))!;
}

function newDraw(
  { id, seed, reason, qualificationId }: QualificationFinalDrawInput,
  { holder }: Identity,
  final: CompetitionRow,
  order: readonly string[],
): NewDraw {
  return {
    organisationId: final.organisationId,
    id: id ?? uuidV7(),
    competitionId: final.id,
    procedure: DRAW_PROCEDURE,
    seed,
    method: 'lot',
    clubmatesApart: false,
    entries: order.toSorted().map((key) => ({ key, seedMark: null, club: null })),
    flights: [{ label: null, bibs: order }],
    reason: reason ?? null,
    drawnBy: holder ?? '',
    qualificationId,
  };
}

/** The same request, sent again. */
async function replay(
  tx: Tx,
  draw: DrawRow,
  { qualificationId, seed, reason, finalId }: QualificationFinalDrawInput,
): Promise<FinalDrawing> {
  const isSame =
    draw.qualificationId === qualificationId &&
    draw.seed === seed &&
    draw.reason === (reason ?? null) &&
    (finalId ?? draw.competitionId) === draw.competitionId;
  if (!isSame) return { refusal: ID_REUSED };
  const final = await competitions.find(tx, draw.organisationId, draw.competitionId);
  return { order: draw.flights[0]?.bibs ?? [], draw, final, replayed: true };
}
