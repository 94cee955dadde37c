import { commonOrder, formatMark, groupProgressOf, type GroupCall as Called } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import { competitorObject } from '../platform/objects/competitor.type.js';
import { meetObject } from '../platform/objects/meet.type.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { CallingGroup, CallingLine, CallingProgress, GroupCall } from './calling.types.js';
import { asCalled, versionOf, type LoadedGroup } from './loaded-group.js';

export function groupObject(loaded: LoadedGroup): CallingGroup {
  const { row, meet, competitions } = loaded;
  const members = competitions.map((one) => one.row);
  return {
    loaded,
    id: globalId('CallingGroup', row.id),
    meet: meetObject(meet),
    title: row.title,
    facility: row.facility,
    startsAt: row.startsAt === null ? null : new Date(row.startsAt),
    warmUpMinutes: row.warmUpMinutes,
    version: versionOf(row, members),
    competitions: members.map(competitionObject),
  };
}

/** Everybody of the group in the common order. */
export function startListOf({ row, competitions }: LoadedGroup, viewer: Identity): CallingLine[] {
  const lines = linesOf(competitions);
  const ordered = competitions.map(({ row: { id }, roster }) => ({
    key: id,
    competitors: roster.map(({ competitor }) => competitor.id),
  }));
  return commonOrder(ordered, row.startOrder).map(({ competitor }, at) => {
    const { line, member } = lines.get(competitor)!;
    return {
      position: at + 1,
      competition: globalId('Competition', member.row.id),
      competitor: competitorObject(line),
      name: nameFor(viewer, member, line),
      categorySex: member.row.categorySex,
      categoryAge: member.row.categoryAge,
      implementGrams: gramsOf(member, line),
    };
  });
}

/** Where the group is and who is called. */
export function progressOf(loaded: LoadedGroup, viewer: Identity): CallingProgress {
  const lines = linesOf(loaded.competitions);
  const { up, next, then, calls, time, ...where } = groupProgressOf(asCalled(loaded));
  const view = (call: Called): GroupCall => callView(call, lines.get(call.competitor)!, viewer);
  const unit = loaded.competitions[0]?.row.unit ?? 'cm';
  const mark = (height: number | null): string | null => (height === null ? null : formatMark(height, unit));
  const ids = (keys: readonly string[]): string[] => keys.map((key) => globalId('Competition', key));
  return {
    phase: where.phase,
    awaits: where.awaits,
    round: up?.round ?? null,
    height: mark(up?.height ?? null),
    nextHeight: mark(where.nextHeight),
    up: up && view(up),
    next: next && view(next),
    then: then && view(then),
    calls: calls.filter(({ round, height }) => height !== null || round === up?.round).map(view),
    outstanding: where.outstanding.map(view),
    remaining: calls.length + where.outstanding.length,
    timeAllowed: time && { ...time, rule: time.rule.rule },
    awaitingHeight: ids(where.awaitingHeight),
    interrupted: ids(where.interrupted),
    finished: ids(where.finished),
  };
}

interface Line {
  readonly line: RosterLine;
  readonly member: LoadedCompetition;
}

function linesOf(competitions: readonly LoadedCompetition[]): ReadonlyMap<string, Line> {
  return new Map(
    competitions.flatMap((member) => member.roster.map((line) => [line.competitor.id, { line, member }])),
  );
}

function callView(call: Called, { line, member }: Line, viewer: Identity): GroupCall {
  return {
    competition: globalId('Competition', call.competition),
    competitor: globalId('Competitor', call.competitor),
    bib: line.competitor.bib,
    name: nameFor(viewer, member, line),
    round: call.round,
    flight: call.flight,
    height: call.height === null ? null : formatMark(call.height, member.row.unit),
    isJumpOff: call.jumpOff,
    isUnderProtest: call.underProtest,
    implementGrams: gramsOf(member, line),
  };
}

function gramsOf({ row }: LoadedCompetition, { competitor }: RosterLine): number | null {
  return competitor.implementGrams ?? row.implementGrams;
}

/** Whole names for those who work at the meet: names of children are shown to nobody else. */
function nameFor(viewer: Identity, { row }: LoadedCompetition, line: RosterLine): string {
  const isCrew = viewer.mayDirect(row.meetId) || viewer.capacityIn(row) !== null;
  return isCrew ? (line.name ?? line.displayName) : line.displayName;
}
