import assert from 'node:assert/strict';
import type { ChoiceContext } from '../../../server/src/catalog/choices';
import type { ChoiceSource, Parameter } from '../../../server/src/catalog/model/parameter';
import { shippedCatalog } from './shipped';

const common = {
  title: 'A made-up word',
  summary: 'A word that only this test knows, to ask the catalogue for the words it takes.',
  hurts: [],
  risk: 'Nothing is at risk here.',
  prove: 'Run this test.',
  needs: [],
  related: [],
  stage: 'wire',
  heldBy: 'board',
  source: { text: 'Invented for this test' },
  alsoCalled: [],
  default: null,
} as const;

function word(name: string, choicesFrom: ChoiceSource): Parameter {
  return { ...common, hurts: [], needs: [], related: [], alsoCalled: [], kind: 'word', name, choicesFrom };
}

function names(parameter: Parameter, context?: ChoiceContext): readonly string[] {
  return shippedCatalog()
    .choices(parameter, context)
    .map((choice) => choice.name);
}

describe('the words that a parameter takes', () => {
  it('come from the tables of the hardware', () => {
    assert.deepEqual(names(word('a.b', 'boards')), ['heron', 'wren']);
    assert.deepEqual(names(word('a.b', 'chemistries')), ['lipo', 'high-voltage-lipo', 'li-ion', 'lifepo4']);
    assert.ok(names(word('a.b', 'signals')).includes('dshot300'));
    assert.ok(names(word('a.b', 'regions')).includes('elsewhere'));
    assert.deepEqual(names(word('a.b', 'video-bands')).slice(0, 5), ['a', 'b', 'e', 'f', 'r']);
    assert.deepEqual(names(word('a.b', 'grids')), ['pal', 'ntsc']);
    assert.deepEqual(names(word('a.b', 'log-media')), ['off', 'flash', 'card']);
    assert.ok(names(word('a.b', 'switch-functions')).includes('arm'));
  });

  it('are links made for the use of the group', () => {
    assert.ok(names(word('receiver.link', 'links')).includes('sbus'));
    assert.ok(!names(word('receiver.link', 'links')).includes('nmea'));
    assert.ok(names(word('telemetry.link', 'links')).includes('mavlink'));
    assert.ok(!names(word('telemetry.link', 'links')).includes('sbus'));
    assert.deepEqual(names(word('position.protocol', 'links')), ['nmea', 'binary']);
    assert.equal(names(word('craft.anything', 'links')).length, shippedCatalog().links.size);
  });

  it('come from the craft at hand where only it can tell', () => {
    const uart = { name: 'uart2', summary: 'A port of the board.' };
    assert.deepEqual(names(word('a.b', 'ports'), { ports: [uart] }), ['uart2']);
    assert.deepEqual(names(word('a.b', 'packs'), { packs: [{ ...uart, name: 'sprint' }] }), ['sprint']);
    assert.deepEqual(names(word('a.b', 'ports')), []);
  });

  it('are the boards that ship, and those of the workspace by the names of their files', () => {
    const asked: string[] = [];
    const catalog = shippedCatalog().withBoards({
      read: new Map(),
      unread: new Set(['siskin']),
      faulty: new Set(['serin']),
      ask: (name) => asked.push(name),
    });
    assert.deepEqual(
      catalog.choices(word('a.b', 'boards')).map(({ name }) => name),
      ['heron', 'wren', 'siskin', 'serin'],
    );
    assert.deepEqual(asked, []);
    assert.equal(catalog.board('siskin'), undefined);
    assert.deepEqual(asked, ['siskin']);
  });

  it('come with a summary each, whatever the source', () => {
    for (const known of shippedCatalog().parameters.values()) {
      for (const choice of shippedCatalog().choices(known.parameter)) {
        assert.ok(choice.summary.length >= 12, `${known.name}: ${choice.name}`);
      }
    }
  });

  it('are none for a number', () => {
    assert.deepEqual(names(shippedCatalog().parameter('motor.kv')?.parameter ?? word('a.b', 'ports')), []);
  });
});
