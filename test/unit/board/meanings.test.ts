import assert from 'node:assert/strict';
import { meaningOf, meaningsOf, namesOf } from '../../../server/src/board/meaning/meanings';
import { Speller } from '../../../server/src/board/meaning/spelling';
import { type Profile, profileOf } from '../../../server/src/board/profile/profile';
import type { BoardProfile, BoardSetting } from '../../../server/src/catalog/model/board-profile';
import type { Value } from '../../../server/src/craft/value';
import { problemsOf, workspaceWithBoard } from '../../support/additions';
import { near } from '../../support/near';

const text = {
  forms: { container: 'lines', lines: [{ form: '{name} := {value}' }], headings: ['<{group}>'] },
};

/** A board with these settings, as a workspace has it. */
function boardWith(settings: readonly BoardSetting[], more: object = {}) {
  const told = { name: 'reed', text, settings, ...more };
  const files = workspaceWithBoard('boards/reed.json', told);
  const problems = problemsOf(files, 'boards/reed.json').map(([, marked, message]) => [marked, message]);
  return { problems, board: files.catalog.board('reed'), catalog: files.catalog };
}

function profileWith(settings: readonly BoardSetting[], more: object = {}): Profile {
  const { problems, board } = boardWith(settings, more);
  assert.deepEqual(problems, []);
  const profile = profileOf(board as BoardProfile);
  assert.ok(profile);
  return profile;
}

describe('the settings of a profile', () => {
  const profile = profileWith([
    { name: 'größe' },
    { group: ['axes', 'one'], name: 'p', range: ['0', '200'] },
    { group: ['axes', 'two'], name: 'p' },
    { group: 'axes', name: 'one\u002fp' },
    { group: 'box', name: 'rule', occurrence: 2 },
    { group: 'box', name: 'rule' },
    { group: 'slot {member}', name: 'corner', means: 'gyro.filter.<number>.cutoff' },
  ]);
  const found = (groups: readonly string[], name: string, occurrence?: number) => {
    const one = profile.find(groups, name, occurrence);
    return one === undefined ? null : [one.row.index, one.member];
  };

  it('are found by their groups and their name, code point by code point', () => {
    assert.deepEqual(found([], 'größe'), [0, null]);
    assert.equal(found([], 'gro\u0308ße'), null);
    assert.equal(found(['axes'], 'größe'), null);
    assert.deepEqual(found(['axes', 'one'], 'p'), [1, null]);
    assert.deepEqual(found(['axes', 'two'], 'p'), [2, null]);
    assert.deepEqual(found(['axes'], 'one/p'), [3, null]);
    assert.equal(found(['axes/one'], 'p'), null);
  });

  it('that stand there several times are one row, or each has its own', () => {
    assert.deepEqual(found(['box'], 'rule'), [5, null]);
    assert.deepEqual(found(['box'], 'rule', 2), [4, null]);
    assert.deepEqual(found(['box'], 'rule', 3), [5, null]);
  });

  it('may name a member of a collection in their group', () => {
    assert.deepEqual(found(['slot 3'], 'corner'), [6, '3']);
    assert.equal(found(['slot '], 'corner'), null);
    assert.equal(found(['slot 3'], 'corners'), null);
    assert.equal(found(['slot A/B'], 'corner'), null);
  });
});

describe('what settings mean', () => {
  it('is gathered by parameter, its parts in their own order', () => {
    const profile = profileWith([
      { name: 'to', means: 'switch.arm.on', as: 'high' },
      { name: 'full', means: 'stick.roll.curve', as: { at: '100 %' } },
      { name: 'from', means: 'switch.arm.on', as: 'low' },
      { name: 'half', means: 'stick.roll.curve', as: { at: '50 %' } },
      { name: 'lamp' },
    ]);
    const names = (index: number) =>
      namesOf(profile, meaningsOf(profile)[index] ?? assert.fail(), null)?.map(({ name }) => name);
    assert.deepEqual(
      meaningsOf(profile).map(({ means, by }) => [means, by]),
      [
        ['switch.arm.on', 'ends'],
        ['stick.roll.curve', 'samples'],
      ],
    );
    assert.deepEqual(
      [names(0), names(1)],
      [
        ['from', 'to'],
        ['half', 'full'],
      ],
    );
    const lamp = profile.find([], 'lamp');
    assert.equal(lamp && meaningOf(profile, lamp.row), undefined);
  });

  it('says how each part is counted by itself', () => {
    const profile = profileWith([
      { name: 'from', means: 'switch.arm.on', as: 'low', counts: { step: '10 us' } },
      { name: 'to', means: 'switch.arm.on', as: 'high', counts: { unit: 'ms', scale: 100, step: '10 us' } },
    ]);
    const { catalog } = boardWith([]);
    const [meaning] = meaningsOf(profile);
    const parameter = catalog.parameter('switch.arm.on');
    assert.ok(meaning && parameter);
    const speller = new Speller(meaning, parameter, profile.manner);
    const value: Value = { kind: 'range', low: 1.753e-3, high: 2.047e-3, unit: 'us' };
    assert.deepEqual(speller.write(value), { kind: 'texts', texts: ['1750', '205'] });
    assert.deepEqual(speller.read(['1750', '205']), {
      kind: 'value',
      value: { kind: 'range', low: 1.75e-3, high: 2.05e-3, unit: 'us' },
    });
    near(speller.grain(0) ?? 0, 10, 1e-9);
    near(speller.grain(1) ?? 0, 1, 1e-9);
  });

  it('of a number takes only those that the listing names, counted as the board does', () => {
    const counts = { unit: 'Hz' };
    const profile = profileWith([
      { name: 'pace', means: 'gyro.rate', words: ['1600', '3200', '6400'], counts },
    ]);
    const { catalog } = boardWith([]);
    const [meaning] = meaningsOf(profile);
    const parameter = catalog.parameter('gyro.rate');
    assert.ok(meaning && parameter);
    const speller = new Speller(meaning, parameter, profile.manner);
    const rate = (value: number): Value => ({ kind: 'quantity', value, unit: 'kHz' });
    assert.deepEqual(speller.write(rate(3200)), { kind: 'texts', texts: ['3200'] });
    const refused = { kind: 'refused', reason: 'the board takes 1600, 3200, 6400' };
    assert.deepEqual(speller.write(rate(4000)), refused);
    assert.deepEqual(speller.nearest(rate(4000)), rate(3200));
  });

  it('of a rate may be shown by its period: both ways, in steps, and within what the board takes', () => {
    const told = (counts: BoardSetting['counts'], means = 'control.rate') =>
      boardWith([
        { name: 'round', means, range: ['125', '1000'], ...(counts === undefined ? {} : { counts }) },
      ]);
    const { catalog, board } = told({ unit: 'us', step: '0.5 us' });
    const profile = profileOf(board as BoardProfile);
    const [meaning] = profile === null ? [] : meaningsOf(profile);
    const parameter = catalog.parameter('control.rate');
    assert.ok(profile && meaning && parameter);
    const speller = new Speller(meaning, parameter, profile.manner);
    const rate = (value: number): Value => ({ kind: 'quantity', value, unit: 'kHz' });
    assert.deepEqual(speller.write(rate(3200)), { kind: 'texts', texts: ['312.5'] });
    assert.deepEqual(speller.write(rate(3000)), { kind: 'texts', texts: ['333.5'] });
    assert.deepEqual(speller.read(['312.5']), { kind: 'value', value: rate(3200) });
    assert.notEqual(speller.read(['0']).kind, 'value');
    for (const beyond of [500, 9000])
      assert.deepEqual(speller.write(rate(beyond)), {
        kind: 'refused',
        reason: 'the board takes 125 to 1000 us',
      });
    assert.deepEqual(speller.nearest(rate(9000)), rate(8000));
    assert.match(told({ unit: 'V' }).problems.join(), /is not a frequency/);
    assert.match(told({ unit: 'us', step: '1 Hz' }).problems.join(), /time/);
    assert.match(told({ unit: 'us' }, 'power.warn-cell').problems.join(), /is not a voltage/);
  });

  it('names the setting that has it, where several are called alike', () => {
    const profile = profileWith([{ name: 'rule', occurrence: 3, means: 'motor.idle' }]);
    const [meaning] = meaningsOf(profile);
    assert.ok(meaning);
    assert.deepEqual(namesOf(profile, meaning, null), [{ groups: [], name: 'rule', occurrence: 3 }]);
  });

  it('is one for each member that the board spells, and none for others', () => {
    const profile = profileWith([{ name: '{member} lane', means: 'switch.<function>.channel' }], {
      members: { switch: { arm: 'live', locate: 'chirp' } },
    });
    const [meaning] = meaningsOf(profile);
    assert.ok(meaning);
    const name = (member: string) => namesOf(profile, meaning, member)?.[0]?.name ?? null;
    assert.deepEqual([name('arm'), name('locate'), name('mark')], ['live lane', 'chirp lane', null]);
    assert.equal(profile.find([], 'live lane')?.member, 'arm');
    assert.equal(profile.find([], 'arm lane'), undefined);
  });

  it('is said once: a row for every member holds that of each', () => {
    const rows = [
      { name: '{member} lane', means: 'switch.<function>.channel' },
      { name: 'first lane', means: 'switch.arm.channel' },
    ];
    assert.deepEqual(boardWith(rows).problems, [
      ['"switch.arm.channel"', 'switch.arm.channel is what {member} lane means already'],
    ]);
    assert.deepEqual(boardWith(rows, { members: { switch: { locate: 'chirp' } } }).problems, []);
  });
});
