import assert from 'node:assert/strict';
import fc from 'fast-check';
import { completion } from '../../../../server/src/features/completion/completion';
import { completionDetails } from '../../../../server/src/features/completion/details';
import {
  type CompletionItem,
  snippetText,
  sortKeys,
  tabChoice,
  tabStop,
} from '../../../../server/src/features/completion/item';
import type { Position } from '../../../../server/src/features/range';
import type { Snapshot } from '../../../../server/src/features/snapshot';
import { Workspace } from '../../../../server/src/workspace/workspace';
import { testCatalog } from '../../../support/catalog';
import { edited, lineEdits } from '../../../support/line-edits';
import { MemoryFiles } from '../../../support/memory-files';
import { snapshotOf } from '../../../support/snapshot';

/** What is offered at the `|` in a text, best first. */
function offered(marked: string, snippets = false, trigger: string | null = null): readonly CompletionItem[] {
  const { snapshot, position } = snapshotOf(marked);
  return completion(snapshot, position, { snippets, trigger }).items;
}

const labels = (marked: string) => offered(marked).map(({ label }) => label);

/** The line at the `|` after an item has been accepted. */
function accepted(marked: string, label: string): string {
  const { snapshot, position } = snapshotOf(marked);
  const item = offered(marked).find((one) => one.label === label);
  assert.ok(item, `${label} is not among ${labels(marked).slice(0, 20).join(', ')}`);
  assert.equal(item.range.start.line, position.line);
  const line = snapshot.script.document.lineAt(position.line)?.text ?? '';
  return line.slice(0, item.range.start.character) + item.insertText + line.slice(item.range.end.character);
}

describe('completion of names', () => {
  it('offers the settings of the section first, those that are set already not at all', () => {
    const found = labels('[arming]\ntilt-limit = 40 deg\n|\n');
    assert.ok(found.indexOf('needs') < 6, found.slice(0, 6).join(', '));
    assert.ok(!found.includes('tilt-limit'));
  });

  it('offers the next number of a collection whose members are settings themselves', () => {
    assert.equal(accepted('[video]\npower-steps.1 = 20 mW\npower-st|', 'power-steps.2'), 'power-steps.2 = ');
    assert.equal(accepted('[video.power-steps]\n1 = 20 mW\n|', '2'), '2 = ');
    const sections = labels('[video.|');
    assert.ok(sections.includes('video.power-steps'));
    assert.ok(!sections.some((label) => /^\[?video\.power-steps\.\d/.test(label)));
  });

  it('offers headers of sections first where none is open', () => {
    const [first, ...more] = offered('|').map(({ kind }) => kind);
    assert.deepEqual([first, more[0]], ['part', 'section']);
  });

  it('replaces the whole name, hyphens and dots included, and leaves the value (G01, G02)', () => {
    assert.equal(accepted('[arming]\ntilt-l|', 'tilt-limit'), 'tilt-limit = ');
    assert.equal(accepted('[arming]\nti|lt-li = 3 deg', 'tilt-limit'), 'tilt-limit = 3 deg');
    assert.equal(
      accepted('gyro.filter.1.cut| = 120 Hz', 'gyro.filter.1.cutoff'),
      'gyro.filter.1.cutoff = 120 Hz',
    );
    assert.equal(
      accepted('gyro.filter.1|.cutoff = 120 Hz', 'gyro.filter.1.cutoff'),
      'gyro.filter.1.cutoff = 120 Hz',
    );
  });

  it('filters by the whole name, so that the list does not vanish after the dot (G02)', () => {
    const item = offered('gyro.|').find(({ label }) => label === 'gyro.rate');
    assert.equal(item?.filterText, 'gyro.rate');
  });

  it('offers members of a collection by their number, 2 before 10 (G05)', () => {
    const numbers = labels('[gyro.filter.1]\n[gyro.filter.2 @ sprint]\n[gyro.filter.9]\n|').flatMap(
      (label) => /^\[gyro\.filter\.(\d+)\]$/.exec(label)?.[1] ?? [],
    );
    assert.deepEqual(
      numbers,
      [...numbers].sort((one, other) => Number(one) - Number(other)),
    );
    assert.deepEqual(numbers, ['2', '3', '10']);
  });

  it('offers each member what all have and what only it has, and nothing that means nothing there', () => {
    const paths = labels('control.when.|').filter((label) => label.startsWith('control.when.'));
    assert.equal(new Set(paths).size, paths.length);
    for (const path of [
      'fast-turn.integral',
      'fast-turn.from',
      'motors-short.gives-way',
      'motors-short.integral',
    ])
      assert.ok(paths.includes(`control.when.${path}`), path);
    for (const path of ['motors-short.proportional', 'motors-short.from', 'fast-turn.gives-way'])
      assert.ok(!paths.includes(`control.when.${path}`), path);
    const own = labels('[control.when.motors-short]\n|').filter((label) => !label.startsWith('['));
    assert.deepEqual(own.slice(0, 2).toSorted(), ['gives-way', 'integral']);
    assert.equal(labels('|').filter((label) => label === '[control.when.fast-turn]').length, 1);
  });

  it('finds a setting by what the trade calls it', () => {
    const found = offered('[find]\nbeep|').map(({ label, insertText }) => `${label} ${insertText}`);
    assert.ok(
      found.some((text) => text.includes('device')),
      found.slice(0, 10).join(', '),
    );
  });

  it('finds settings and sections by everyday words of German and French', () => {
    const found = (marked: string) =>
      offered(marked).flatMap(({ label, detail = '' }) => (/also called/.test(detail) ? [label] : []));
    assert.ok(found('[gyro.filter.1]\ngrenzfr|').includes('cutoff'));
    assert.ok(found('[gyro.filter.1]\ncoup|').includes('cutoff'));
    assert.ok(found('[motor]\nleerl|').includes('idle'));
    assert.ok(found('querr|').includes('[control.roll]'), found('querr|').join());
    // Two letters are no word of another language, and an English one is offered once.
    assert.deepEqual(
      found('[motor]\nle|').filter((label) => label === 'idle'),
      [],
    );
  });
});

describe('completion after edits', () => {
  const line = fc.constantFrom(
    '[gyro]',
    '[gyro.filter.1]',
    '[gyro.filter.1 @ sprint]',
    '[pack.sprint]',
    '[flight.one]',
    'cutoff = 90 Hz',
    'craft.name = "Wren"',
    'board.profile = heron',
    'video.system = analog',
    'telemetry.port = uart3',
    '',
  );
  const edit = lineEdits(line, { at: 12, over: 2, lines: 3 });

  it('is that of a script that was opened just now', () => {
    const uri = 'test:///work/main.craft';
    fc.assert(
      fc.property(fc.array(line, { maxLength: 10 }), fc.array(edit, { maxLength: 6 }), (lines, edits) => {
        const workspace = opened(uri, lines.join('\n'));
        for (const { at } of edited(workspace, uri, edits)) {
          const now = workspace.get(uri)?.script.document.text() ?? '';
          const asked = { line: at, character: 0 };
          assert.deepEqual(offeredAt(workspace, uri, asked), offeredAt(opened(uri, now), uri, asked));
        }
      }),
      { numRuns: 60 },
    );
  });
});

function opened(uri: string, text: string): Workspace {
  const workspace = new Workspace({ catalog: testCatalog, fileSystem: new MemoryFiles() });
  workspace.openScript(uri, text, 1);
  return workspace;
}

function offeredAt(workspace: Workspace, uri: string, position: Position): readonly CompletionItem[] {
  const open = workspace.get(uri);
  assert.ok(open);
  const { script, craft } = open;
  const snapshot: Snapshot = {
    uri,
    script,
    craft,
    catalog: testCatalog,
    pack: null,
    findings: () => [],
    others: () => [],
    layer: () => undefined,
  };
  return completion(snapshot, position, { snippets: true, trigger: null }).items;
}

describe('completion of values', () => {
  it('offers just the words that the setting takes', () => {
    assert.deepEqual([...labels('signal-loss.action = |')].sort(), [
      'descend',
      'hover',
      'motors-off',
      'return',
    ]);
  });

  it('offers the ports of the board, the free ones first', () => {
    const found = labels('board.profile = heron\ntelemetry.port = uart3\nreceiver.port = |');
    assert.ok(found.length > 3 && found.every((label) => label.startsWith('uart')));
    assert.ok(found.indexOf('uart3') > found.indexOf('uart2'));
  });

  it('offers the packs of the script and its constants', () => {
    assert.ok(labels('[pack.sprint]\ncells = 4\n[flight.one]\npack = |').includes('sprint'));
    assert.ok(labels('let quiet = 90 Hz\n[gyro.filter.1]\ncutoff = |').includes('quiet'));
  });

  it('offers the order of the motors that the board’s drawing shows, where the craft has such motors', () => {
    const drawn = '[rear-left, front-left, front-right, rear-right]';
    const order = (layout: string) =>
      labels(`board.profile = heron\ncraft.layout = ${layout}\nmotor.order = |`);
    assert.equal(order('quad-x')[0], drawn);
    assert.ok(!order('quad-plus').includes(drawn));
    assert.ok(!labels('craft.layout = quad-x\nmotor.order = |').includes(drawn));
  });

  it('offers the words of a list that are not in it yet', () => {
    const found = labels('arming.needs = [gyro-still, |]');
    assert.ok(found.includes('receiver-alive') && !found.includes('gyro-still'));
  });

  it('offers the units of the dimension, the usual one first', () => {
    const found = labels('gyro.filter.1.cutoff = 120 |');
    assert.equal(found[0], 'Hz');
    assert.ok(!found.includes('ms'));
  });

  it('offers nothing in a comment, in a text and where a name makes no sense', () => {
    for (const marked of ['# abo|', 'craft.name = "San|"', 'gyro.rate = 8 kHz # a|'])
      assert.deepEqual(labels(marked), []);
  });

  it('does not take a blank that was typed for a question', () => {
    assert.deepEqual(offered('[gyro]\n |', false, ' '), []);
  });
});

describe('completion of acceptances', () => {
  it('offers what was found on the line', () => {
    const marked = 'arming.tilt-limit = 180 deg # accept |';
    assert.ok(labels(marked).includes('safe/arms-at-any-tilt'), labels(marked).join(', '));
  });
});

describe('snippets (G04)', () => {
  const dollar = '$';

  it('are only sent to a client that takes them', () => {
    for (const item of offered('[gyro]\n|')) assert.equal(item.isSnippet, false, item.label);
    assert.ok(offered('[gyro]\n|', true).some(({ isSnippet }) => isSnippet));
  });

  it('insert text character for character', () => {
    assert.equal(snippetText('$HOME/a}b\\c'), '\\$HOME/a\\}b\\\\c');
    assert.equal(tabStop(1, `${dollar}{x}`), `${dollar}{1:\\${dollar}{x\\}}`);
    assert.equal(tabChoice(2, ['50|60,70', '$a}']), `${dollar}{2|50\\|60\\,70,\\$a\\}|}`);
    assert.equal(tabChoice(3, []), '$3');
  });
});

describe('the order of a list (G05)', () => {
  it('is kept by keys of one width, whatever its length', () => {
    for (const count of [1, 9, 10, 1000]) {
      const key = sortKeys(count);
      const keys = Array.from({ length: count }, (_, index) => key(index));
      assert.deepEqual([...keys].sort(), keys);
    }
  });
});

describe('the details of an item', () => {
  it('tell what a setting is and what a word does, from the item alone', () => {
    const details = (subject: CompletionItem['subject']) => completionDetails(testCatalog, subject) ?? '';
    assert.match(details({ kind: 'parameter', name: 'gyro.rate' }), /turning rates/);
    assert.match(
      details({ kind: 'choice', parameter: 'signal-loss.action', choice: 'motors-off' }),
      /motors/i,
    );
    assert.match(details({ kind: 'check', id: 'safe/arms-at-any-tilt' }), /tilt/i);
    assert.equal(details({ kind: 'none' }), '');
  });
});
