import fc from 'fast-check';

/** Random scripts of the kind that pilots are in the middle of writing: mostly right, now and then not. */

const settings: readonly string[] = [
  'cells = 6',
  'cells = 4 # four',
  'cells = n',
  'capacity = 550 mAh',
  'capacity = n * 100 mAh',
  'chemistry = lipo',
  'mass = 212 g',
  'mass = 212',
  'name = "Sandmartin \u{1f6e0}"',
  'name = "open',
  'rate = 8 kHz',
  'rate = 4 * base',
  'cutoff = 2 * quiet',
  'cutoff = 120 Hz # accept line/outside-usual: meant',
  'cutoff = 3 Hz # accept line/outside-usual: meant',
  'cutoff = 1,5 hz',
  'cutoff = gyro.filter.1.cutoff + 5 Hz',
  'cutoff = gyro.filter.2.cutoff',
  'cutof = 9 Hz',
  'kind = none',
  'kind = butterworth',
  'kind = buterworth',
  'filter.2.cutoff = quiet',
  'link = crsf',
  'port = uart2',
  'port = uart22',
  'profile = wren',
  'profile = heron',
  'order = AETR',
  'order = taer',
  'channel = 5',
  'on = 1750..2050 us',
  'on = 2050..1750 us',
  'place = [1, 2]',
  'needs = [gyro-still, gyro-stil]',
  'tilt-limit = 180 deg # accept safe/arms-at-any-tilt: bench',
  'tilt-limit = 60 deg',
  'action = motors-off',
  'throttle = 20 %',
  'warn-cell = 3.5 V',
  'land-cell = 3.6 V',
  'signal = dshot300',
  'pack.sprint.cells = 6',
  'pack.sprint.capacity = 1800 mAh',
  'gyro.filter.1.cutoff = base / 10',
  'craft.mass = 230 g',
  'wobble = 1',
  'shade = #ff8800',
  '"gyro rate" = 0x1F',
  '"gyro rate" = 8000 4000 # accept line/set-twice: meant',
  '"gyro rate"."#2" = on',
  'own."PID α".roll = 1,5',
  'own."PID α".roll = ""',
  'größe = 5',
  'rate = 2 * own."PID α".roll',
  '__proto__ = 1',
  'cutoff\u00a0=\u00a090\u00a0Hz',
  'curve = 0 % -> 0 deg/s, 100 % -> 600 deg/s',
];

const headers: readonly string[] = [
  '[craft]',
  '[pack.sprint]',
  '[pack.cruise]',
  '[pack.\u{1f6e0}]',
  '[gyro]',
  '[gyro.filter.1]',
  '[gyro.filter.1 @ cruise]',
  '[gyro.filter.1 @ sprint] # fast',
  '[gyro.filter.2]',
  '[gyro.lowpas]',
  '[receiver]',
  '[board]',
  '[switch.arm]',
  '[switch.locate]',
  '[arming]',
  '[signal-loss]',
  '[power]',
  '[power @ cruise]',
  '[esc]',
  '[motor @ nowhere]',
  '[video]',
  '[overlay.name]',
  '[own]',
  '[own @ cruise]',
  '[own."PID α"]',
  '[own."PID α" @ sprint]',
  '[own.größe]',
  '[Own]',
  '[5]',
  '[gyro',
  '[gyro @',
];

const others: readonly string[] = [
  '',
  '   ',
  '# note \u{1f6e0} \u00e9',
  '# accept line/unknown-name: why not',
  '# accept',
  'let quiet = 90 Hz',
  'let quiet = 0.1 * base',
  'let base = 1 kHz',
  'let base = quiet * 10',
  'let n = 4',
  'let n = pack.sprint.cells',
  'let broken = ]',
  'let quiet = [base]',
  'include "one.craft"',
  'include "two.craft"',
  'include "main.craft"',
  'include "nowhere.craft"',
  'include "one.craft',
  '\ufeff[gyro]',
  'half = ',
  'no sense at all',
  '\u0000\u001b',
];

const end = fc.constantFrom('\n', '\n', '\n', '\r\n', '\r');

/** One line, without its end. */
export const craftLine = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...settings) },
  { weight: 4, arbitrary: fc.constantFrom(...headers) },
  { weight: 3, arbitrary: fc.constantFrom(...others) },
);

/** A whole script; its last line may have no end. */
export const craftScript = fc
  .tuple(fc.array(fc.tuple(craftLine, end), { maxLength: 25 }), fc.boolean())
  .map(([lines, isEnded]) => {
    const text = lines.map(([words, lineEnd]) => words + lineEnd).join('');
    return isEnded ? text : text.replace(/[\r\n]+$/, '');
  });

/** What somebody types, pastes or takes out. */
const typed = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  { weight: 4, arbitrary: fc.tuple(craftLine, end).map(([words, lineEnd]) => words + lineEnd) },
  { weight: 1, arbitrary: fc.tuple(end, craftLine).map(([lineEnd, words]) => lineEnd + words) },
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      '5',
      'x',
      ' ',
      '#',
      '"',
      '[',
      ']',
      '=',
      '.',
      '@',
      '\n',
      '\r',
      '\r\n',
      '\u{1f6e0}',
      '\ufeff',
    ),
  },
  { weight: 2, arbitrary: fc.constantFrom('\n', '\r', '\r\n', '\n\r', '\r\r\n') },
  { weight: 1, arbitrary: craftScript },
);

/** An edit by shares of the script's length, so that it fits whatever script it meets. */
export interface LooseEdit {
  readonly line: number;
  readonly character: number;
  readonly lines: number;
  readonly endCharacter: number;
  readonly text: string;
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

export const looseEdit: fc.Arbitrary<LooseEdit> = fc.record({
  line: share,
  character: fc.oneof(fc.constant(0), share, fc.constant(1)),
  lines: fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(4) }),
  endCharacter: fc.oneof(fc.constant(0), share, fc.constant(1)),
  text: typed,
});
