import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { withAskedFirst } from '../../../server/src/sheet/asked-first';
import { type CheckedSide, type Comparison, compare } from '../../../server/src/sheet/compare/compare';
import { figureText } from '../../../server/src/sheet/which-pack';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');

function side(text: string, pack = 'sprint'): CheckedSide {
  const craft = craftOf(text, club);
  return { craft, pack, findings: findingsOf(craft), file: 'main.craft' };
}

/** What most are compared with, checked once: a comparison leaves a craft as it was. */
let knownRacer: CheckedSide | null = null;

function racerSide(): CheckedSide {
  knownRacer ??= side(racer);
  return knownRacer;
}

function compared(before: CheckedSide, after: CheckedSide): Comparison {
  return compare(before, after, findingsOf);
}

describe('a craft as it would be otherwise', () => {
  const asked = (line: string) =>
    withAskedFirst(compared(racerSide(), side(`${racer}\n${line}\n`))).matters.flatMap((matter) =>
      matter.kind === 'moved' ? [[matter.figure.id, matter.figure.turn]] : [],
    );

  it('is told by how far it gets where the wind alone is another, and by what matters of a filter', () => {
    assert.deepEqual(asked('[craft]\nwind = 6 m/s'), [['reach', 'worse']]);
    assert.ok(asked('[gyro.filter.1]\ncutoff = 120 Hz').length > 1);
  });
});

/** All figures that move, those that matter most among them. */
function figuresOf({ matters, figures }: Comparison) {
  return [...matters.flatMap((matter) => (matter.kind === 'moved' ? [matter.figure] : [])), ...figures];
}

/** All findings that come, those that matter most among them. */
function gainedOf({ matters, findings }: Comparison) {
  return [
    ...matters.flatMap((matter) => (matter.kind === 'gained' ? [matter.finding] : [])),
    ...findings.gained,
  ];
}

/** What one change does by itself. */
function aloneIn({ alone }: Comparison, path: string) {
  return alone.find(({ paths }) => paths.includes(path))?.effect;
}

function likely(text: string, figure: string, pack = 'sprint'): string {
  const found = figureOf(new CraftView(craftOf(text, club), pack), figure) ?? assert.fail(`no ${figure}`);
  return figureText(found);
}

function replaced(pattern: string | RegExp, by: string, text = racer): string {
  const changed = text.replace(pattern, by);
  assert.notEqual(changed, text);
  return changed;
}

describe('a comparison', () => {
  it('tells what differs among settings that only the board knows, as they are written', () => {
    const with1 = side(`${racer}[own]\n"gyro rate" = 8000\nmode = on\nstep = 1.0\nbuild = 1.10\n`);
    const other = side(
      `${racer}[own]\n"gyro rate" = 0x1F40\nmode = "on"\n"#ff" = 1,5\nstep = 1\nbuild = 1.1.0\n`,
    );
    const { settings } = compared(with1, other);
    assert.deepEqual(
      settings.map(({ path, before, after }) => [path, before.text, after.text]),
      [
        ['own."gyro rate"', '8000', '0x1F40'],
        ['own.build', '1.10', '1.1.0'],
        ['own."#ff"', null, '1,5'],
      ],
    );
  });

  it('of a craft with itself finds nothing', () => {
    const { settings, members, matters, alone, figures, findings } = compared(side(racer), side(racer));
    assert.deepEqual(
      { settings, members, matters, alone, figures, findings },
      {
        settings: [],
        members: [],
        matters: [],
        alone: [],
        figures: [],
        findings: { gained: [], lost: [] },
      },
    );
  });

  it('takes another unit, another layout and a comment for no difference', () => {
    const other = replaced('mass            = 212 g', 'mass = 0.212 kg # weighed');
    assert.deepEqual(compared(racerSide(), side(other)).settings, []);
  });

  it('tells of each setting what it alone does: the difference of two sheets', () => {
    const slower = replaced('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet');
    const both = replaced(/^kv( +)= 2900/m, 'kv$1= 2500', slower);
    const comparison = compared(racerSide(), side(both));
    assert.deepEqual(
      comparison.settings.map(({ path, before, after }) => [path, before.text, after.text]),
      [
        ['motor.kv', '2900 rpm/V', '2500 rpm/V'],
        ['gyro.filter.1.cutoff', '225 Hz', '135 Hz'],
      ],
    );
    const [kv, cutoff] = ['motor.kv', 'gyro.filter.1.cutoff'].map((path) => aloneIn(comparison, path));
    const delay = cutoff?.moved.find(({ id }) => id === 'gyro-filter-delay')?.packs[0];
    assert.equal(delay?.before?.text, likely(racer, 'gyro-filter-delay'));
    assert.equal(delay?.after?.text, likely(slower, 'gyro-filter-delay'));
    assert.ok((kv?.moved.length ?? 0) > 0);
    const hover = figuresOf(comparison).find(({ id }) => id === 'hover-throttle');
    assert.equal(hover?.packs[0]?.after?.text, likely(both, 'hover-throttle'));
    assert.equal(hover?.turn, 'worse');
  });

  it('goes in the order of the job, and worse comes first', () => {
    const other = replaced(
      'cutoff = 2.5 * quiet',
      'cutoff = 1.5 * quiet',
      replaced('order  = AETR', 'order = TAER', replaced('power        = 15 mW', 'power = 10 mW')),
    );
    const comparison = compared(racerSide(), side(other));
    assert.deepEqual(
      comparison.settings.map(({ stage }) => stage),
      ['obey', 'tune', 'see'],
    );
    const turns = comparison.figures.map(({ turn }) => turn === 'worse');
    assert.ok(turns.lastIndexOf(true) < turns.indexOf(false));
  });

  it('tells findings that come and go, and no change of numbers alone', () => {
    const weak = replaced(/^cells-limit( +)= 6/m, 'cells-limit$1= 5');
    const there = compared(racerSide(), side(weak));
    assert.deepEqual(
      gainedOf(there).map(({ id, level }) => [id, level]),
      [['turn/motor-cells', 'must-fix']],
    );
    assert.deepEqual(there.findings.gained, []);
    const back = compared(side(weak), side(racer));
    assert.deepEqual(
      back.matters.flatMap((matter) => (matter.kind === 'lost' ? [matter.finding.id] : [])),
      ['turn/motor-cells'],
    );
    assert.deepEqual(gainedOf(back), []);
  });

  it('marks findings that come of a change that is only half made', () => {
    const lower = replaced(
      /^warn-cell( +)= 3\.6 V/m,
      'warn-cell$1= 3.2 V',
      replaced(/^land-cell( +)= 3\.4 V/m, 'land-cell$1= 3.1 V'),
    );
    const comparison = compared(racerSide(), side(lower));
    const warn = aloneIn(comparison, 'power.warn-cell')?.gained ?? [];
    const below = warn.find(({ id }) => id === 'power/warn-below-land');
    assert.equal(below?.isOnlyAlone, true);
    assert.ok(gainedOf(comparison).every(({ id }) => id !== 'power/warn-below-land'));
    const weak = replaced(/^cells-limit( +)= 6/m, 'cells-limit$1= 5', lower);
    const cells = aloneIn(compared(racerSide(), side(weak)), 'motor.cells-limit');
    assert.equal(cells?.gained[0]?.isOnlyAlone ?? false, false);
  });

  it('judges what belongs together as one change, and one change not twice', () => {
    const sharper = replaced(
      /^kind( +)= .*\ncutoff( +)= 2\.5 \* quiet/m,
      'kind$1= first-order\ncutoff$2= 1.5 * quiet',
    );
    const one = compared(racerSide(), side(sharper));
    assert.ok(one.settings.length === 2 && one.alone.length === 0);
    const both = compared(racerSide(), side(replaced(/^kv( +)= 2900/m, 'kv$1= 2500', sharper)));
    assert.deepEqual(
      both.alone.map(({ paths }) => paths),
      [['motor.kv'], ['gyro.filter.1.kind', 'gyro.filter.1.cutoff']],
    );
  });

  it('tells first what matters most, at most three, and nothing twice', () => {
    const heavy = replaced(
      /^mass( +)= 212 g/m,
      'mass$1= 320 g',
      replaced(/^cells-limit( +)= 6/m, 'cells-limit$1= 5'),
    );
    const { matters, figures, totals } = compared(racerSide(), side(heavy));
    assert.equal(matters.length, 3);
    assert.deepEqual([matters[0]?.kind, matters[2]?.kind], ['gained', 'moved']);
    const first = matters.flatMap((matter) => (matter.kind === 'moved' ? [matter.figure.id] : []));
    assert.ok(figures.every(({ id }) => !first.includes(id)));
    assert.ok(matters.every((matter) => matter.kind !== 'moved' || matter.figure.turn === 'worse'));
    assert.equal(totals.better + totals.worse + totals.otherwise, figures.length + first.length);
  });

  it('tells a member that only one has in one row', () => {
    const more = `${racer}\n[switch.locate]\nchannel = 8\non = 1350..1650 us\n`;
    assert.deepEqual(
      compared(racerSide(), side(more)).members.map(({ path, is }) => [path, is]),
      [['switch.locate', 'added']],
    );
    assert.deepEqual(
      compared(side(more), side(racer)).members.map(({ path, is }) => [path, is]),
      [['switch.locate', 'removed']],
    );
  });

  it('says what holds where a line is left out', () => {
    const silent = replaced(/^idle( +)= 6 %\n/m, '');
    const high = replaced(/^idle( +)= 6 %/m, 'idle$1= 9 %');
    const [setting] = compared(side(silent), side(high)).settings;
    assert.deepEqual(
      [setting?.path, setting?.before.isAssumed, setting?.after.text],
      ['motor.idle', true, '9 %'],
    );
    const back = compared(side(high), side(silent));
    assert.equal(back.settings[0]?.after.isAssumed, true);
    assert.ok(figuresOf(back).length > 0);
  });

  it('of two packs puts the packs in view beside each other, and overlays with them', () => {
    const { settings, before, after } = compared(racerSide(), side(racer, 'cruise'));
    assert.deepEqual([before.pack, after.pack], ['sprint', 'cruise']);
    const told = new Map(
      settings.map(({ path, ...values }) => [path, [values.before.text, values.after.text]]),
    );
    assert.deepEqual(told.get('pack.<pack in view>.cells'), ['6', '4']);
    assert.deepEqual(told.get('gyro.filter.1.cutoff'), ['225 Hz', '180 Hz']);
    assert.equal(
      [...told.keys()].some((path) => path.startsWith('pack.sprint')),
      false,
    );
  });

  it('leaves both crafts as they were', () => {
    const [one, other] = [side(racer), side(replaced('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet'))];
    const texts = [one, other].map(({ craft }) => craft.root.document.text());
    compared(one, other);
    assert.deepEqual(
      [one, other].map(({ craft }) => craft.root.document.text()),
      texts,
    );
  });
});
