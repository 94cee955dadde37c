import { readConfig } from './config.js';

describe('readConfig', () => {
  it('needs nothing: an embedded database, this machine only, the demo and the explorer', () => {
    expect(readConfig({})).toEqual({
      databaseUrl: null,
      replicaUrls: [],
      dataDirectory: '.sectorline',
      host: '127.0.0.1',
      port: 4000,
      portIsFixed: false,
      production: false,
      explorer: true,
      demo: true,
      logLevel: 'warn',
      secret: undefined,
      trustedProxies: [],
      liveBus: 'process',
      publicIsOpen: false,
      erasures: '.sectorline/erasures.jsonl',
      allowedOrigins: [],
      livePerAddress: 100,
      backups: { directory: '.sectorline/backups', everyHours: 1, keep: 48 },
    });
  });

  it('puts no invented meet into a real database, unless asked', () => {
    expect(readConfig({ DATABASE_URL: 'postgres://x/y' }).demo).toBe(false);
    expect(readConfig({ DATABASE_URL: 'postgres://x/y', DEMO: '1' }).demo).toBe(true);
  });

  it('expects other instances on a real database, unless told that there are none', () => {
    expect(readConfig({ DATABASE_URL: 'postgres://x/y' }).liveBus).toBe('postgres');
    expect(readConfig({ DATABASE_URL: 'postgres://x/y', LIVE_BUS: 'process' }).liveBus).toBe('process');
  });

  it('in production shows no explorer, loads no demo and takes no other port', () => {
    expect(readConfig({ NODE_ENV: 'production', PORT: '80' })).toMatchObject({
      explorer: false,
      demo: false,
      portIsFixed: true,
      logLevel: 'info',
    });
    expect(readConfig({ NODE_ENV: 'production', EXPLORER: '1' }).explorer).toBe(true);
  });

  it.each([
    ['PORT', '70000'],
    ['PORT', '4000x'],
    ['PORT', '-1'],
    ['EXPLORER', 'yes'],
    ['DEMO', 'true'],
    ['LOG_LEVEL', 'loud'],
    ['LIVE_BUS', 'telegraph'],
    ['ALLOWED_ORIGINS', 'https://club.example/'],
    ['LIVE_PER_ADDRESS', '0'],
  ])('refuses %s=%s by name', (name, value) => {
    expect(() => readConfig({ [name]: value })).toThrow(name);
  });

  it('takes addresses and ranges of proxies, and nothing else for one', () => {
    const { trustedProxies } = readConfig({ TRUSTED_PROXIES: '10.0.0.0/8, ::1' });
    expect(trustedProxies).toEqual(['10.0.0.0/8', '::1']);
    expect(() => readConfig({ TRUSTED_PROXIES: 'everybody' })).toThrow('TRUSTED_PROXIES');
  });
});
