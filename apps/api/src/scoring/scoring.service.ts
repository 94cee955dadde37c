import { meetScorings, type MeetRow, type MeetScoringRow, type NewMeetScoring } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import type { MeetScoringSetInput } from './scoring.inputs.js';

/** How meets are scored. */
@Injectable()
export class ScoringService {
  constructor(private readonly database: Database) {}

  /** From now on the meet is scored so; what was in force before is kept as a revision. */
  async set(
    input: MeetScoringSetInput,
    viewer: Identity,
  ): Promise<{ readonly row: MeetScoringRow } | { readonly refusals: Refusal[] }> {
    viewer.requireDirector(input.meetId);
    const refusals = [...pointsProblems(input), ...divisionProblems(input)];
    if (refusals.length > 0) return { refusals };
    const row = await this.database.write((tx) => meetScorings.add(tx, newScoring(input, viewer)));
    return row ? { row } : { refusals: [notFound('meet', ['meetId'])] };
  }

  /** Null: the meet is not scored. */
  async of({ organisationId, id }: MeetRow): Promise<MeetScoringRow | null> {
    return this.database.read((at) => meetScorings.latest(at, organisationId, id));
  }
}

function newScoring(input: MeetScoringSetInput, viewer: Identity): NewMeetScoring {
  const { places } = input;
  return {
    organisationId: viewer.organisationId,
    meetId: input.meetId,
    preset: input.preset ?? null,
    places: places ? { individual: places.individual, relay: places.relay } : null,
    teams: input.teams ?? null,
    scorersPerClub: input.scorersPerClub ?? null,
    relaysPerClub: input.relaysPerClub ?? null,
    nonScorers: input.nonScorers,
    clubTies: input.clubTies,
    divisions: input.divisions.map(({ name, sex, ages }) => ({ name, sex: sex ?? null, ages })),
    setBy: viewer.holder ?? '',
  };
}

function pointsProblems({ preset, places }: MeetScoringSetInput): Refusal[] {
  if (preset && places) {
    return [
      refusal({
        code: 'POINTS_TWICE',
        path: ['places'],
        message: 'A preset and own points would both say what a place is worth.',
        remedy: 'Send one of them.',
      }),
    ];
  }
  return preset || places ? [] : [POINTS_MISSING];
}

const POINTS_MISSING = refusal({
  code: 'POINTS_MISSING',
  path: ['preset'],
  message: 'Nothing says what a place is worth.',
  remedy: 'Send a preset, or the points of the places.',
});

function divisionProblems({ divisions }: MeetScoringSetInput): Refusal[] {
  return divisions.flatMap(({ name }, at) => {
    if (divisions.findIndex((one) => one.name === name) === at) return [];
    return [
      refusal({
        code: 'DIVISION_TWICE',
        path: ['divisions', String(at), 'name'],
        message: `Two divisions are called "${name}".`,
        remedy: 'Give each its own name.',
      }),
    ];
  });
}
