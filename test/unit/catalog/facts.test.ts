import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readBoard } from '../../../server/src/additions/read-board';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { profileOf } from '../../../server/src/board/profile/profile';
import { inBase } from '../../../server/src/catalog/known-parameter';
import { usualHalfWidth } from '../../../server/src/figures/video';
import { chargeAtRest } from '../../../server/src/physics/cells';
import { shippedCatalog, shippedData } from './shipped';

const { bundle } = shippedData();

function parameter(name: string) {
  const found = bundle.parameters.flatMap(({ parameters }) => parameters).find((one) => one.name === name);
  assert.ok(found !== undefined, name);
  return found;
}

/** Volts of the polymer cell of Chen and Rincón-Mora at half charge, so long after 0.85 A (1 C) ended. */
function polymerCell(seconds: number): { readonly rest: number; readonly shown: number } {
  const half = 0.5;
  const rest =
    -1.031 * Math.exp(-35 * half) + 3.685 + 0.2156 * half - 0.1178 * half ** 2 + 0.3201 * half ** 3;
  const branches = [
    [0.3208 * Math.exp(-29.14 * half) + 0.04669, -752.9 * Math.exp(-13.51 * half) + 703.6],
    [6.603 * Math.exp(-155.2 * half) + 0.04984, -6056 * Math.exp(-27.12 * half) + 4475],
  ] as const;
  const left = branches.map(([ohm, farad]) => 0.85 * ohm * Math.exp(-seconds / (ohm * farad)));
  return { rest, shown: rest - left.reduce((sum, one) => sum + one, 0) };
}

describe('what the catalogue says as a fact', () => {
  it('a cell rests five minutes: one is 39 mV too low, five are 11 (Chen and Rincón-Mora, IEEE Trans. Energy Conversion 21(2), 2006)', () => {
    const [one, five] = [60, 300].map(polymerCell);
    assert.equal(((one?.rest ?? 0) - (one?.shown ?? 0)).toFixed(3), '0.039');
    assert.equal(((five?.rest ?? 0) - (five?.shown ?? 0)).toFixed(3), '0.011');
    const rest = parameter('flight.<name>.rest-cell');
    const card = bundle.steps.find(({ id }) => id === 'first-flight');
    const reading = card?.readings?.find(({ setting }) => setting === 'rest-cell');
    for (const text of [rest.summary, rest.prove, card?.see, reading?.words])
      assert.match(text ?? '', /five minutes/i);
  });

  it('a cell at its storage voltage is about half full, by its rest voltages', () => {
    for (const { name, storage, atRest = [] } of bundle.chemistries) {
      const points = atRest.map(({ charge, voltage }) => ({
        charge: inBase(charge),
        voltage: inBase(voltage),
      }));
      const charge = chargeAtRest(points, inBase(storage));
      assert.ok(charge > 0.4 && charge < 0.65, `${name}: ${charge}`);
    }
    assert.match(parameter('pack.<name>.storage-cell').summary, /[Aa]bout half full/);
  });

  it('three blades take 31 and 42 % more power than two of the same shape (University of Illinois Propeller Data Site, volume 2)', () => {
    const more = bundle.propellers.flatMap((three, index, all) => {
      const two = all[index - 1];
      const isPair = three.blades === 3 && two?.blades === 2 && two.pitch === three.pitch;
      return isPair ? [Math.round(100 * (three.powerCoefficient / two.powerCoefficient - 1))] : [];
    });
    assert.deepEqual(more, [42, 31]);
    const { risk } = parameter('prop.blades');
    for (const share of more) assert.match(risk ?? '', new RegExp(`\\b${share}\\b`));
  });

  it('no source says by how much spikes exceed the pack: none is claimed', () => {
    const { risk } = parameter('wire.<device>.smoothing');
    assert.doesNotMatch(risk ?? '', /several|times|double|twice|\d/);
  });

  it("neighbours of a video band overlap only where the checks' own widths say so", () => {
    for (const { name, summary, channels } of bundle.bands) {
      const sorted = channels.map(inBase).sort((one, other) => one - other);
      const gaps = sorted.slice(1).map((one, index) => one - (sorted[index] ?? 0));
      const isApart = Math.min(...gaps) >= 2 * usualHalfWidth;
      assert.ok(isApart && !/overlap/.test(summary), `${name}: ${summary}`);
    }
    const [first = '', second = ''] = shippedCatalog().videoBand('b')?.channels ?? [];
    const left = inBase(second) - inBase(first) - 2 * usualHalfWidth;
    assert.equal(left, 1e6); // and sound takes 1.5 MHz more on either side
  });

  it('the line that the example board explains is one that its profile reads', () => {
    const text = readFileSync('test/demo/boards/finch.jsonc', 'utf8');
    const read = readBoard(text, 'finch');
    const profile = read.kind === 'read' ? profileOf(read.board) : null;
    const explained = /A line of this one reads: "([^"]+)"/.exec(text)?.[1] ?? '';
    assert.ok(profile);
    const { settings, left } = readListing(explained, profile.text.forms);
    assert.deepEqual([settings.length, left], [1, []]);
  });

  it('what is not known of a region is marked as unsure, and a rule is not named for what it does not say', () => {
    const rows = (region: string) => shippedCatalog().region(region)?.permits ?? [];
    const unsure = (region: string) =>
      rows(region).flatMap(({ from, unsure: why }) => (why === undefined ? [] : [from]));
    assert.deepEqual(unsure('canada'), ['902 MHz']);
    assert.deepEqual(unsure('australia'), ['5795 MHz']);
    const amateur = rows('united-states').filter(({ licence }) => licence === 'amateur');
    for (const { text, source } of amateur) {
      assert.match(text, /choice of ours/);
      assert.match(source.text, /97\.215 is transmitter power for steering/);
    }
  });
});
