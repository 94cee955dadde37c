import { Throttle } from './throttle.js';

describe('The throttle', () => {
  let nowMs: number;
  let throttle: Throttle;
  beforeEach(() => {
    nowMs = 1_000_000;
    throttle = new Throttle(() => nowMs);
  });

  const fail = (...keys: string[]) =>
    throttle.attempt(
      keys,
      () => Promise.resolve('no'),
      () => true,
    );
  const succeed = (...keys: string[]) =>
    throttle.attempt(
      keys,
      () => Promise.resolve('yes'),
      () => false,
    );

  it('lets the sixth failure of a minute wait until the first is a minute old', async () => {
    for (let time = 0; time < 5; time += 1) {
      await fail('account');
      nowMs += 1_000;
    }
    await expect(succeed('account')).rejects.toMatchObject({
      extensions: { code: 'RATE_LIMITED', retryAfterMs: 55_000 },
    });
    nowMs += 54_999;
    await expect(succeed('account')).rejects.toThrow('Too many tries');
    nowMs += 1;
    expect(await succeed('account')).toBe('yes');
  });

  it('does not count what succeeds, nor what it did not let through', async () => {
    for (let time = 0; time < 20; time += 1) await succeed('account');
    for (let time = 0; time < 5; time += 1) await fail('account');
    nowMs += 30_000;
    for (let time = 0; time < 5; time += 1) await expect(fail('account')).rejects.toThrow('Too many tries');
    nowMs += 30_000;
    expect(await succeed('account')).toBe('yes');
  });

  it('counts each key by itself, and one that is used up is enough', async () => {
    for (let time = 0; time < 5; time += 1) await fail('account', `address ${time}`);
    await expect(fail('account', 'address 9')).rejects.toThrow('Too many tries');
    expect(await succeed('another', 'address 1')).toBe('yes');
  });

  it('counts those that are under way: many at once are no way round', async () => {
    let let_: () => void = () => undefined;
    const gate = new Promise<void>((resolve) => (let_ = resolve));
    const slow = () =>
      throttle.attempt(
        ['account'],
        () => gate,
        () => true,
      );
    const all = Promise.allSettled(Array.from({ length: 50 }, slow));
    let_();
    const outcomes = await all;
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(5);
  });

  it('keeps counting a failure that was thrown', async () => {
    const broken = () =>
      throttle.attempt(
        ['account'],
        () => Promise.reject(new Error('gone')),
        () => false,
      );
    for (let time = 0; time < 5; time += 1) await expect(broken()).rejects.toThrow('gone');
    await expect(broken()).rejects.toThrow('Too many tries');
  });
});
