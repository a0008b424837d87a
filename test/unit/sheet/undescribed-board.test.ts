import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { completion } from '../../../server/src/features/completion/completion';
import { hover } from '../../../server/src/features/hover/hover';
import { buildSheet } from '../../../server/src/sheet/build-sheet';
import type { WiredWhere } from '../../../server/src/sheet/wired-where';
import { testCatalog } from '../../support/catalog';
import { type BareBoard, snapshotOn } from '../../support/other-boards';
import { withoutCursor } from '../../support/snapshot';

const bare: BareBoard = { name: 'dabchick' };
const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8').replace(
  /profile( *)= heron/,
  'profile$1= dabchick',
);

function wiring(board: BareBoard, text: string): WiredWhere {
  const { craft, pack, findings } = snapshotOn(board, text);
  const part = buildSheet(craft, findings(), pack).parts.find(({ id }) => id === 'wired-where');
  assert.ok(part?.id === 'wired-where');
  return part;
}

const craft = `
[craft]
name = "Dabchick"
[board]
profile = dabchick
[receiver]
link = sbus
port = uart2
[wire.camera]
supply  = 5 V
current = 0.2 A
`;

describe('a board of which nothing is described', () => {
  it('has the ports that the script names, and none that are free', () => {
    const { answer, ports, rails, hasAllPorts, board } = wiring(bare, craft);
    assert.deepEqual([answer, board, hasAllPorts], ['1 port in use', 'dabchick', false]);
    assert.deepEqual(
      ports.map(({ name, devices }) => [name, devices.map((device) => device.name)]),
      [['uart2', ['receiver']]],
    );
    assert.deepEqual(
      rails.map(({ voltage, isOnBoard, limit }) => [voltage, isOnBoard, limit]),
      [['5 V', null, null]],
    );
  });

  it('shows the same where no board is named, and says so', () => {
    const { answer, ports, board } = wiring(bare, craft.replace('profile = dabchick', ''));
    assert.deepEqual([answer, board, ports.length], ['no board set, 1 port in use', null, 1]);
  });

  it('takes any port, and offers none', () => {
    const { text, position } = withoutCursor(`${craft}[telemetry]\nport = |\n`);
    const { items } = completion(snapshotOn(bare, text), position, { snippets: false, trigger: null });
    assert.deepEqual(
      items.filter(({ label }) => label.startsWith('uart')),
      [],
    );
    const found = snapshotOn(bare, craft).findings();
    assert.deepEqual(
      found.filter(
        ({ check, level }) =>
          check.id.startsWith('line/') || (check.id.startsWith('wire/') && level === 'must-fix'),
      ),
      [],
    );
  });

  it('offers what little is known of a port', () => {
    const { text, position } = withoutCursor(`${craft}[telemetry]\nport = |\n`);
    const known = { ...bare, hardware: { ports: [{ name: 'uart7' }] } };
    const { items } = completion(snapshotOn(known, text), position, { snippets: false, trigger: null });
    assert.ok(items.some(({ label }) => label === 'uart7'));
  });

  it('is named by its name where it has no title, and explained', () => {
    const { text, position } = withoutCursor('board.profile = dab|chick\n');
    assert.match(hover(snapshotOn(bare, text), position)?.markdown ?? '', /dabchick/);
  });

  it('leaves every other figure of the racer as it is', () => {
    const heron = { ...bare, hardware: testCatalog.board('heron')?.hardware };
    const sheets = [heron, bare].map((board) => {
      const { craft: whole, pack, findings } = snapshotOn(board, racer, club);
      const serious = findings().filter(({ level }) => level === 'must-fix');
      assert.deepEqual(
        serious.map(({ check }) => check.id),
        [],
      );
      return buildSheet(whole, findings(), pack);
    });
    for (const id of ['my-hands', 'how-late', 'who-sees-me'] as const) {
      const [known, unknown] = sheets.map(({ parts }) => parts.find((part) => part.id === id));
      assert.ok(known);
      assert.deepEqual(unknown, known);
    }
  });
});
