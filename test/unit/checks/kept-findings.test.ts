import { strict as assert } from 'node:assert';
import { Checker } from '../../../server/src/checks/checker';
import { Craft } from '../../../server/src/craft/craft';
import { Script } from '../../../server/src/craft/script';
import { testCatalog } from '../../support/catalog';

const flights = Array.from({ length: 200 }, (_, index) => [
  `[flight.day-${index}]`,
  'pack = triple',
  `minutes = ${index + 1} min`,
  'windd = 3 m/s',
]).flat();
const text = ['[pack.single]', 'cells = 1', ...flights].join('\n');

function scriptOf(written: string): Script {
  return new Script('test:///work/a.craft', written, testCatalog);
}

function opened(script = scriptOf(text)) {
  const craft = new Craft(script, testCatalog, {
    open: () => ({ kind: 'missing' }),
    isIncluded: () => true,
  });
  const checker = new Checker(testCatalog);
  const edit = (line: number, character: number, length: number, put: string) => {
    const end = { line, character: character + length };
    const changed = script.edit([{ start: { line, character }, end, text: put }]);
    craft.changed(changed);
    return changed;
  };
  return { edit, findings: () => checker.findings(craft) };
}

describe('what was found before an edit', () => {
  it('is the same object afterwards where nothing about it changed', () => {
    const { edit, findings } = opened();
    const before = new Set(findings());
    edit(4, 'minutes = '.length, 1, '900');
    const fresh = findings().filter((finding) => !before.has(finding));
    assert.deepEqual(
      fresh.map(({ check, place }) => [check.id, place.line.text]),
      [['line/outside-range', 'minutes = 900 min']],
    );
  });

  it('is made anew for the line itself', () => {
    const { edit, findings } = opened();
    const before = findings().filter(({ place }) => place.line.text.startsWith('windd'));
    edit(5, 0, 0, 'x');
    const after = findings().filter(({ place }) => /^x?windd/.test(place.line.text));
    assert.equal(after.length, before.length);
    assert.equal(after.filter((finding) => !before.includes(finding)).length, 1);
  });

  it('of a rule is the same object too, also when its line has moved', () => {
    const script = scriptOf('\n[motor]\ncells-limit = 4\n[pack.heavy]\nchemistry = lipo\ncells = 6\n');
    const { edit, findings } = opened(script);
    const found = () => findings().find(({ check }) => check.id === 'turn/motor-cells');
    const before = found();
    assert.ok(before);
    edit(1, 0, 0, '\n');
    assert.equal(found(), before);
  });
});
