import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { completion } from '../../../../server/src/features/completion/completion';
import type { CompletionItem } from '../../../../server/src/features/completion/item';
import { testCatalog } from '../../../support/catalog';
import { findingsIn } from '../../../support/findings';
import { snapshotOf } from '../../../support/snapshot';

function offered(marked: string, snippets = false): readonly CompletionItem[] {
  const { snapshot, position } = snapshotOf(marked);
  return completion(snapshot, position, { snippets, trigger: null }).items;
}

const parts = (marked: string, snippets = false) =>
  offered(marked, snippets).filter(({ kind }) => kind === 'part');

const headers = (marked: string) =>
  offered(marked)
    .filter(({ kind }) => kind === 'section')
    .map(({ label }) => label);

const mustFix = (text: string) =>
  findingsIn(text)
    .filter(({ level }) => level === 'must-fix')
    .map(({ id, message }) => `${id}: ${message}`);

const starter = readFileSync(join(__dirname, '../../../../client/starters/first-craft.craft'), 'utf8');

/** The text without the sections that a part writes. */
function without(text: string, part: string): string {
  const written = new Set(part.split('\n').filter((line) => line.startsWith('[')));
  return text
    .split(/^(?=\[)/m)
    .filter((section) => !written.has(/^\[[^\]]+\]/.exec(section)?.[0] ?? ''))
    .filter((section) => !(part.startsWith('[pack.') && section.startsWith('[pack.')))
    .join('');
}

describe('whole parts', () => {
  it('stand in the order of the job, each before its header', () => {
    const labels = offered('|').map(({ label }) => label);
    const order = [
      'Craft: shape and mass',
      '[craft]',
      '[board]',
      '[motor]',
      'Receiver',
      '[receiver]',
      'Arm switch',
    ];
    const places = order.map((label) => labels.indexOf(label));
    assert.ok(!places.includes(-1), labels.slice(0, 40).join(', '));
    assert.deepEqual(
      places,
      places.toSorted((one, other) => one - other),
    );
    assert.equal(labels.indexOf('Receiver') + 1, labels.indexOf('[receiver]'));
  });

  it('bring no must-fix by themselves, in an empty script and in a craft that lacks them', () => {
    const empty = new Set(mustFix('craft.name = "Wren"'));
    assert.equal(parts('|').length, testCatalog.wholeParts.length);
    for (const { label, insertText } of parts('|')) {
      const alone = mustFix(`${insertText}\n`).filter((text) => !empty.has(text));
      assert.deepEqual(alone, [], `${label}\n${insertText}`);
    }
    for (const { label } of parts('|')) {
      const text = offered('|').find((one) => one.label === label)?.insertText ?? '';
      const base = without(starter, text);
      // The starter's board has no memory for a log.
      if (label === 'Flight log') continue;
      const here = offered(`${base}\n|`).find((one) => one.label === label)?.insertText;
      // Numbered filters stand in the starter already: the next one is offered.
      assert.ok(here !== undefined, `${label} is not offered`);
      const before = new Set(mustFix(base));
      // Which board it is, only the pilot knows: the rest of the starter is made for this one.
      const written = here.replace(/(profile +)= \w+/, '$1= wren');
      const brought = mustFix(`${base}\n${written}\n`).filter((one) => !before.has(one));
      assert.deepEqual(brought, [], `${label}\n${here}`);
    }
  });

  it('have the ports of the board to pick from, and no line for one as long as nobody knows the board', () => {
    const receiver = (before: string) => parts(`${before}|`, true).find(({ label }) => label === 'Receiver');
    assert.match(receiver('board.profile = heron\n')?.insertText ?? '', /^port {3}= \$\{2\|uart\d,/m);
    assert.doesNotMatch(receiver('')?.insertText ?? '', /port/);
  });

  it('are offered until their section is there, and of numbered ones the next', () => {
    assert.ok(!parts('[receiver]\nlink = crsf\n|').some(({ label }) => label === 'Receiver'));
    assert.ok(!parts('[pack.sprint]\ncells = 4\n|').some(({ label }) => label === 'Pack'));
    const filter = parts('[gyro.filter.1]\nkind = butterworth\n|').find(({ label }) =>
      /low-pass/.test(label),
    );
    assert.match(filter?.insertText ?? '', /^\[gyro\.filter\.2\]\n/);
  });

  it('replace the brackets that are typed already, and are found by everyday words', () => {
    for (const marked of ['[rec|', '[rec|]', '[|]', '[ re|  ]']) {
      const item = parts(marked).find(({ label }) => label === 'Receiver');
      assert.equal(item?.range.start.character, 0, marked);
      assert.equal(item.range.end.character, marked.replace('|', '').length, marked);
      assert.match(item.filterText, /^\[receiver/);
    }
    // A client ranks by how the text begins.
    assert.match(parts('rad|').find(({ label }) => label === 'Receiver')?.filterText ?? '', /^radio\b/);
  });

  it('are not offered where the craft has no place for them', () => {
    const log = (board: string) =>
      parts(`board.profile = ${board}\n|`).some(({ label }) => label === 'Flight log');
    assert.deepEqual([log('wren'), log('heron')], [false, true]);
  });

  it('keep their units while a number is typed over', () => {
    const dollar = '$';
    const pack = parts('|', true).find(({ label }) => label === 'Pack');
    assert.ok(pack?.insertText.includes(`mass      = ${dollar}{6:185} g  # weigh it`), pack?.insertText);
    assert.ok(pack?.insertText.startsWith(`[pack.${dollar}{1:first}]\n`));
  });
});

describe('headers of sections', () => {
  it('come in the order of the job', () => {
    assert.deepEqual(headers('|').slice(0, 5), ['[craft]', '[board]', '[motor]', '[esc]', '[prop]']);
    const all = headers('|');
    for (const [one, other] of [
      ['[receiver]', '[arming]'],
      ['[switch.arm]', '[stick]'],
      ['[gyro]', '[video]'],
      ['[flight.<name>]', '[board.supply]'],
    ] as const)
      assert.ok(all.indexOf(one) < all.indexOf(other) && all.includes(one), `${one} before ${other}`);
  });

  it('come so between brackets too, what is open last', () => {
    const names = headers('[craft]\nname = "Wren"\n[|]');
    assert.equal(names[0], 'board');
    assert.equal(names.at(-1), 'craft');
  });
});
