import { hashOfCode, makeCode, passwordProblem, Passwords } from './passwords.js';

describe('A password', () => {
  const NAME = 'orla.fennick@harbour.example';

  it.each([
    ['ten letter', null],
    ['correct horse battery staple', null],
    ['十種競技の記録を測る人', null],
    ['nine char', 'has 9 characters'],
    ['𝟙𝟚𝟛𝟜𝟝𝟞𝟟𝟠𝟡', 'has 9 characters'],
    ['x'.repeat(201), 'more than 200'],
    ['abababababab', 'repeats'],
    ['I am Orla.Fennick', 'contains the login name'],
    ['harbour.example', 'contains the login name'],
  ])('%s: %s', (password, problem) => {
    const found = passwordProblem(password, NAME);
    if (problem === null) expect(found).toBeNull();
    else expect(found).toContain(problem);
  });

  it('is compared with nothing as with something, and matches nothing', async () => {
    const passwords = new Passwords();
    const stored = await passwords.hash('two hammers and a net');
    expect([
      await passwords.matches('two hammers and a net', stored),
      await passwords.matches('two hammers and a nut', stored),
      await passwords.matches('two hammers and a net', null),
    ]).toEqual([true, false, false]);
  });

  it('is hashed with a salt of its own', async () => {
    const passwords = new Passwords();
    const same = 'two hammers and a net';
    expect(new Set(await Promise.all([1, 2, 3, 4].map(() => passwords.hash(same)))).size).toBe(4);
  });
});

describe('A one-time code', () => {
  it('is long, and drawn from letters that are not taken for one another', () => {
    const codes = Array.from({ length: 500 }, makeCode);
    for (const code of codes) expect(code).toMatch(/^[A-HJKMNP-TV-Z2-9]{5}(-[A-HJKMNP-TV-Z2-9]{5}){3}$/);
    expect(new Set(codes).size).toBe(500);
    expect(new Set(codes.join('').replaceAll('-', '')).size).toBe(30);
  });

  it('may be typed in small letters and without dashes', () => {
    const code = makeCode();
    expect(hashOfCode(code.toLowerCase().replaceAll('-', ' '))).toBe(hashOfCode(code));
    expect(hashOfCode(makeCode())).not.toBe(hashOfCode(code));
  });
});
