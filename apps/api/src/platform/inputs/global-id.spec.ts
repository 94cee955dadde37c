import fc from 'fast-check';
import { globalId, OBJECT_KINDS, readGlobalId, uuidOf } from './global-id.js';
import { uuidV7 } from './uuid-v7.js';

describe('Ids as the API shows them', () => {
  it('are taken apart into what they were made from', () => {
    fc.assert(
      fc.property(fc.constantFrom(...OBJECT_KINDS), fc.uuid(), (kind, uuid) => {
        expect(readGlobalId(globalId(kind, uuid))).toEqual({ kind, uuid });
      }),
    );
  });

  it('name one kind of object', () => {
    const id = globalId('Meet', uuidV7());
    expect([uuidOf('Meet', id), uuidOf('Competition', id)]).toEqual([expect.any(String), null]);
  });

  it('that nobody made are none, and there is one spelling of each', () => {
    const uuid = '01997f00-0000-7000-8000-0000000000aa';
    const id = globalId('Meet', uuid);
    for (const wrong of [
      '',
      'x',
      uuid,
      `${id}=`,
      `${id}A`,
      globalId('Meet', uuid.toUpperCase()),
      Buffer.from(`Nothing:${uuid}`).toString('base64url'),
      Buffer.from(`Meet:${uuid}:x`).toString('base64url'),
      '\u0000',
      'x'.repeat(1e6),
    ]) {
      expect(uuidOf('Meet', wrong)).toBeNull();
    }
    fc.assert(fc.property(fc.string(), (text) => uuidOf('Meet', text) === null));
  });
});

describe('uuidV7', () => {
  // RFC 9562 section 5.7: 48 bits of milliseconds, version 7, variant 10.
  it('begins with the time and says its version', () => {
    const uuid = uuidV7(0x0199_7f00_1234);
    expect(uuid).toMatch(/^01997f00-1234-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('is never made twice', () => {
    expect(new Set(Array.from({ length: 1000 }, () => uuidV7(1)))).toHaveProperty('size', 1000);
  });
});
