import assert from 'node:assert/strict';
import { settingsToSay } from '../../../../server/src/board/learn/edit/settings-of';
import { withMeanings } from '../../../../server/src/board/learn/edit/with-meanings';
import { learnedProfile } from '../../../../server/src/board/learn/learned-profile';
import { nothingConfirmed } from '../../../../server/src/board/learn/said';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import type { BoardProfile, RowMeant } from '../../../../server/src/catalog/model/board-profile';
import { meaningRows } from '../../../../server/src/features/board/meanings';
import { testCatalog } from '../../../support/catalog';

const text = `[calm]
first cut = 225 (from 50 to 400)
second cut = 300
idle share = 65
[wake]
arm low = 1700
arm high = 2050
order = AETR
`;
const listing = readListing(text, null);

function newBoard(): BoardProfile {
  const made = learnedProfile(listing, 'dipper', nothingConfirmed, testCatalog);
  return made?.profile ?? assert.fail('nothing was read');
}

function said(board: BoardProfile, meant: Readonly<Record<string, RowMeant>>) {
  const rows = new Map(Object.entries(meant));
  return withMeanings(board, settingsToSay(board, listing), { rows }, testCatalog);
}

const cut: RowMeant = { means: 'gyro.filter.1.cutoff' };
const idle: RowMeant = { means: 'motor.idle', counts: { scale: 10 } };

function meaningsIn({ settings }: BoardProfile) {
  return Object.fromEntries(
    settings.flatMap(({ name, means, role }) =>
      means === undefined && role === undefined ? [] : [[name, means ?? `role ${role}`]],
    ),
  );
}

describe('a profile of which more is said', () => {
  it('has just that, and keeps all that was there', () => {
    const first = said(newBoard(), { 'calm/first cut': cut }).board;
    const own = { ...first, title: 'Dipper Two', text: { ...first.text, command: 'same' as const } };
    const { board, refused } = said(own as BoardProfile, { 'calm/idle share': idle });
    assert.deepEqual([...refused], []);
    assert.deepEqual(meaningsIn(board), { 'first cut': 'gyro.filter.1.cutoff', 'idle share': 'motor.idle' });
    assert.deepEqual([board.title, board.text?.command], ['Dipper Two', 'same']);
    assert.deepEqual(board.settings[0]?.range, ['50', '400']);
  });

  it('is as it was once what was said is taken back', () => {
    const before = newBoard();
    const after = said(before, { 'calm/first cut': cut, 'calm/idle share': idle }).board;
    assert.notDeepEqual(after, before);
    assert.deepEqual(said(after, { 'calm/first cut': {}, 'calm/idle share': {} }).board, before);
  });

  it('takes no second setting for a parameter, says why, and keeps the first', () => {
    const before = said(newBoard(), { 'calm/first cut': cut }).board;
    const { board, refused } = said(before, { 'calm/second cut': cut, 'calm/idle share': idle });
    assert.deepEqual([...refused.keys()], ['calm/second cut']);
    assert.deepEqual(meaningsIn(board), { 'first cut': 'gyro.filter.1.cutoff', 'idle share': 'motor.idle' });
  });

  it('takes the ends of a range together, and none alone', () => {
    const low: RowMeant = { means: 'switch.arm.on', as: 'low' };
    const high: RowMeant = { means: 'switch.arm.on', as: 'high' };
    assert.deepEqual([...said(newBoard(), { 'wake/arm low': low }).refused.keys()], ['wake/arm low']);
    assert.deepEqual([...said(newBoard(), { 'wake/arm low': low, 'wake/arm high': high }).refused], []);
  });

  it('holds a part that is played without a scale', () => {
    const { board } = said(newBoard(), { 'calm/idle share': { role: 'motor.idle' } });
    assert.deepEqual(meaningsIn(board), { 'idle share': 'role motor.idle' });
    const rows = meaningRows(board, settingsToSay(board, listing), testCatalog);
    const row = rows.find(({ key }) => key === 'calm/idle share')?.said;
    assert.deepEqual([row?.isRole, row?.means, row?.quantity], [true, 'motor.idle', null]);
  });

  it('gets a row for a setting that it did not list', () => {
    const board = newBoard();
    const short = { ...board, settings: board.settings.slice(1) };
    const after = said(short, { 'calm/first cut': cut }).board;
    assert.deepEqual(after.settings.at(-1), {
      group: 'calm',
      name: 'first cut',
      range: ['50', '400'],
      means: 'gyro.filter.1.cutoff',
    });
  });
});

describe('the rows in which meanings are said', () => {
  it('show what a taken row comes to, as it was proposed', () => {
    const board = newBoard();
    const settings = settingsToSay(board, listing);
    for (const { key, choices } of meaningRows(board, settings, testCatalog))
      for (const { row, quantity, part } of choices) {
        if (row === null || part !== null) continue;
        const after = said(board, { [key]: row }).board;
        const now = meaningRows(after, settings, testCatalog).find((one) => one.key === key)?.said;
        assert.equal(now?.quantity, quantity, key);
      }
  });

  it('are there without a text, from the profile alone', () => {
    const board = said(newBoard(), { 'calm/first cut': cut }).board;
    const rows = meaningRows(board, settingsToSay(board, null), testCatalog);
    assert.deepEqual(
      rows.map(({ key }) => key),
      ['calm/first cut', 'calm/second cut', 'calm/idle share', 'wake/arm low', 'wake/arm high', 'wake/order'],
    );
    assert.equal(rows[0]?.said?.means, 'gyro.filter.1.cutoff');
  });
});
