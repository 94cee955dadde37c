/** What the explorer opens with: the competition that is going on, or the meets there are. */
export function firstQuery(competitionId: string | null): string {
  return competitionId === null ? MEETS : COMPETITION.replace('$id', JSON.stringify(competitionId));
}

const MEETS = `query Meets {
  meets(first: 5) {
    edges { node { id name startsOn competitions { id title status } } }
  }
}
`;

const COMPETITION = `query Running {
  competition(id: $id) {
    title
    progress {
      phase
      round
      up { bib name competitor }
      next { bib name }
    }
    table {
      version
      rows {
        place
        isEqual
        name
        mark
        reason
        series { cell foul }
      }
    }
    needed {
      bib
      places { place mark isShared }
    }
  }
}
`;
