const RULES = 'libs/rules/src';

/**
 * What is changed together, and the tests that are to notice; paths from the top of the repository. A property is tried
 * no further after `propertyTime` milliseconds, whatever its number of runs: long where a test counts many of them.
 */
export const GROUPS = {
  ranking: {
    propertyTime: 300,
    mutate: [`${RULES}/ranking/*.ts`],
    tests: [`${RULES}/ranking/*.spec.ts`, 'tests/rules/{ranking.properties,horizontal-examples}.spec.ts'],
  },
  progression: {
    propertyTime: 20_000,
    mutate: [`${RULES}/progression/*.ts`],
    tests: [
      `${RULES}/progression/*.spec.ts`,
      'tests/rules/{progression.properties,horizontal-examples,cases}.spec.ts',
    ],
  },
  vertical: {
    propertyTime: 300,
    mutate: [`${RULES}/vertical/vertical-{ranking,standing}.ts`],
    tests: [
      `${RULES}/vertical/vertical-standing.spec.ts`,
      'tests/rules/vertical{,.properties,-jump-off}.spec.ts',
    ],
  },
  scoring: {
    propertyTime: 300,
    mutate: [`${RULES}/scoring/*.ts`],
    tests: [
      `${RULES}/scoring/*.spec.ts`,
      'tests/rules/{team-points.properties,places.properties,cases}.spec.ts',
    ],
  },
};
