import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';
import { plainHoverMinutes, plainState } from '../../support/plain-drive';
import { plain, plausibleCraft, scriptOf } from '../../support/plausible-craft';

/** At rest by tenths of the charge: W. Ai et al., Journal of The Electrochemical Society 167 (2020). */
const pouch = [3, 3.639, 3.695, 3.733, 3.762, 3.793, 3.837, 3.909, 3.994, 4.088, 4.2];

const perMinute = (2 * Math.PI) / 60;

describe('a second, plain and slow reckoning of motors, propellers and pack', () => {
  it('finds the same hover and the same full throttle, or that it can not hover', () => {
    let hovered = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const view = new CraftView(craftOf(scriptOf(craft)), 'one');
        const holds = (id: string, plainly: number) => {
          const figure = figureOf(view, id)?.likely ?? Number.NaN;
          assert.ok(Math.abs(figure / plainly - 1) < 1e-3, `${id}: ${figure} and ${plainly}`);
        };
        const hover = plainState(craft, craft.cells * 3.7, 'hover');
        if (hover === null) assert.equal(figureOf(view, 'hover-throttle'), null);
        else {
          hovered += 1;
          holds('hover-throttle', 100 * hover.throttle);
          holds('hover-current', hover.drawn);
          holds('hover-power', hover.drawn * hover.volts);
          holds('hover-speed', hover.speed / perMinute);
          holds('hover-motor-efficiency', 100 * hover.efficiency);
          const minutes = plainHoverMinutes(craft, pouch, 0.2);
          // Steps of a fifth of a second.
          if (minutes > 1) holds('minutes-to-landing', minutes);
          else assert.ok((figureOf(view, 'minutes-to-landing')?.likely ?? 0) < 1.01);
        }
        const full = plainState(craft, craft.cells * plain.full, 1);
        assert.ok(full !== null);
        holds('full-current', full.drawn);
        holds('full-motor-current', full.current);
        holds('full-speed', full.speed / perMinute);
        holds('full-thrust', full.thrust);
        holds('full-sag', craft.cells * plain.full - full.volts);
      }),
      { numRuns: 60, endOnFailure: true },
    );
    assert.ok(hovered > 30, `${hovered} hovered`);
  }).timeout(60_000);
});
