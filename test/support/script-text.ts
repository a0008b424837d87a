import fc from 'fast-check';

const blank = fc.stringMatching(/^[ \t]{0,3}$/);
const name = fc.constantFrom(
  'x',
  'mass',
  'gyro.filter.1',
  'long-hyphened-name',
  'pack.sprint.cells',
  'include',
  'own.x',
  '"a  b".c',
  'own."a = # b"',
);
const value = fc.constantFrom(
  '212 g',
  '2.5*quiet',
  'a - b',
  'a -b',
  '-40degC',
  '1750..2050 us',
  'quiet .. 100 Hz',
  '[front, rear ,left]',
  '0 %->0 deg/s,50 % -> 170 deg/s',
  '"a  # b"',
  '"open',
  'max (1 m ,low)',
  '1,5 Hz',
  '2026-05-14',
  '90\u00a0Hz',
  '5  ,4   x',
  '"a"  "b"',
  '\u00a05',
  '',
);
const comment = fc.constantFrom(
  '',
  '# why',
  '#  two  blanks ',
  '# accept tune/x: hover',
  '# accept',
  '# \u{1f6e0} é',
);

const setting = fc
  .tuple(blank, name, blank, blank, value, blank, comment)
  .map(([a, key, b, c, text, d, words]) => `${a}${key}${b}=${c}${text}${d}${words}`);
const header = fc
  .tuple(
    blank,
    blank,
    fc.constantFrom('gyro', 'gyro @ cruise', 'a@b', 'a @', '', 'own', 'own."a  ]"@b', 'own.ö'),
    blank,
    comment,
  )
  .map(([a, b, path, c, words]) => `${a}[${b}${path}${c}]${words}`);
const junk = fc.string({
  unit: fc.constantFrom(...' \t#"=[].,a1-+*/@>\\\u00a0\ufeff\u2212\f'),
  maxLength: 12,
});
const line = fc.oneof(
  { weight: 5, arbitrary: setting },
  { weight: 2, arbitrary: header },
  { weight: 2, arbitrary: fc.tuple(blank, comment).map(([a, words]) => a + words) },
  { weight: 2, arbitrary: blank },
  { weight: 1, arbitrary: name.map((text) => `let ${text}  = 3 m`) },
  { weight: 1, arbitrary: junk },
);
const end = fc.oneof(
  { weight: 6, arbitrary: fc.constant('\n') },
  { weight: 1, arbitrary: fc.constant('\r\n') },
  { weight: 1, arbitrary: fc.constant('\r') },
);

/** Scripts as people write them and as they must not be written, with any line ends. */
export const scriptText: fc.Arbitrary<string> = fc
  .tuple(fc.array(fc.tuple(line, end), { maxLength: 12 }), line)
  .map(([lines, last]) => lines.flat().join('') + last);
