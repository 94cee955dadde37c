import { passIn } from './pass.js';

describe('what a device comes in by', () => {
  it.each([
    ['https://meet.example/desk#token=a.b-c', 'token', 'a.b-c'],
    ['https://meet.example/desk#link=Zm9v_w', 'link', 'Zm9v_w'],
    ['  a.b.c ', 'token', 'a.b.c'],
  ])('is in %s', (text, kind, value) => {
    expect(passIn(text)).toEqual({ kind, text: value });
  });
});
