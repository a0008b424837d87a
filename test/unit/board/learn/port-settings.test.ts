import assert from 'node:assert/strict';
import { settingsToSay } from '../../../../server/src/board/learn/edit/settings-of';
import { withMeanings } from '../../../../server/src/board/learn/edit/with-meanings';
import { learnedProfile } from '../../../../server/src/board/learn/learned-profile';
import { learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { nothingConfirmed } from '../../../../server/src/board/learn/said';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import type { BoardProfile } from '../../../../server/src/catalog/model/board-profile';
import { meaningRows } from '../../../../server/src/features/board/meanings';
import { portParameters, portsSayable } from '../../../../server/src/features/board/port-settings';
import { testCatalog } from '../../../support/catalog';

function ports(...lines: readonly string[]): readonly (readonly [string, string])[] {
  return [...portsSayable(learnedSettings(readListing(lines.join('\n'), null)))];
}

describe('settings that may say what ports are for', () => {
  it('are called by ports, alone or in their group', () => {
    assert.deepEqual(ports('[doors]', 'port 1 = 2', 'port 2 = 0', 'lamp = 4'), [
      ['doors/port 1', 'port1'],
      ['doors/port 2', 'port2'],
    ]);
    assert.deepEqual(ports('[uart1]', 'use = rx', '[uart2]', 'use = none', 'speed = 9'), [
      ['uart1/use', 'uart1'],
      ['uart2/use', 'uart2'],
    ]);
    assert.deepEqual(ports('ports.1 = 4', 'ports.2 = 0', 'ports.speed = 3'), [
      ['ports/1', 'port1'],
      ['ports/2', 'port2'],
    ]);
  });

  it('are none where the name says something else, or only one is there', () => {
    assert.deepEqual(ports('port 1 speed = 115200', 'port 2 speed = 9600', 'lamp = 4'), []);
    assert.deepEqual(ports('port 1 = 2', 'lamp = 4', 'pace = 5'), []);
    assert.deepEqual(ports('port 1 = on', 'port 2 = off', 'lamp = 4'), []);
  });

  it('may have the use of each parameter that names a port', () => {
    const named = portParameters(testCatalog).map(({ means }) => means);
    assert.ok(named.includes('receiver.port') && named.includes('telemetry.port'), named.join());
  });
});

describe('a profile of which is said what its ports are for', () => {
  const listing = readListing('port 1 = 2\nport 2 = 0\nport 3 = 7\nlamp = 4\n', null);
  const made = learnedProfile(listing, 'dipper', nothingConfirmed, testCatalog);
  const empty = made?.profile ?? assert.fail('nothing was read');
  const said = (board: BoardProfile, rows: Readonly<Record<string, object>>, portRoles?: object) =>
    withMeanings(
      board,
      settingsToSay(board, listing),
      {
        rows: new Map(Object.entries(rows)),
        ...(portRoles === undefined ? {} : { portRoles: { roles: {}, ...portRoles } }),
      },
      testCatalog,
    );
  const rows = { 'port 1': { port: 'port1' }, 'port 2': { port: 'port2' }, 'port 3': { port: 'port3' } };
  const roles = { roles: { 'receiver.port': '2' }, unused: '0' };

  it('shows what each is for, and what nobody knows', () => {
    const { board, refused } = said(empty, rows, roles);
    assert.deepEqual([...refused], []);
    assert.deepEqual(board.portRoles, roles);
    const shown = meaningRows(board, settingsToSay(board, listing), testCatalog).map((row) => [
      row.port,
      row.said?.title ?? null,
      row.said?.quantity ?? null,
    ]);
    assert.deepEqual(shown, [
      ['port1', 'What port1 is for', 'Serial port of the receiver'],
      ['port2', 'What port2 is for', 'unused'],
      ['port3', 'What port3 is for', null],
      [null, null, null],
    ]);
  });

  it('is as it was once all of it is taken back', () => {
    const { board } = said(empty, rows, roles);
    assert.deepEqual(said(board, { 'port 1': {}, 'port 2': {}, 'port 3': {} }, {}).board, empty);
  });

  it('is left as it was where a word stands for two uses, or a port is said twice', () => {
    const twice = said(empty, rows, { roles: { 'receiver.port': '2', 'telemetry.port': '2' } });
    assert.deepEqual(twice.board, empty);
    assert.equal(twice.refused.get('port 1'), '"2" stands for two roles');
    const again = said(empty, { ...rows, 'port 2': { port: 'port1' } }, roles);
    assert.equal(again.refused.get('port 2'), 'the role of port1 is said by another setting already');
    assert.deepEqual(
      again.board.settings.map(({ port }) => port ?? null),
      ['port1', null, 'port3', null],
    );
  });
});

describe('a number of whose digits something is said', () => {
  it('shows each with the word that it is about', () => {
    const listing = readListing('checks = 13\nlamp = amber\npace = 7\n', null);
    const made = learnedProfile(listing, 'dipper', nothingConfirmed, testCatalog);
    const profile = made?.profile ?? assert.fail('nothing was read');
    const items = [
      { means: 'arming.needs', as: { has: 'receiver-alive' }, spelled: { on: '1', off: '0' } },
      { means: 'arming.needs', as: { has: 'gyro-still' }, spelled: { on: '1', off: '0' } },
      {},
      { means: 'arming.beep', spelled: { on: '1', off: '0' } },
    ];
    const { board, refused } = withMeanings(
      profile,
      settingsToSay(profile, listing),
      { rows: new Map([['checks', { items, packed: true }]]) },
      testCatalog,
    );
    assert.deepEqual([...refused], []);
    const [row] = meaningRows(board, settingsToSay(board, listing), testCatalog, listing);
    assert.deepEqual(
      [row?.line, row?.said?.means, row?.said?.quantity],
      [0, 'arming.needs, arming.beep', 'receiver-alive on, gyro-still off, on'],
    );
  });
});
