/** The text is not JSON, from this place on. Never leaves the JSON reader. */
export class NotJson extends Error {
  constructor(
    readonly offset: number,
    readonly complaint: string,
  ) {
    super(complaint);
  }
}

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const LITERALS: readonly (readonly [string, null | boolean])[] = [
  ['null', null],
  ['true', true],
  ['false', false],
];
const ESCAPES: ReadonlyMap<string, string> = new Map([
  ['"', '"'],
  ['\\', '\\'],
  ['/', '/'],
  ['b', '\b'],
  ['f', '\f'],
  ['n', '\n'],
  ['r', '\r'],
  ['t', '\t'],
]);
const HEX = /^[0-9a-fA-F]{4}$/;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const FIRST_PRINTABLE = 0x20;

/** Goes through a JSON text from left to right, token by token; white space before a token is skipped. */
export class JsonScanner {
  private at = 0;

  constructor(private readonly text: string) {}

  /** Where the next token begins. */
  nextOffset(): number {
    const code = this.text.charCodeAt(this.at);
    if (code <= FIRST_PRINTABLE) {
      SPACE.lastIndex = this.at;
      SPACE.exec(this.text);
      this.at = SPACE.lastIndex;
    }
    return this.at;
  }

  /** Takes a token of one character, if it comes next. */
  take(character: string): boolean {
    if (this.text[this.nextOffset()] !== character) return false;
    this.at += 1;
    return true;
  }

  /** `true`: a comma, so that more comes; `false`: the end of a list or object. */
  commaOr(end: string): boolean {
    if (this.take(',')) return true;
    if (this.take(end)) return false;
    throw this.fault(`a comma or ${end} is missing here`);
  }

  /** A key and its colon. */
  key(): string {
    if (!this.take('"')) throw this.fault('a key in double quotes is missing here');
    const key = this.restOfString();
    if (!this.take(':')) throw this.fault('a colon is missing here');
    return key;
  }

  /** A value that is neither list nor object. */
  scalar(): null | boolean | number | string {
    if (this.take('"')) return this.restOfString();
    const literal = LITERALS.find(([word]) => this.text.startsWith(word, this.at));
    if (literal) {
      this.at += literal[0].length;
      return literal[1];
    }
    NUMBER.lastIndex = this.at;
    const number = NUMBER.exec(this.text)?.[0];
    if (number === undefined) throw this.fault('a value is missing here');
    this.at += number.length;
    return Number(number);
  }

  expectEnd(): void {
    if (this.nextOffset() < this.text.length) throw this.fault('nothing may follow the value');
  }

  private restOfString(): string {
    const parts = [this.plainCharacters()];
    while (this.text.charCodeAt(this.at) === BACKSLASH) parts.push(this.escape(), this.plainCharacters());
    this.at += 1;
    return parts.length === 1 ? parts[0]! : parts.join('');
  }

  /** Up to the next backslash or quote. */
  private plainCharacters(): string {
    const start = this.at;
    let code = this.text.charCodeAt(start);
    while (code >= FIRST_PRINTABLE && code !== QUOTE && code !== BACKSLASH) {
      this.at += 1;
      code = this.text.charCodeAt(this.at);
    }
    if (code !== QUOTE && code !== BACKSLASH) throw this.fault(unfinished(this.at < this.text.length));
    return this.text.slice(start, this.at);
  }

  private escape(): string {
    const letter = this.text[this.at + 1] ?? '';
    const plain = ESCAPES.get(letter);
    const hex = this.text.slice(this.at + 2, this.at + 6);
    if (plain !== undefined) this.at += 2;
    else if (letter === 'u' && HEX.test(hex)) this.at += 6;
    else throw this.fault('there is no such escape in JSON');
    return plain ?? String.fromCharCode(Number.parseInt(hex, 16));
  }

  private fault(complaint: string): NotJson {
    return new NotJson(this.at, complaint);
  }
}

function unfinished(isControlCharacter: boolean): string {
  return isControlCharacter
    ? 'a control character must be written as an escape'
    : 'a closing quote is missing';
}
