import assert from 'node:assert/strict';
import { CraftView } from '../../../../server/src/craft/view';
import { motorPlaces } from '../../../../server/src/figures/layouts';
import { mixOf } from '../../../../server/src/recording/estimate/mix';
import { craftOf } from '../../../support/findings';

function sharesOf(layout: string, ...lines: readonly string[]) {
  const places = motorPlaces(layout) ?? [];
  const script = [`craft.layout = ${layout}`, `motor.order = [${places.join(', ')}]`, ...lines].join('\n');
  const mix = mixOf(new CraftView(craftOf(script), null));
  assert.ok(mix.told !== null, JSON.stringify(mix));
  const { roll, pitch, yaw } = mix.told.shares;
  assert.ok(roll !== null && pitch !== null);
  return { roll, pitch, yaw, of: (axis: readonly number[], place: string) => axis[places.indexOf(place)] };
}

const near = (one: number | undefined, other: number) => Math.abs((one ?? Number.NaN) - other) < 1e-9;

describe('which way each motor turns the craft', () => {
  it('is by where it sits, beside the one that sits the farthest', () => {
    const { roll, pitch, of } = sharesOf('hex-x');
    assert.ok(near(of(roll, 'left'), 1) && near(of(roll, 'right'), -1));
    assert.ok(near(of(roll, 'front-left'), 0.5) && near(of(pitch, 'left'), 0));
    assert.ok(near(of(pitch, 'front-right'), 1) && near(of(pitch, 'rear-right'), -1));
    const octo = sharesOf('octo-x');
    const tan = Math.tan(Math.PI / 8);
    assert.ok(near(octo.of(octo.roll, 'left-front'), 1) && near(octo.of(octo.roll, 'front-left'), tan));
    assert.ok(near(octo.of(octo.pitch, 'right-rear'), -tan) && near(octo.of(octo.pitch, 'rear-right'), -1));
    const plus = sharesOf('quad-plus', 'motor.spin = inward');
    assert.deepEqual(
      [...plus.roll, ...plus.pitch].map((one) => one + 0),
      [0, 1, -1, 0, 1, 0, 0, -1],
    );
    const stacked = sharesOf('y6');
    assert.ok(near(stacked.of(stacked.roll, 'rear-upper'), 0));
    assert.equal(stacked.of(stacked.roll, 'front-left-upper'), stacked.of(stacked.roll, 'front-left-lower'));
  });

  it('about yaw is by the spin, against each neighbour; unknown where the layout alone does not tell', () => {
    for (const layout of ['quad-x', 'quad-wide', 'hex-x', 'octo-x']) {
      const { yaw, of } = sharesOf(layout, 'motor.spin = inward');
      assert.ok(yaw !== null);
      // A front-left motor that sweeps inwards turns clockwise, and the craft to the left.
      assert.ok(near(of(yaw, 'front-left'), -1) && near(of(yaw, 'front-right'), 1), layout);
      assert.ok(
        near(
          yaw.reduce((sum, one) => sum + one, 0),
          0,
        ),
        layout,
      );
    }
    assert.equal(sharesOf('quad-x').yaw, null);
    assert.equal(sharesOf('y6', 'motor.spin = inward').yaw, null);
  });

  it('is withheld where the script leaves it open, with what to write', () => {
    const of = (...lines: readonly string[]) => {
      const mix = mixOf(new CraftView(craftOf(lines.join('\n')), null));
      return mix.told === null ? mix.advice : '';
    };
    assert.equal(of('motor.spin = inward'), 'Write craft.layout.');
    assert.match(of('craft.layout = quad-x'), /^Write motor\.order/);
    assert.match(of('craft.layout = hex-x', 'motor.order = [front-left, front-right]'), /^Mend motor\.order/);
  });
});
