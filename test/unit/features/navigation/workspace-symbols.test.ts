import { strict as assert } from 'node:assert';
import { fuzzyScore } from '../../../../server/src/features/navigation/fuzzy';
import { workspaceSymbols } from '../../../../server/src/features/navigation/workspace-symbols';
import { snapshotOf } from '../../../support/snapshot';

const text =
  'let quiet = 90 Hz\n[pack.sprint]\ncells = 6\n[gyro.filter.1]\n[gyro.filter.1 @ sprint]\n[derivative.filter.1]\n';

function names(typed: string): readonly string[] {
  const { script } = snapshotOf(text).snapshot;
  return workspaceSymbols([script, script], typed).map(({ name, kind }) => `${kind} ${name}`);
}

describe('workspace symbols', () => {
  it('are the packs, constants and sections, each once', () => {
    assert.deepEqual([...names('')].sort(), [
      'constant quiet',
      'pack sprint',
      'section derivative.filter.1',
      'section gyro.filter.1',
      'section gyro.filter.1 @ sprint',
    ]);
  });

  it('come with the nearest first', () => {
    assert.deepEqual(names('sprint'), [
      'pack sprint',
      'section gyro.filter.1 @ sprint',
      'setting pack.sprint.cells',
    ]);
    assert.deepEqual(names('filter').slice(0, 2), ['section gyro.filter.1', 'section derivative.filter.1']);
    assert.deepEqual(names('QT'), ['constant quiet']);
    assert.deepEqual(names('zz'), []);
  });

  it('tell script and place', () => {
    const { script } = snapshotOf(text).snapshot;
    const [pack] = workspaceSymbols([script], 'sprint');
    assert.equal(pack?.container, 'main.craft');
    assert.deepEqual(pack?.location.range, {
      start: { line: 1, character: 6 },
      end: { line: 1, character: 12 },
    });
  });

  it('are settings where they are meant, by their whole path, with the pack that they are for', () => {
    const settings = '[gyro @ sprint]\nrate = 2 kHz\n[power]\nwarn-cell = 3.4 V\n[own.a]\nrate = 3\n';
    const { script } = snapshotOf(settings).snapshot;
    const found = (typed: string) =>
      workspaceSymbols([script], typed).map(({ name, kind }) => `${kind} ${name}`);
    assert.deepEqual(found('warn'), ['setting power.warn-cell']);
    assert.deepEqual(found('rate'), ['setting gyro.rate @ sprint']);
    assert.deepEqual(found('gcell'), []);
  });

  it('are crafts by the names that they bear', () => {
    const { script } = snapshotOf('[craft]\nname = "Sand Martin"\n').snapshot;
    const [craft] = workspaceSymbols([script], 'martin');
    assert.deepEqual([craft?.kind, craft?.name], ['craft', 'Sand Martin']);
    assert.deepEqual(craft?.location.range, {
      start: { line: 1, character: 8 },
      end: { line: 1, character: 19 },
    });
  });

  it('are limited in number, the best kept', () => {
    const many = `${Array.from({ length: 1000 }, (_, at) => `let a-x${at} = 1`).join('\n')}\nlet x = 1`;
    const found = workspaceSymbols([snapshotOf(many).snapshot.script], 'x');
    assert.equal(found.length, 200);
    assert.equal(found[0]?.name, 'x');
  });
});

describe('fuzzy score', () => {
  it('puts the whole before the start, a word, a part and scattered letters', () => {
    const texts = ['low', 'lowpass', 'gyro.low', 'allow', 'l-o-w'];
    const scores = texts.map((one) => fuzzyScore('low', one) ?? Number.NaN);
    assert.deepEqual(
      scores,
      [...scores].sort((one, other) => other - one),
    );
    assert.equal(new Set(scores).size, texts.length);
  });

  it('is none where a letter is missing or out of order', () => {
    assert.equal(fuzzyScore('wol', 'low'), null);
    assert.equal(fuzzyScore('loww', 'low'), null);
  });

  it('does not mind capitals and blanks', () => {
    assert.equal(fuzzyScore('Lo W', 'low'), fuzzyScore('low', 'low'));
  });
});
