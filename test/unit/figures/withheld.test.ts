import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { type Withheld, withheldIn } from '../../../server/src/figures/withheld';
import { craftOf } from '../../support/findings';
import { wholeCraft } from '../../support/whole-craft';

function withheldOf(lines: readonly string[]): ReadonlyMap<string, Withheld> {
  const craft = craftOf(lines.join('\n'));
  const view = new CraftView(craft, craft.packs()[0] ?? null);
  return new Map(withheldIn(view).map((one) => [one.id, one]));
}

function hasOpenEnd(lines: readonly string[], id: string): boolean {
  const craft = craftOf(lines.join('\n'));
  const figure = figureOf(new CraftView(craft, craft.packs()[0] ?? null), id);
  return figure?.highWords === 'unknown';
}

/** What a pilot would write for what is asked; a craft that lacks all packs is asked for one of any name. */
const answers: ReadonlyMap<string, string> = new Map(
  [
    ...wholeCraft,
    'craft.flying = gentle',
    'motor.stator-diameter = 28 mm',
    'motor.stator-height = 7 mm',
    'motor.mass = 48 g',
    // Made by the power balance of a motor with 0.11 ohm and 0.9 A.
    ...[
      [16.6, 2.3717, 6000, 0.043426],
      [16.3, 10.6324, 10000, 0.120628],
      [15.9, 27.4808, 13500, 0.219845],
    ].flatMap(([voltage, current, speed, torque], index) => [
      `motor.bench.${index + 1}.voltage = ${voltage} V`,
      `motor.bench.${index + 1}.current = ${current} A`,
      `motor.bench.${index + 1}.speed = ${speed} rpm`,
      `motor.bench.${index + 1}.torque = ${torque} N*m`,
    ]),
    'video.antenna-gain = 2 dBi',
    'video.receiver-antenna-gain = 8 dBi',
    'video.receiver-sensitivity = -90 dBm',
  ].flatMap((line) => {
    const [path = ''] = line.split(' = ');
    return [[path, line] as const, [path.replace(/^pack\.one\./, 'pack.<name>.'), line] as const];
  }),
);

function answerTo(path: string): string {
  const line = answers.get(path);
  assert.ok(line, `nobody knows what to write for ${path}`);
  return line;
}

/** Of the figures that ask for something, one for each set of what they ask for. */
function asking(withheld: ReadonlyMap<string, Withheld>): readonly Withheld[] {
  const bySet = new Map([...withheld.values()].map((one) => [one.needs.join(' '), one]));
  bySet.delete('');
  return [...bySet.values()];
}

const groups = [
  'craft',
  'motor',
  'esc',
  'prop',
  'pack',
  'power',
  'gyro',
  'derivative',
  'control',
  'receiver',
];

/** The whole craft without some of its lines, and without some groups. */
const partialCraft = fc
  .record({
    without: fc.subarray(groups, { maxLength: 4 }),
    kept: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: wholeCraft.length,
      maxLength: wholeCraft.length,
    }),
  })
  .map(({ without, kept }) =>
    wholeCraft.filter(
      (line, index) =>
        line.startsWith('craft.name') ||
        ((kept[index] ?? 1) > 0.2 && !without.some((group) => line.startsWith(`${group}.`))),
    ),
  );

describe('a figure that is withheld', () => {
  it('appears once what it asks for is written, or asks for something further', () => {
    fc.assert(
      fc.property(partialCraft, (lines) => {
        for (const { id, needs, because } of asking(withheldOf(lines))) {
          const written = [...lines, ...needs.map(answerTo)];
          const after = withheldOf(written).get(id);
          if (after === undefined || after.because !== null || because !== null) continue;
          assert.ok(after.needs.length > 0, `${id} says no more why it is withheld`);
          for (const path of after.needs) assert.ok(!needs.includes(path), `${id} asks for ${path} again`);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('asks for nothing that it can do without', () => {
    fc.assert(
      fc.property(partialCraft, fc.nat(), (lines, seed) => {
        for (const { id, needs } of asking(withheldOf(lines))) {
          const left = needs[seed % needs.length];
          const others = needs.filter((path) => path !== left);
          const written = [...lines, ...others.map(answerTo)];
          // A sum of parts of which some are known is no less than these: what it asks for is its other end.
          if (others.length > 0 && hasOpenEnd(written, id)) continue;
          const after = withheldOf(written).get(id);
          // What is written of a pack gives it a name.
          const still = after?.needs.some((path) => answerTo(path) === answerTo(left ?? ''));
          assert.ok(still, `${id} can do without ${left}`);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('appears as well once what may stand in place of it is written', () => {
    const lines = wholeCraft.filter((line) => !/^motor\.(resistance|idle-current)/.test(line));
    const hover = withheldOf(lines).get('hover-throttle');
    assert.deepEqual(hover?.needs, ['motor.stator-diameter', 'motor.stator-height']);
    assert.equal(hover.instead.length, 3);
    for (const { of, write } of hover.instead) {
      assert.deepEqual(of, hover.needs);
      assert.equal(withheldOf([...lines, ...write.map(answerTo)]).get('hover-throttle'), undefined);
    }
  });

  it('leads to all of them, asked again and again', () => {
    let lines = wholeCraft.filter((line) => /^(craft|video|record)\.|^pack\.one\.cells/.test(line));
    for (let round = 0; round < 8; round += 1) {
      const needs = new Set([...withheldOf(lines).values()].flatMap((one) => one.needs));
      if (needs.size === 0) break;
      lines = [...lines, ...[...needs].map(answerTo)];
    }
    assert.deepEqual([...withheldOf(lines).values()], []);
  });
});
