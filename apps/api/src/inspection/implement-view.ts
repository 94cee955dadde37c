import {
  athletes,
  clubs,
  inspections,
  type AthleteRow,
  type ImplementRow,
  type InspectionRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { findingSentence, inForce, statusOfImplement, type Dimension, type Finding } from '#rules';
import { displayName, fullName } from '../platform/roster/display-name.js';
import type { Implement, ImplementOwner } from './implements.types.js';
import type { Inspection, InspectionFinding } from './inspection.types.js';

/** How much of an owner's name the reader may see: those who run the meet the whole, others what the meet shows. */
export type Names = 'whole' | 'shown';

/** Implements as they stand at a meet. A fixed number of statements, however many they are. */
export async function implementViews(
  at: Reads,
  meet: MeetRow,
  rows: readonly ImplementRow[],
  names: Names,
): Promise<Implement[]> {
  if (rows.length === 0) return [];
  const { organisationId } = meet;
  const ids = rows.map(({ id }) => id);
  const logs = await inspections.ofImplements(at, organisationId, meet.id, ids);
  const clubRows = await clubs.byIds(at, organisationId, present(rows.map(({ clubId }) => clubId)));
  const athleteRows = await athletes.byIds(
    at,
    organisationId,
    present(rows.map(({ athleteId }) => athleteId)),
  );
  return rows.map((row) => {
    const club = clubRows.find(({ id }) => id === row.clubId);
    const athlete = athleteRows.find(({ id }) => id === row.athleteId);
    const owner: ImplementOwner = athlete
      ? { kind: 'athlete', name: nameOf(athlete, meet, names) }
      : { kind: club ? 'club' : 'pool', name: club?.name ?? null };
    return implementView(
      row,
      owner,
      logs.filter(({ implementId }) => implementId === row.id),
    );
  });
}

function implementView(row: ImplementRow, owner: ImplementOwner, log: readonly InspectionRow[]): Implement {
  const last = inForce(log).at(-1);
  return {
    row,
    id: row.id,
    event: row.event,
    grams: row.grams,
    label: row.label,
    owner,
    registeredAt: new Date(row.registeredAt),
    status: statusOfImplement(log),
    lastInspection: last ? inspectionView(last) : null,
    log: log.map(inspectionView),
  };
}

export function inspectionView(row: InspectionRow): Inspection {
  const dimensions = Object.entries(row.mm) as [Dimension, number][];
  return {
    id: row.id,
    sequence: row.sequence,
    kind: row.kind,
    cause: row.cause,
    attemptId: row.attemptId,
    outcome: row.outcome,
    grams: row.grams,
    dimensions: dimensions.map(([what, mm]) => ({ what, mm })),
    findings: row.findings.map(findingView),
    isKeptBack: row.keptBack,
    note: row.note,
    replacesId: row.replacesId,
    reason: row.reason,
    authority: row.authority,
    inspectedBy: row.inspectedBy,
    device: row.device,
    deviceAt: row.deviceAt === null ? null : new Date(row.deviceAt),
    inspectedAt: new Date(row.inspectedAt),
  };
}

function findingView(finding: Finding): InspectionFinding {
  const { what, unit, measured, min, max, verdict, cite } = finding;
  const isConfirmed = cite.basis === 'read' || cite.basis === 'read in part';
  return {
    ...{ what, unit, measured, min, max, verdict },
    sentence: findingSentence(finding),
    rule: cite.rule,
    isConfirmed,
  };
}

/** An implement has no bib that could stand for its owner. */
function nameOf(athlete: AthleteRow, meet: MeetRow, names: Names): string | null {
  const named = { competitor: { bib: '', listedName: null }, athlete };
  const name = names === 'whole' ? fullName(named) : displayName(named, meet);
  return name === '#' ? null : name;
}

function present(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.filter((id) => id !== null))];
}
