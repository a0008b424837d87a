import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { narrowings } from '../../../server/src/sheet/narrowing/narrowing';
import { intervalText } from '../../../server/src/sheet/which-pack';
import { craftOf } from '../../support/findings';
import { wholeCraft } from '../../support/whole-craft';

const text = `${wholeCraft.join('\n')}\n`;

function spanOf(script: string, id: string): string | null {
  const figure = figureOf(new CraftView(craftOf(script), 'one'), id);
  return figure === null ? null : intervalText(figure);
}

describe('what narrows a figure most', () => {
  it('is one thing for each, with the span as it is and as it comes out', () => {
    const found = narrowings(craftOf(text), 'one');
    assert.ok(found.some(({ id }) => id === 'hover-throttle'));
    assert.ok(found.some(({ id }) => id === 'roll-phase-margin'));
    for (const { id, title, pack, text: told, how, before, after } of found) {
      assert.equal(pack, 'one');
      assert.equal(before.replace(/ \S+$/, ''), spanOf(text, id), title);
      assert.ok(told.startsWith(`${title}: `), told);
      assert.ok(told.endsWith(` the span falls from ${before} to ${after}.`), told);
      assert.notEqual(how, '');
    }
  });

  it('is what comes of it once the reading is written', () => {
    const all = narrowings(craftOf(text), 'one');
    for (const { id, path, tried, after, title } of all) {
      const pack = path.startsWith('flight.') ? `${path.replace(/[^.]+$/, 'pack')} = one\n` : '';
      assert.equal(spanOf(`${text}${path} = ${tried}\n${pack}`, id), after.replace(/ \S+$/, ''), title);
    }
  });

  it('is nothing that has been measured', () => {
    const [first] = narrowings(craftOf(text), 'one');
    const { path = '', tried = '' } = first ?? {};
    const after = narrowings(craftOf(`${text}${path} = ${tried}\n`), 'one');
    assert.ok(!after.some((one) => one.path === path));
  });

  it('is asked of the craft as it is: nothing of it changes', () => {
    const craft = craftOf(text);
    narrowings(craft, 'one');
    assert.equal(craft.root.document.text(), text);
  });

  it('is nothing for a part, and where no figure is known', () => {
    assert.deepEqual(narrowings(craftOf('[gyro]\nrate = 8 kHz\n'), null), []);
    assert.deepEqual(narrowings(craftOf('[craft]\nname = "Bare"\n'), null), []);
  });

  it('tries it on a craft that ends without a line end', () => {
    const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8').trimEnd();
    const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
    assert.ok(narrowings(craftOf(sandmartin, club), 'sprint').length > 2);
  });
});
