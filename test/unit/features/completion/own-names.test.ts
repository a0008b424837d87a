import assert from 'node:assert/strict';
import { completion } from '../../../../server/src/features/completion/completion';
import type { CompletionItem } from '../../../../server/src/features/completion/item';
import { mostNames } from '../../../../server/src/features/completion/own';
import { snapshotOf } from '../../../support/snapshot';

const files = {
  'board.craft': '[own]\n"gyro rate" = 8000\nstep = 1,5\n[own."PID α".roll]\np = 47\n"p"."#2" = 48\n',
};

function offered(marked: string, snippets = false): readonly CompletionItem[] {
  const { snapshot, position } = snapshotOf(marked, files);
  return completion(snapshot, position, { snippets, trigger: null }).items;
}

const labels = (marked: string) => offered(marked).map(({ label }) => label);

/** The line at the `|` after an item has been accepted. */
function accepted(marked: string, label: string, snippets = false): string {
  const { snapshot, position } = snapshotOf(marked, files);
  const item = offered(marked, snippets).find((one) => one.label === label);
  assert.ok(item, `${label} is not among ${labels(marked).slice(0, 20).join(', ')}`);
  const line = snapshot.script.document.lineAt(position.line)?.text ?? '';
  return line.slice(0, item.range.start.character) + item.insertText + line.slice(item.range.end.character);
}

const start = 'include "board.craft"\n';

describe('completion of settings of the board’s own', () => {
  it('offers the names that stand elsewhere, with their values to type over', () => {
    assert.deepEqual(labels(`${start}[own]\n|\n`).slice(0, 4), [
      '"gyro rate"',
      'step',
      '"PID α".roll.p',
      '"PID α".roll.p."#2"',
    ]);
    assert.equal(accepted(`${start}[own]\n|`, '"gyro rate"'), '"gyro rate" = 8000');
    assert.equal(accepted(`${start}[own]\n|`, 'step', true), `step = \${1:1,5}`);
    assert.equal(offered(`${start}[own]\n|`)[0]?.detail, '8000 in board.craft');
  });

  it('offers those of the section, by whole paths before any, and none that is set already', () => {
    const names = offered(`${start}[own."PID α"]\nroll.p = 5\nr|\n`).filter(
      ({ kind }) => kind === 'parameter',
    );
    assert.deepEqual(
      names.map(({ label }) => label),
      ['roll.p."#2"'],
    );
    assert.equal(accepted(`${start}own.g|\n`, 'own."gyro rate"'), 'own."gyro rate" = 8000');
    const other = `${start}[pack.a]\ncells = 4\n[own]\nstep = 5\n[own @ a]\ns|\n`;
    assert.ok(labels(other).includes('step'));
  });

  it('replaces all of a name, with quotes or without, and leaves the value', () => {
    assert.equal(accepted(`${start}[own]\ngyr|`, '"gyro rate"'), '"gyro rate" = 8000');
    assert.equal(accepted(`${start}[own]\n"gyr|"`, '"gyro rate"'), '"gyro rate" = 8000');
    assert.equal(accepted(`${start}[own]\n"gyr|o" = 5 # why`, '"gyro rate"'), '"gyro rate" = 5 # why');
    assert.equal(accepted(`${start}[own]\ngyro ra| = 5`, '"gyro rate"'), '"gyro rate" = 5');
    const filters = (marked: string) =>
      offered(marked).find(({ label }) => label === '"gyro rate"')?.filterText;
    assert.equal(filters(`${start}[own]\ngyr|`), 'gyro rate');
    assert.equal(filters(`${start}[own]\n"gyr|"`), '"gyro rate"');
  });

  it('offers the values that a setting has elsewhere', () => {
    const text = `${start}[pack.a]\ncells = 4\n[own @ a]\nstep = "# 2"\n[own]\nstep =|`;
    assert.deepEqual(
      offered(text).map(({ label, detail }) => [label, detail]),
      [
        ['1,5', 'In board.craft'],
        ['"# 2"', 'In main.craft with pack a'],
      ],
    );
    assert.equal(accepted(text, '1,5'), 'step = 1,5');
    assert.equal(accepted(`${start}[own]\nstep = 7 |5 # why`, '1,5'), 'step = 1,5 # why');
    assert.deepEqual(labels(`${start}[own]\nother = |`), []);
  });

  it('offers the other word where the value elsewhere is one of two', () => {
    const text = '[pack.a]\ncells = 4\n[own @ a]\nmode = enabled\n[own]\nmode = |';
    assert.deepEqual(labels(text), ['enabled', 'disabled']);
  });

  it('offers what the board’s profile has and nobody has given a meaning, with what it states', () => {
    const wren = '[board]\nprofile = wren\n[own.self]\n';
    assert.equal(accepted(`${wren}|`, 'settle'), 'settle = 150');
    assert.match(offered(`${wren}s|`).find(({ label }) => label === 'settle')?.detail ?? '', /a Wren waits/);
    assert.ok(!labels(`${wren}settle = 5\ns|`).includes('settle'));
    assert.deepEqual(
      offered(`${wren}free-pad = |`).map(({ label, detail }) => [label, detail]),
      [
        ['bare', 'Its default'],
        ['tally', 'One of its words'],
        ['torch', 'One of its words'],
      ],
    );
    assert.deepEqual(
      offered(`${wren}settle = |`).map(({ label, detail }) => [label, detail]),
      [
        ['0', 'An end of its range'],
        ['2000', 'An end of its range'],
        ['150', 'Its default'],
      ],
    );
    assert.ok(labels(`${wren.replace('[own.self]', '')}[own.|`).includes('own.self'));
  });

  it('offers the groups as sections', () => {
    assert.deepEqual(labels(`${start}[own|]`).slice(-2), ['own."PID α"', 'own."PID α".roll']);
    assert.equal(accepted(`${start}[own.|`, 'own."PID α"'), '[own."PID α"]');
    assert.equal(accepted(`${start}[own."P|]`, 'own."PID α".roll'), '[own."PID α".roll]');
    assert.equal(accepted(`${start}[own."P|ID" @ a]`, 'own."PID α"'), '[own."PID α" @ a]');
  });

  it('offers packs behind a quoted name', () => {
    assert.deepEqual(labels('[pack.a]\ncells = 4\n[own."x @ y" @ |]'), ['a']);
  });

  it('says so where there are more names than a list can hold', () => {
    const many = Array.from({ length: mostNames + 20 }, (_, at) => `x${at} = 1`).join('\n');
    const { snapshot, position } = snapshotOf('include "a.craft"\n[own]\nx|', {
      'a.craft': `[own]\n${many}`,
    });
    const { items, isIncomplete } = completion(snapshot, position, { snippets: false, trigger: null });
    assert.equal(items.filter(({ kind }) => kind === 'parameter').length, mostNames);
    assert.ok(isIncomplete);
  });
});
