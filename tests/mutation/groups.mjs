const RULES = 'libs/rules/src';

/** What is changed together, and the tests that are to notice; paths from the top of the repository. */
export const GROUPS = {
  ranking: {
    mutate: [`${RULES}/ranking/*.ts`],
    tests: [`${RULES}/ranking/*.spec.ts`, 'tests/rules/{ranking.properties,horizontal-examples}.spec.ts'],
  },
  progression: {
    mutate: [`${RULES}/progression/*.ts`],
    tests: [
      `${RULES}/progression/*.spec.ts`,
      'tests/rules/{progression.properties,horizontal-examples,cases}.spec.ts',
    ],
  },
  vertical: {
    mutate: [`${RULES}/vertical/vertical-{ranking,standing}.ts`],
    tests: [
      `${RULES}/vertical/vertical-standing.spec.ts`,
      'tests/rules/vertical{,.properties,-jump-off}.spec.ts',
    ],
  },
  scoring: {
    mutate: [`${RULES}/scoring/*.ts`],
    tests: [`${RULES}/scoring/*.spec.ts`, 'tests/rules/{team-points.properties,cases}.spec.ts'],
  },
};
