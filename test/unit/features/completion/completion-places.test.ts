import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { completion } from '../../../../server/src/features/completion/completion';
import type { CompletionItem } from '../../../../server/src/features/completion/item';
import type { Span, ValueNode } from '../../../../server/src/language/ast';
import { parseLine } from '../../../../server/src/language/parser';
import { childNodes } from '../../../../server/src/language/value-nodes';
import { setting } from '../../../fuzz/inputs/catalogue-script';
import { snapshotOf } from '../../../support/snapshot';

const runs = Number(process.env.PROPSOFF_RUNS ?? 150);

/** Beside the line: what its values may name. */
const rest = [
  'let quiet = 90 Hz',
  'let full = 2000 us',
  'let half = 50 %',
  'gyro.rate = 8 kHz',
  '[pack.sprint]',
  'cells = 4',
  '[pack.cruise]',
  'cells = 6',
].join('\n');

/** Completion at the places of a line, the first of a script. */
function at(line: string, snippets = false) {
  const { snapshot } = snapshotOf(`${line}\n${rest}`);
  return (character: number) =>
    completion(snapshot, { line: 0, character }, { snippets, trigger: null }).items;
}

/** A snippet as it stands once it has been put in: first choices, texts to type over, no stops. */
function expanded({ insertText, isSnippet }: CompletionItem): string {
  if (!isSnippet) return insertText;
  return insertText
    .replace(/\$\{\d+\|((?:\\.|[^,|\\])*)(?:,(?:\\.|[^|\\])*)*\|\}/g, '$1')
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
    .replace(/\$\d+/g, '')
    .replace(/\\(.)/g, '$1');
}

function accepted(line: string, item: CompletionItem): string {
  const { start, end } = item.range;
  return line.slice(0, start.character) + expanded(item) + line.slice(end.character);
}

/** The line at the `|` after an item has been accepted there. */
function mended(marked: string, label: string): string {
  const cursor = marked.indexOf('|');
  const line = marked.replace('|', '');
  const items = at(line)(cursor);
  const item = items.find((one) => one.label === label);
  assert.ok(item, `${label} is not among ${items.map((one) => one.label).slice(0, 20)}`);
  return accepted(line, item);
}

/** Everything in a value that can be put there as one: nodes, names of functions, units. */
function partsOf(node: ValueNode): readonly Span[] {
  const own: Span[] = [node];
  if (node.kind === 'call') own.push(node.name);
  if (node.kind === 'number' && node.unitSpan !== null) own.push(node.unitSpan);
  return [...own, ...childNodes(node).flatMap(partsOf)];
}

/** That a line says what was proposed, just there, and nothing that is not understood. */
function assertProposed(line: string, item: CompletionItem, cursor: number): void {
  const text = accepted(line, item);
  const told = `${item.label} at ${cursor} of “${line}” gives “${text}”`;
  const { start, end } = item.range;
  assert.ok(start.character <= cursor && cursor <= end.character, `the cursor is outside: ${told}`);
  const statement = parseLine(text);
  assert.deepEqual(statement.problems, [], told);
  assert.ok(statement.kind === 'setting' || statement.kind === 'constant', told);
  assert.ok(statement.value !== null, told);
  const put = expanded(item);
  const from = start.character + put.length - put.trimStart().length;
  const to = from + put.trim().length;
  const isOne = (span: Span) => span.start === from && span.end === to;
  assert.ok(partsOf(statement.value).some(isOne), `not one part: ${told}`);
  if (item.kind === 'value' || item.kind === 'word')
    assert.ok(put.includes(item.label), `not what was proposed: ${told}`);
}

describe('completion before something that is there', () => {
  const cases: readonly (readonly [marked: string, label: string, expected: string])[] = [
    // Quantities: a whole value takes the place of the whole one.
    ['gyro.filter.1.cutoff = |180 Hz', 'quiet', 'gyro.filter.1.cutoff = quiet'],
    ['gyro.filter.1.cutoff =| 180 Hz', 'quiet', 'gyro.filter.1.cutoff = quiet'],
    ['gyro.rate = |6.4 kHz', '8 kHz', 'gyro.rate = 8 kHz'],
    ['gyro.rate = |2 * quiet + 3 Hz', '8 kHz', 'gyro.rate = 8 kHz'],
    ['gyro.rate = |2 * quiet', 'quiet', 'gyro.rate = quiet * quiet'],
    ['gyro.rate = 2 * |(quiet + 3 Hz)', 'quiet', 'gyro.rate = 2 * quiet'],
    ['gyro.rate = 2 * | -quiet', 'quiet', 'gyro.rate = 2 * quiet'],
    ['gyro.rate = qu|iet * 2', 'quiet', 'gyro.rate = quiet * 2'],
    ['gyro.rate = mi|n(quiet, 2 kHz) * 2', 'max', 'gyro.rate = max(quiet, 2 kHz) * 2'],
    ['gyro.rate = mi|n(quiet, 2 kHz) * 2', 'quiet', 'gyro.rate = quiet * 2'],
    ['gyro.rate = m|', 'min', 'gyro.rate = min'],
    // Units, wherever the cursor stands in one.
    ['gyro.rate = 180| Hz', 'kHz', 'gyro.rate = 180 kHz'],
    ['gyro.rate = 180 |Hz', 'kHz', 'gyro.rate = 180 kHz'],
    ['gyro.rate = 180|Hz', 'kHz', 'gyro.rate = 180 kHz'],
    ['gyro.rate = 3 |-2', 'kHz', 'gyro.rate = 3 kHz-2'],
    [
      'control.roll.proportional = 0.05 %/(de|g/s)',
      '%/(deg/s)',
      'control.roll.proportional = 0.05 %/(deg/s)',
    ],
    [
      'control.roll.proportional = 0.05 %/(de|g/s * 2)',
      '%/(deg/s)',
      'control.roll.proportional = 0.05 %/(deg/s) * 2)',
    ],
    // Ranges: their ends, and the whole.
    ['switch.arm.on = |1750..2100 us', 'full', 'switch.arm.on = full..2100 us'],
    ['switch.arm.on = 1750..|2100 us', 'full', 'switch.arm.on = 1750..full'],
    ['switch.arm.on = 1750|..2100 us', 'us', 'switch.arm.on = 1750 us..2100 us'],
    // Lists: one item.
    [
      'arming.needs = [|gyro-still, throttle-low]',
      'receiver-alive',
      'arming.needs = [receiver-alive, throttle-low]',
    ],
    [
      'arming.needs = [gyro-still,| throttle-low]',
      'position-fix',
      'arming.needs = [gyro-still, position-fix]',
    ],
    ['arming.needs = |[gyro-still, throttle-low]', 'gyro-still', 'arming.needs = [gyro-still]'],
    ['arming.needs = gyro|-still', 'gyro-still', 'arming.needs = [gyro-still]'],
    // Words and flags.
    ['signal-loss.action = |descend', 'hover', 'signal-loss.action = hover'],
    ['signal-loss.action = des|cend', 'hover', 'signal-loss.action = hover'],
    ['signal-loss.action =|descend', 'hover', 'signal-loss.action = hover'],
    ['board.compass = |off', 'on', 'board.compass = on'],
    ['flight.one.pack = |sprint', 'cruise', 'flight.one.pack = cruise'],
    // Curves: one end of a point.
    [
      'stick.roll.curve = 0 % -> 0 deg/s, |50 % -> 170 deg/s',
      'half',
      'stick.roll.curve = 0 % -> 0 deg/s, half -> 170 deg/s',
    ],
    // Constants.
    ['let loud = |2 * quiet', 'full', 'let loud = full * quiet'],
    // Names and sections.
    [' | board.mount-rol = 8 deg', 'board.mount-yaw', ' board.mount-yaw = 8 deg'],
    ['board.mo|unt 8 deg', 'board.mount-yaw', 'board.mount-yaw = 8 deg'],
    ['[|gyro]', 'motor', '[motor]'],
    ['[| gyro @ sprint]', 'motor', '[motor @ sprint]'],
    ['[gyro @| sprint]', 'cruise', '[gyro @ cruise]'],
    ['[gyro @ s|print', 'cruise', '[gyro @ cruise]'],
  ];
  for (const [marked, label, expected] of cases) {
    it(`${marked} takes ${label}: ${expected}`, () => assert.equal(mended(marked, label), expected));
  }

  it('offers all that is usual of a range, or of a curve, in place of the whole', () => {
    for (const line of [
      'switch.arm.on = 1750..full',
      'stick.roll.curve = 0 % -> 0 deg/s, 50 % -> half * 1 deg/s',
    ]) {
      const from = line.indexOf('=') + 2;
      const [whole] = at(line)(from).filter(({ kind }) => kind === 'value');
      assert.ok(whole);
      assert.equal(accepted(line, whole), line.slice(0, from) + whole.label);
    }
  });

  it('offers nothing in front of another statement, behind a whole name, and between two dots', () => {
    for (const marked of [
      '|[gyro]',
      'le|t loud = 9 Hz',
      'let |loud = 9 Hz',
      'inc|lude "a.craft"',
      '[gyro |@ sprint]',
      '[gyro |]',
      'switch.arm.on = 1750.|.2100 us',
      'gyro.rate = 1|80 Hz',
      'craft.name = "San|dmartin"',
      'flight.one.date = 2026-|05-14',
    ])
      assert.deepEqual(at(marked.replace('|', ''))(marked.indexOf('|')), [], marked);
  });
});

describe('completion at any place of any value', () => {
  const isRight = (line: string) => {
    const statement = parseLine(line);
    return statement.kind === 'setting' && statement.problems.length === 0 && statement.value !== null;
  };

  for (const snippets of [false, true]) {
    it(`puts in what was proposed, and the line is understood as before${snippets ? ', as a snippet' : ''}`, () => {
      let offered = 0;
      fc.assert(
        fc.property(setting.filter(isRight), (line) => {
          const items = at(line, snippets);
          for (let cursor = line.indexOf('=') + 1; cursor <= line.length; cursor += 1) {
            for (const item of items(cursor)) {
              assertProposed(line, item, cursor);
              offered += 1;
            }
          }
        }),
        { numRuns: runs },
      );
      assert.ok(offered > 10 * runs, `${offered} were offered`);
    });
  }

  it('puts a name in the place of a name, and leaves the value', () => {
    const line = 'switch.arm.on = 1750..2100 us';
    const items = at(line);
    for (let cursor = 0; cursor <= line.indexOf(' ='); cursor += 1) {
      for (const item of items(cursor)) {
        const statement = parseLine(accepted(line, item));
        assert.deepEqual(statement.problems, [], item.label);
        assert.ok(statement.kind === 'setting' && statement.path.text === item.insertText, item.label);
        assert.ok(accepted(line, item).endsWith(' = 1750..2100 us'), item.label);
      }
    }
  });
});
