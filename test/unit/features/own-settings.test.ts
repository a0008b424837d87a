import { strict as assert } from 'node:assert';
import { hover } from '../../../server/src/features/hover/hover';
import { inlayHints } from '../../../server/src/features/inlay-hints';
import { plainText } from '../../../server/src/features/markdown';
import { definition } from '../../../server/src/features/navigation/definition';
import { documentSymbols } from '../../../server/src/features/navigation/document-symbols';
import { foldingRanges } from '../../../server/src/features/navigation/folding';
import { references } from '../../../server/src/features/navigation/references';
import { prepareRename, rename } from '../../../server/src/features/navigation/rename';
import { selectionRanges } from '../../../server/src/features/navigation/selection-range';
import { workspaceSymbols } from '../../../server/src/features/navigation/workspace-symbols';
import type { Range } from '../../../server/src/features/range';
import { semanticTokens } from '../../../server/src/features/semantic-tokens';
import { testCatalog } from '../../support/catalog';
import { snapshotOf } from '../../support/snapshot';

const files = { 'board.craft': '[own."PID α"]\nroll = 0x1F\n"D min" = 5,5\n' };
const packs = '[pack.sprint]\ncells = 6\n[pack.cruise]\ncells = 4\n';

function placesOf(list: readonly { readonly uri: string; readonly range: Range }[]): readonly string[] {
  return list.map(({ uri, range: { start, end } }) => {
    const file = uri.slice('test:///work/'.length);
    return `${file}:${start.line + 1} ${start.character}-${end.character}`;
  });
}

/** The hover at the `|` as plain text. */
function told(marked: string): string | null {
  const { snapshot, position } = snapshotOf(marked, files);
  const found = hover(snapshot, position);
  return found === null ? null : plainText(found.markdown);
}

const kept =
  "Kept as the board's own; nobody has said what it means. It is compared, handed over and proved as it is written, and nothing is computed from it.";

describe('hovering over a setting of the board’s own', () => {
  it('tells its value and that nobody has said what it means, and no more', () => {
    const whole = `A setting of the board's own · own."gyro rate"\n\nHere: 1,5\n\n${kept}`;
    assert.equal(told('[own]\n"gyro| rate" = 1,5 # why\n'), whole);
    assert.equal(told('[own]\n"gyro rate" = 1|,5 # why\n'), whole);
    assert.equal(told('own."gyro| rate" = 1,5\n'), whole);
  });

  it('tells where its value comes from and what it overrides, for each pack', () => {
    const text = `include "board.craft"\n${packs}[own."PID α"]\nro|ll = 47\n[own."PID α" @ cruise]\nroll = 49\n`;
    assert.match(
      told(text) ?? '',
      /With sprint: 47, in place of 0x1F in board\.craft, line 2\n- With cruise: 49, in place of 47 in line 7 and 0x1F in board\.craft, line 2\n/,
    );
  });

  it('tells what the board’s profile states of it', () => {
    const text = told('[board]\nprofile = wren\n[own.self]\nset|tle = 300\n') ?? '';
    assert.match(
      text,
      /Here: 300\n\nThe board’s own listing says:\n- 0 to 2000\n- its default is 150\n- in ms\n- “How long a Wren waits/,
    );
    assert.ok(text.endsWith(kept));
    const words = told('[board]\nprofile = wren\n[own.self]\n"free-|pad" = torch\n') ?? '';
    assert.match(words, /says:\n- one of bare, tally, torch\n/);
  });

  it('tells that a setting stands for something that is known', () => {
    const { settings } = testCatalog.board('wren') ?? assert.fail('no wren');
    const known = settings.find(({ means, name }) => means === 'gyro.rate' && !name.includes('{'));
    assert.ok(typeof known?.group === 'string');
    const text = told(`[board]\nprofile = wren\n[own]\n"${known.group}"."${known.name}"| = 5\n`) ?? '';
    assert.match(text, /On Wren this is gyro\.rate; under own it is kept as it is written\.$/);
  });

  it('tells what stands in a section', () => {
    assert.equal(
      told('include "board.craft"\n[own."PI|D α"]\nyaw = 5\n'),
      `Settings of the board's own · own."PID α"\n\n${testCatalog.groups.get('own')?.summary}\n\n3 settings stand here.`,
    );
  });
});

describe('finding one’s way among settings of the board’s own', () => {
  const text = 'include "board.craft"\n[own."PID α"]\nroll = 47\n"D| min" = 6\n';
  const here = () => snapshotOf(text, files);

  it('leads from one that overrides to the one that is overridden, and lists both', () => {
    const { snapshot, position } = here();
    const found = definition(snapshot, position);
    const targets = (found?.targets ?? []).map(({ uri, selection }) => ({ uri, range: selection }));
    assert.deepEqual(placesOf(targets), ['main.craft:4 0-7', 'board.craft:3 0-7']);
    assert.deepEqual(placesOf(references(snapshot, position, { withDefinitions: true })), [
      'main.craft:4 0-7',
      'board.craft:3 0-7',
    ]);
  });

  it('finds the same setting under a header and by its whole path', () => {
    const { snapshot, position } = snapshotOf('own."PID α".r|oll = 5\ninclude "board.craft"\n', files);
    const found = definition(snapshot, position)?.targets ?? [];
    assert.deepEqual(placesOf(found.map(({ uri, selection }) => ({ uri, range: selection }))), [
      'board.craft:2 0-4',
      'main.craft:1 0-16',
    ]);
  });

  it('gives it no other name, but renames the pack of its section', () => {
    const { snapshot, position } = here();
    assert.ok('refused' in prepareRename(snapshot, position));
    const overlay = snapshotOf('[pack.sprint]\ncells = 6\n[own."a @ sprint" @ spr|int]\nx = 1\n');
    const renamed = rename(overlay.snapshot, overlay.position, 'dash');
    assert.ok('files' in renamed);
    assert.deepEqual(
      renamed.files.flatMap(({ edits }) =>
        edits.map(({ range }) => `${range.start.line}:${range.start.character}`),
      ),
      ['0:6', '2:20'],
    );
  });

  it('shows what overrides what', () => {
    const { snapshot } = here();
    const all = { start: { line: 0, character: 0 }, end: { line: 4, character: 0 } };
    assert.deepEqual(
      inlayHints(snapshot, all).map(({ label }) => label),
      ['in place of 0x1F', 'in place of 5,5'],
    );
  });

  it('is in the outline, folds, and can be looked up by its section', () => {
    const { snapshot } = here();
    assert.deepEqual(
      documentSymbols(snapshot).map(({ name, detail, children }) => [
        name,
        detail,
        children.map((child) => `${child.name}: ${child.detail}`),
      ]),
      [
        ['board.craft', 'include', []],
        ['own."PID α"', "Settings of the board's own", ['roll: 47', '"D min": 6']],
      ],
    );
    assert.deepEqual(foldingRanges(snapshot), [{ first: 1, last: 3, kind: 'section' }]);
    assert.equal(workspaceSymbols([snapshot.script], 'pid')[0]?.name, 'own."PID α"');
  });

  it('is coloured as a name and a text, whatever the value looks like', () => {
    const { snapshot } = snapshotOf('[own."a b"]\n"gyro rate" = 2 * quiet # why\n');
    const parts = semanticTokens(snapshot).map(({ line, start, length, type }) => {
      const covered = snapshot.script.document.lineAt(line)?.text.slice(start, start + length);
      return `${type} ${covered}`;
    });
    assert.deepEqual(parts, [
      'namespace own."a b"',
      'property "gyro rate"',
      'string 2 * quiet',
      'comment # why',
    ]);
  });

  it('is selected step by step: the value, the statement, the line', () => {
    const { snapshot, position } = snapshotOf('[own]\nsaid = "a| b" # why\n');
    const texts = selectionRanges(snapshot, position).map(({ start, end }) =>
      start.line === end.line
        ? snapshot.script.document.lineAt(start.line)?.text.slice(start.character, end.character)
        : 'more',
    );
    assert.deepEqual(texts.slice(0, 3), ['a b', '"a b"', 'said = "a b"']);
  });
});
