import { GraphQLError } from 'graphql';
import { ApiError } from './api-error.js';
import { publicError } from './classify.js';

/** As a driver's error comes: a message and a code. */
function fault(code: string, message = 'secret detail'): Error {
  return Object.assign(new Error(message), { code });
}

describe('What is shown of an error', () => {
  // PostgreSQL documentation, appendix A; Node.js documentation, "Common system errors".
  it.each([
    '08006',
    '57P01',
    '57P03',
    '53300',
    '57014',
    '40P01',
    'ECONNREFUSED',
    'ECONNRESET',
    'ETIMEDOUT',
    'ENOTFOUND',
  ])('%s of the database is UNAVAILABLE', (code) => {
    expect(publicError(fault(code)).extensions.code).toBe('UNAVAILABLE');
    expect(publicError({ driverError: fault(code) }).extensions.code).toBe('UNAVAILABLE');
  });

  it('of several addresses that all refuse is UNAVAILABLE', () => {
    expect(publicError(new AggregateError([fault('ECONNREFUSED')])).extensions.code).toBe('UNAVAILABLE');
  });

  it.each([
    fault('42P01'),
    fault('23505'),
    new TypeError('secret detail'),
    'secret detail',
    null,
    undefined,
    7,
  ])('that nobody expected (%p) is INTERNAL and says nothing of itself', (error) => {
    const shown = publicError(error);
    expect(shown.extensions.code).toBe('INTERNAL');
    expect(JSON.stringify(shown)).not.toContain('secret');
    expect(shown.cause).toBe(error);
  });

  it('keeps where in the answer it happened', () => {
    const wrapped = new GraphQLError('secret detail', {
      path: ['meets', 0],
      originalError: new Error('secret detail'),
    });
    expect(publicError(wrapped)).toMatchObject({ path: ['meets', 0], extensions: { code: 'INTERNAL' } });
  });

  it('that this API made passes, wrapped or not', () => {
    const own = new ApiError('FORBIDDEN', 'Not you.');
    expect(publicError(own)).toBe(own);
    const wrapped = new GraphQLError('Not you.', { path: ['x'], originalError: own });
    expect(publicError(wrapped)).toBe(wrapped);
  });

  it('about a document is the client’s', () => {
    expect(publicError(new GraphQLError('Cannot query field "x".')).extensions).toEqual({
      code: 'BAD_USER_INPUT',
      http: { spec: true, status: 400 },
    });
  });

  it('of GraphQL’s own about an answer is ours', () => {
    const error = new GraphQLError('Cannot return null for non-nullable field Meet.name.', {
      path: ['meet', 'name'],
    });
    expect(publicError(error).extensions.code).toBe('INTERNAL');
  });
});
