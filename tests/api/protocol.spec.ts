import { auditServer } from 'graphql-http';
import { startApi, type TestApi } from '../support/api.js';

describe('GraphQL over HTTP', () => {
  let api: TestApi;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  // The suite that accompanies the GraphQL over HTTP specification (package graphql-http).
  it('passes every check of the audit suite', async () => {
    const results = await auditServer({ url: api.graphqlUrl, fetchFn: fetch });
    const notOk = results
      .filter(({ status }) => status !== 'ok')
      .map(
        (result) =>
          `${result.id} ${result.name}: ${result.status} ${'reason' in result ? result.reason : ''}`,
      );
    expect(notOk).toEqual([]);
    expect(results).toHaveLength(61);
  });
});
