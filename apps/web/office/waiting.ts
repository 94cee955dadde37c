/** What waits for somebody's decision, competition by competition. */
export const WAITING = `query OfficeWaiting($id: ID!) {
  meet(id: $id) {
    questions { entry competition { id } }
    competitions { id protests { id standing } decisionRequests { id kind entryId } }
  }
}`;

export interface Waiting {
  readonly meet: {
    readonly questions: readonly { readonly competition: { readonly id: string } }[];
    readonly competitions: readonly {
      readonly id: string;
      readonly protests: readonly { readonly standing: string }[];
      readonly decisionRequests: readonly { readonly kind: string; readonly entryId: string | null }[];
    }[];
  };
}

export interface WaitingAt {
  readonly questions: number;
  readonly protests: number;
  readonly signatures: number;
}

export function isOpenStanding(standing: string): boolean {
  return standing === 'LODGED' || standing === 'APPEALED';
}

/** How much waits at one competition; `null`: at all of them together. */
export function waitingAt({ meet }: Waiting, competitionId: string | null): WaitingAt {
  const here = meet.competitions.filter(({ id }) => competitionId === null || id === competitionId);
  return {
    questions: meet.questions.filter(
      ({ competition }) => competitionId === null || competition.id === competitionId,
    ).length,
    protests: here.flatMap(({ protests }) => protests).filter(({ standing }) => isOpenStanding(standing))
      .length,
    // The newest alone may still be confirmed.
    signatures: here.filter(({ decisionRequests: [newest] }) => newest && newest.entryId === null).length,
  };
}
