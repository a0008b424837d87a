import { strict as assert } from 'node:assert';
import { CraftView } from '../../../server/src/craft/view';
import { craftOf } from '../../support/findings';
import { held } from '../../support/held';

describe('a craft', () => {
  it('names its packs in the order of their sections, not of the alphabet', () => {
    assert.deepEqual(craftOf('[pack.sprint]\n[pack.cruise]\n[pack.all-day]\n').packs(), [
      'sprint',
      'cruise',
      'all-day',
    ]);
  });

  it('names the packs of its own script before those of included ones', () => {
    const files = { 'club.craft': '[pack.club]\n' };
    assert.deepEqual(craftOf('include "club.craft"\n[pack.own]\n', files).packs(), ['own', 'club']);
  });

  it('names packs without a section of their own as well', () => {
    assert.deepEqual(craftOf('pack.b.cells = 4\npack.a.cells = 4\n[pack.z]\n').packs(), ['z', 'a', 'b']);
    assert.deepEqual(craftOf('[gyro]\n').packsOrNone(), [null]);
  });

  it('has no members that their collection can’t have', () => {
    const craft = craftOf(
      'gyro.filter.2.kind = notch\ngyro.filter.40.kind = notch\n[switch.loop]\nchannel = 6\n',
    );
    assert.deepEqual(craft.members('gyro.filter'), ['2']);
    assert.deepEqual(craft.members('switch'), []);
  });

  it('knows its board, once one is chosen that there is', () => {
    assert.equal(craftOf('[board]\nprofile = heron').board()?.name, 'heron');
    assert.equal(craftOf('[board]\nprofile = hreon').board(), undefined);
    assert.equal(craftOf('').board(), undefined);
  });

  it('knows the words that depend on it', () => {
    const craft = craftOf('[board]\nprofile = wren\n[pack.sprint]\n');
    const words = (path: string) => craft.words(craft.catalog.parameter(path) ?? assert.fail(path));
    assert.ok(words('receiver.port')?.includes('uart2'));
    assert.deepEqual(words('flight.first.pack'), ['sprint']);
    assert.deepEqual(words('derivative.input'), ['turning-rate', 'error']);
    assert.equal(words('craft.mass'), null);
    const bare = craftOf('');
    assert.equal(bare.words(bare.catalog.parameter('receiver.port') ?? assert.fail()), null);
  });

  it('knows every constant of its scripts once', () => {
    const files = { 'a.craft': 'let low = 1\nlet high = 2\n' };
    assert.deepEqual(craftOf('include "a.craft"\nlet low = 3\n', files).constantNames(), ['low', 'high']);
  });

  it('holds one setting for all packs until a line says otherwise for one of them', () => {
    const craft = craftOf('[pack.a]\n[pack.b]\n[gyro.filter.1]\ncutoff = 90 Hz\n');
    const path = 'gyro.filter.1.cutoff';
    assert.equal(craft.setting(path, 'a'), craft.setting(path, 'b'));
    const end = { line: 4, character: 0 };
    const overlay = '[gyro.filter.1 @ b]\ncutoff = 80 Hz\n';
    craft.changed(craft.root.edit([{ start: end, end, text: overlay }]));
    assert.deepEqual([held(craft, path, 'a'), held(craft, path, 'b')], ['90 Hz', '80 Hz']);
    craft.changed(craft.root.edit([{ start: end, end: { line: 6, character: 0 }, text: '' }]));
    assert.deepEqual([held(craft, path, 'a'), held(craft, path, 'b')], ['90 Hz', '90 Hz']);
  });

  it('holds what its lines say after every change', () => {
    const craft = craftOf('let low = 60 Hz\n[gyro.filter.1]\ncutoff = 2 * low\n');
    assert.equal(held(craft, 'gyro.filter.1.cutoff'), '120 Hz');
    const at = { line: 0, character: 10 };
    craft.changed(craft.root.edit([{ start: at, end: { line: 0, character: 12 }, text: '45' }]));
    assert.equal(held(craft, 'gyro.filter.1.cutoff'), '90 Hz');
    craft.changed(
      craft.root.edit([{ start: { line: 1, character: 0 }, end: { line: 3, character: 0 }, text: '' }]),
    );
    assert.equal(held(craft, 'gyro.filter.1.cutoff'), 'not set');
  });

  it('holds nothing for a parameter that does not exist', () => {
    const craft = craftOf('wobble = 1\n__proto__ = 1\n');
    assert.equal(craft.setting('wobble', null), undefined);
    assert.equal(craft.setting('__proto__', null), undefined);
    assert.equal(craft.setting('', null), undefined);
  });

  it('knows a broken value as set, so that nothing complains that it is missing', () => {
    const craft = craftOf('[gyro.filter.1]\ncutoff = 1,5,5\n');
    assert.equal(held(craft, 'gyro.filter.1.cutoff'), 'unknown');
    assert.ok(new CraftView(craft, null).isSet('gyro.filter.1.cutoff'));
  });
});

describe('names that a craft looks up', () => {
  const craft = craftOf(
    'let low = 60 Hz\nlet word = 1 Hz / 0\n[pack.a]\ncells = 4\n[gyro.filter.1]\nkind = none\n',
  );
  const scope = craft.scope(null);

  it('have a value, or none, each in its way', () => {
    const kinds = [
      scope.constant('low'),
      scope.constant('word'),
      scope.constant('lwo'),
      scope.parameter('pack.a.cells'),
      scope.parameter('gyro.filter.1.kind'),
      scope.parameter('gyro.rate'),
      scope.parameter('gyro.raet'),
    ].map(({ kind }) => kind);
    assert.deepEqual(kinds, [
      'value',
      'unknown-value',
      'missing',
      'value',
      'not-a-quantity',
      'missing',
      'missing',
    ]);
  });

  it('come with what was probably meant', () => {
    const constant = scope.constant('lwo');
    assert.deepEqual(constant.kind === 'missing' && constant.near(), ['low']);
    const parameter = scope.parameter('gyro.raet');
    assert.equal(parameter.kind === 'missing' && parameter.near()[0], 'gyro.rate');
  });
});

describe('a craft with a pack in view', () => {
  const text =
    '[pack.a]\ncells = 4\n[receiver]\nreversed = [roll]\ninverted = on\nsmoothing = 5 ms\n[switch.arm]\non = 1750..2050 us\n' +
    '[craft]\nname = "Wagtail"\n[overlay.name]\nplace = [1, 2]\n[stick.roll]\ncurve = 0 % -> 0 deg/s, 100 % -> 360 deg/s\n' +
    '[gyro.filter.1]\nkind = none\n[gyro.filter.1 @ a]\nkind = butterworth\n';
  const view = new CraftView(craftOf(text), 'a');

  it('tells each kind of value, in SI', () => {
    assert.equal(view.count('pack.a.cells'), 4);
    assert.deepEqual(view.words('receiver.reversed'), ['roll']);
    assert.equal(view.flag('receiver.inverted'), true);
    assert.equal(view.quantity('receiver.smoothing'), 0.005);
    assert.equal(view.text('craft.name'), 'Wagtail');
    assert.equal(view.word('gyro.filter.1.kind'), 'butterworth');
    const range = view.range('switch.arm.on');
    assert.ok(range && Math.abs(range.low - 1750e-6) < 1e-12 && Math.abs(range.high - 2050e-6) < 1e-12);
    const place = view.place('overlay.name.place');
    assert.deepEqual([place?.row, place?.column], [1, 2]);
    assert.ok(Math.abs((view.curve('stick.roll.curve')?.at(-1)?.y ?? 0) - 2 * Math.PI) < 1e-12);
  });

  it('tells nothing for the wrong kind, or for what is neither set nor assumed', () => {
    assert.equal(view.count('craft.name'), null);
    assert.equal(view.quantity('gyro.rate'), null);
    assert.equal(view.text('no.such'), null);
    assert.equal(view.shown('gyro.rate'), 'not set');
  });

  it('assumes the default of the catalogue and notes that it did', () => {
    const fresh = new CraftView(craftOf(''), null);
    assert.deepEqual(fresh.assumed, []);
    assert.ok(Math.abs((fresh.quantity('receiver.centre') ?? 0) - 1500e-6) < 1e-12);
    assert.equal(fresh.shown('receiver.centre'), '1500 us');
    assert.deepEqual(fresh.assumed, ['receiver.centre']);
    assert.ok(!fresh.isSet('receiver.centre'));
  });

  it('assumes no default where a line sets the parameter to something unknown', () => {
    const broken = new CraftView(craftOf('[receiver]\ncentre = 1,5,0\n'), null);
    assert.equal(broken.quantity('receiver.centre'), null);
    assert.deepEqual(broken.assumed, []);
  });

  it('reads every default of the catalogue as a value', () => {
    const fresh = new CraftView(craftOf(''), null);
    for (const { name, parameter } of fresh.catalog.parameters.values()) {
      if (!parameter.default) continue;
      const members: Readonly<Record<string, string>> = {
        function: 'arm',
        element: 'name',
        device: 'camera',
        number: '1',
        situation: 'fast-turn',
      };
      const path = name.replace(/<([a-z]+)>/g, (_, placeholder: string) => members[placeholder] ?? 'one');
      assert.notEqual(fresh.shown(path), 'not set', `${name} = ${parameter.default.value}`);
    }
  });

  it('writes values for scripts and for people', () => {
    assert.equal(view.exact(0.0051234567, 'ms'), '5.1234567 ms');
    assert.equal(view.short(0.0051234567, 'ms'), '5.12 ms');
    assert.equal(view.shown('switch.arm.on'), '1750..2050 us');
    assert.equal(view.shown('receiver.reversed'), '[roll]');
    assert.equal(view.shown('craft.name'), '"Wagtail"');
  });
});
