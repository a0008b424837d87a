import fc from 'fast-check';

/** Characters that mean something in a script, look like some that do, or hide. */
const meaning = [
  ...'aeE10_ \t.,;:#"\'=[]()@+-*/^%\\<>|{}$`\r\n',
  ...'\u00a0\u200b\ufeff\u2212\u201c\u201d\u00b5\u2126\u00b0\u00ba\u0000\u001b\u202e\u2028\u0085',
  '\u{1f6e0}',
  '\ud83d',
  '\udee0',
  '\r\n',
  '..',
  '->',
  'let ',
  'include ',
  '# accept ',
  'min(',
  'degC',
  'Hz',
  '1e308',
  '9007199254740993',
  '2026-05-14',
  '__proto__',
  'constructor',
  'toString',
];

/** Any characters, any bytes read as text in two ways, and the characters of scripts in any order. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.uint8Array({ maxLength: 80 }).map((bytes) => Buffer.from(bytes).toString('utf8')),
  fc.uint8Array({ maxLength: 80 }).map((bytes) => Buffer.from(bytes).toString('latin1')),
  fc.string({ unit: fc.constantFrom(...meaning), maxLength: 60 }),
);

/** A slip of the hand or of a disk: characters out, in, doubled, turned round, or all after a place gone. */
interface Slip {
  readonly at: number;
  readonly length: number;
  readonly kind: 'take out' | 'put in' | 'double' | 'swap' | 'cut off';
  readonly text: string;
}

const slip: fc.Arbitrary<Slip> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat(6),
  kind: fc.constantFrom('take out', 'put in', 'put in', 'double', 'swap', 'cut off'),
  text: fc.constantFrom(...meaning),
});

/** A right text with a few slips in it, most of the time. */
export function slipped(texts: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .tuple(texts, fc.array(slip, { maxLength: 3 }))
    .map(([text, slips]) => slips.reduce(withSlip, text));
}

function withSlip(text: string, { at, length, kind, text: put }: Slip): string {
  const from = Math.floor(at * text.length);
  const [head, middle, tail] = [
    text.slice(0, from),
    text.slice(from, from + length),
    text.slice(from + length),
  ];
  switch (kind) {
    case 'take out':
      return head + tail;
    case 'put in':
      return head + put + middle + tail;
    case 'double':
      return head + middle + middle + tail;
    case 'swap':
      return head + [...middle].reverse().join('') + tail;
    case 'cut off':
      return head;
  }
}
