import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import { tryable, tryValue } from '../../../server/src/sheet/try-value';
import { figureText } from '../../../server/src/sheet/which-pack';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const craft = craftOf(racer, club);
const findings = findingsOf(craft);

function tried(path: string, to: string) {
  return tryValue(craft, 'sprint', path, to, findings, findingsOf) ?? assert.fail(`${path} can’t be tried`);
}

/** The script with the edits made. */
function written(edits: ReturnType<typeof tried>['edits']): string {
  const copy = craft.copied();
  copy.root.edit(edits);
  return copy.root.document.text();
}

describe('a value on trial', () => {
  it('moves just what the script with that value written in moves', () => {
    const numbers = [
      'gyro.filter.1.cutoff',
      'motor.kv',
      'motor.idle',
      'prop.diameter',
      'craft.mass',
      'pack.sprint.capacity',
      'control.roll.proportional',
      'video.power',
      'gyro.filter.2.width',
      'motor.resistance',
      'prop.inertia',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...numbers), fc.double({ min: 0, max: 1, noNaN: true }), (path, share) => {
        const by = tryable(craft, 'sprint', path)?.by;
        assert.ok(by?.kind === 'slider', path);
        const [low, high] = by.usual;
        const value = `${Number((low + share * (high - low)).toPrecision(4))} ${by.unit}`;
        const answer = tried(path, value);
        const fresh = craftOf(written(answer.edits), club);
        const moved = new Map(answer.moved.map((one) => [one.id, one]));
        for (const { id } of figureSources) {
          for (const [index, pack] of craft.packs().entries()) {
            const figure = figureOf(new CraftView(fresh, pack), id);
            const before = figureOf(new CraftView(craft, pack), id);
            const told = moved.get(id)?.packs[index];
            const wanted = figure === null ? undefined : figureText(figure);
            if (told === undefined)
              assert.equal(wanted, before === null ? undefined : figureText(before), id);
            else assert.equal(told.after?.text, wanted, id);
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});
