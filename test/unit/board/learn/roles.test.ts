import assert from 'node:assert/strict';
import { LayerReader } from '../../../../server/src/board/layer/layer-reader';
import { perCentChange } from '../../../../server/src/board/profile/roles';
import { prepareBoardText } from '../../../../server/src/features/board/hand-over';
import { boardHover } from '../../../../server/src/features/board/hover';
import { hover } from '../../../../server/src/features/hover/hover';
import { plainText } from '../../../../server/src/features/markdown';
import { settingChanges } from '../../../../server/src/sheet/compare/changed-settings';
import { ownSettingsText } from '../../../../server/src/sheet/own-settings';
import { confirmed } from '../../../support/confirmed';
import { unequal, Way } from '../../../support/listing-shapes/way';
import { snapshotOfView } from '../../../support/snapshot';

const text = ['kreisel/wank = 45', 'kreisel/nick = 50', 'kreisel/gier = 90', 'lampe/farbe = 7'].join('\n');
const way = new Way(
  text,
  confirmed(
    [],
    [
      'kreisel/wank=control.roll.proportional',
      'kreisel/nick=control.pitch.proportional',
      'kreisel/gier=control.yaw.proportional',
    ],
  ),
);

const role = [
  'By its role: Proportional gain of roll (control.roll.proportional). Nobody knows its scale, so nothing is computed from it.',
  '- 10 % less than kreisel nick, which is 50',
  '- 50 % less than kreisel gier, which is 90',
].join('\n');

describe('a setting of which only its role is known', () => {
  it('stays the board’s own: it is proved, and no figure hangs on it', async () => {
    const { view, mustFix } = await way.including();
    assert.deepEqual([way.faults, mustFix], [[], []]);
    assert.equal(view.value('control.roll.proportional'), null);
    assert.deepEqual(unequal(way.proof(way.entries(view), text)), []);
  });

  it('is told under the cursor with how much more or less it is than others of its kind', async () => {
    const { view } = await way.includingWith('own.kreisel.wank = 45\n');
    const found = hover(snapshotOfView(view), { line: 1, character: 14 });
    assert.ok(plainText(found?.markdown ?? '').includes(`\n\n${role}`), found?.markdown);
  });

  it('is told so in the board’s text too', async () => {
    const { view } = await way.including();
    const layer = new LayerReader(view.catalog, way.profile).read(text);
    const place = { line: 0, character: 10 };
    const told = plainText(boardHover(layer, snapshotOfView(view), place, place)?.markdown ?? '');
    assert.equal(told, `wank · kreisel\n\nHere: 45\n\n${role}`);
  });

  it('is compared in per cent between two scripts, by its name', async () => {
    const before = await way.includingWith('');
    const after = await way.includingWith('own.kreisel.wank = 50\nown.lampe.farbe = 8\n');
    const { settings } = settingChanges(before.view, after.view);
    assert.deepEqual(
      settings.map(({ path, title, stage, change }) => [path, title, stage, change]),
      [
        ['own.kreisel.wank', 'Proportional gain of roll, by its role', 'tune', '11 % more'],
        ['own.lampe.farbe', "A setting of the board's own", 'remember', null],
      ],
    );
  });

  it('is told in per cent against what was last handed over', async () => {
    const before = await way.including();
    const since = way.record(way.entries(before.view));
    const { view } = await way.includingWith('own.kreisel.gier = 72\nown.lampe.farbe = 8\n');
    const { profile, captured } = way;
    const prepared = prepareBoardText({ profile, captured, view, findings: [], since, reason: null });
    assert.ok(
      prepared.report.includes(
        'Proportional gain of yaw, by its role: kreisel gier is 20 % less (90 before, 72 now).',
      ),
      prepared.report.join('\n'),
    );
    assert.equal(
      ownSettingsText(view, since),
      "4 settings of the board's own, 2 changed since the last hand-over (proportional gain of yaw 20 % less)",
    );
  });
});

describe('a change in per cent', () => {
  it('is that of the numbers, whatever stands behind them or parts their digits', () => {
    assert.equal(perCentChange('1.000 Hz', '1.100 Hz', ','), '10 % more');
    assert.equal(perCentChange('-20', '-30', '.'), '50 % less');
    assert.equal(perCentChange('3', '4', '.'), '33 % more');
  });

  it('is none from nothing, to the same, or of what is no number', () => {
    assert.equal(perCentChange('0', '5', '.'), null);
    assert.equal(perCentChange('5', '5.0', '.'), null);
    assert.equal(perCentChange('soft', '5', '.'), null);
  });
});
