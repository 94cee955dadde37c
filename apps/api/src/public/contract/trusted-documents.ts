/* Written by `npm run schema` from apps/api/src/public/documents. */

export const TRUSTED_DOCUMENTS = [
  {
    name: 'athlete-results',
    hash: '0cdc035290b356e29bc0de51cedf6c4dd49e87ac3e9ef92c269d84e155fa92db',
    text: `query AthleteResults($id: ID!) {
  athlete(id: $id) {
    id
    version
    name
    meets {
      meet {
        id
        name
        startsOn
      }
      competitions {
        id
        title
        event
        state
        lines {
          place
          isEqual
          mark
          wind
          status
        }
      }
    }
  }
}
`,
  },
  {
    name: 'club-results',
    hash: 'b6b2217618d0d1d442379152c085f393e8d7a1d2827e1b79697ccf685e86f7b2',
    text: `query ClubResults($id: ID!) {
  club(id: $id) {
    id
    version
    name
    meets {
      meet {
        id
        name
        startsOn
      }
      competitions {
        id
        title
        event
        state
        lines {
          bib
          name
          place
          isEqual
          mark
          wind
          status
        }
      }
    }
  }
}
`,
  },
  {
    name: 'club-table',
    hash: '4121b7fc1b2a19700a1fdac90c0fa4c85691fd27ef33f725f6e74c39e58bd975',
    text: `query ClubTable($meetId: ID!) {
  clubTable(meetId: $meetId) {
    id
    version
    isProvisional
    open
    clubs {
      place
      club
      points
      reason
    }
    divisions {
      name
      clubs {
        place
        club
        points
      }
    }
  }
}
`,
  },
  {
    name: 'competition-standing',
    hash: 'f41430e86dfa0beb79058d74f0b8f5743419bc6a062ba16c7c664f6c6a7e6406',
    text: `query CompetitionStanding($id: ID!) {
  competition(id: $id) {
    id
    version
    title
    state
    round
    rounds
    rows {
      competitor
      bib
      name
      club
      place
      isEqual
      mark
      wind
      status
    }
  }
}
`,
  },
  {
    name: 'competition-table',
    hash: '325e3c1525dd9d1aa42e834dce6fa12bb862a8ab7fe56ca3b8137a12ad87031b',
    text: `query CompetitionTable($id: ID!) {
  competition(id: $id) {
    id
    version
    changedAt
    title
    event
    kind
    stage
    state
    isDisputed
    isJumpOff
    round
    rounds
    startsAt
    meet {
      id
      name
      venue
      startsOn
    }
    delay {
      startsAt
      reason
    }
    stop {
      cause
      since
      notBefore
    }
    bar {
      height
      next
    }
    calls {
      competitor
      bib
      name
      round
      height
    }
    heights
    rows {
      competitor
      bib
      name
      club
      isGuest
      place
      isEqual
      mark
      wind
      status
      qualified
      reason
      trials {
        round
        cell
        wind
        isBest
      }
      heights {
        height
        cell
      }
      jumpOff {
        height
        cell
      }
    }
  }
}
`,
  },
  {
    name: 'latest-meets',
    hash: '02731c687b85620e8114b3f8ce93aa1075e2ce1a2e2539c9bc0b4c7e4233bbd6',
    text: `query LatestMeets($first: Int! = 10) {
  meets(first: $first) {
    id
    name
    venue
    startsOn
    endsOn
    timeZone
  }
}
`,
  },
  {
    name: 'meet-overview',
    hash: '3f84e05ec9d70b058664483858cd58f93919ad63bba8695bf0dc2e14491ea555',
    text: `query MeetOverview($id: ID!) {
  meet(id: $id) {
    id
    version
    changedAt
    hasClubTable
    meet {
      name
      venue
      startsOn
      endsOn
      timeZone
    }
    competitions {
      id
      version
      title
      event
      sex
      age
      stage
      state
      startsAt
      endsAt
      facility
      competitors
      round
      rounds
      height
      delay {
        startsAt
        reason
      }
      stop {
        cause
        notBefore
      }
      leaders {
        competitor
        bib
        name
        club
        place
        mark
        wind
      }
    }
  }
}
`,
  },
] as const;
