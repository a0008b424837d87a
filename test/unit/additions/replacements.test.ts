import assert from 'node:assert/strict';
import { profileOf } from '../../../server/src/board/profile/profile';
import type { Catalog } from '../../../server/src/catalog/catalog';
import { replacementText } from '../../../server/src/catalog/replacements';
import { CraftView } from '../../../server/src/craft/view';
import { prepareBoardText } from '../../../server/src/features/board/hand-over';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../../server/src/sheet/bench-card/markdown';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import { canItFly } from '../../../server/src/sheet/can-it-fly';
import { packColumns } from '../../../server/src/sheet/which-pack';
import { additionsOf, problemsOf } from '../../support/additions';
import type { Written } from '../../support/buzzer';
import { OwnCraft } from '../../support/own-checks';
import { shippedData } from '../catalog/shipped';

const { bundle } = shippedData();

/** A rule in the place of a must-fix that is built in, as a workspace would write it. */
const warnBelowLand = {
  id: 'power/warn-below-land',
  level: 'risk',
  scope: 'pack',
  title: 'The warning comes before the landing voltage',
  message: 'The warning at {power.warn-cell} comes too late.',
  advice: 'Warn earlier than that.',
  when: ['power.warn-cell <= power.land-cell'],
  at: 'power.warn-cell',
};

const late = '[power]\nwarn-cell = 3.3 V\nland-cell = 3.4 V\n';

function club(told: Written) {
  return additionsOf({ 'propsoff/club.json': told });
}

function replacing(change: Written, id = warnBelowLand.id) {
  return club({ replaces: [id], checks: [{ ...warnBelowLand, id, ...change }] });
}

function told(told: ReturnType<typeof club>) {
  return problemsOf(told, 'propsoff/club.json').map(([id, marked, message]) => [
    id,
    marked.replace(/\s+/g, ' '),
    message,
  ]);
}

function levelsUnder(catalog: Catalog, text: string, group = 'power'): readonly string[] {
  return new OwnCraft(catalog, text).findings(group).map(({ check, level }) => `${check.id} ${level}`);
}

describe('a rule that replaces a must-fix', () => {
  it('may make a risk of it, which is told', () => {
    const additions = replacing({});
    assert.deepEqual(told(additions), []);
    assert.deepEqual(levelsUnder(additions.catalog, late), ['power/warn-below-land risk']);
    assert.deepEqual(additions.catalog.replacements.map(replacementText), [
      'propsoff/club.json replaces the check power/warn-below-land: it was a must-fix and is now a risk.',
    ]);
  });

  for (const level of ['note', 'tidy']) {
    it(`may not make a ${level} of it`, () => {
      const additions = replacing({ level });
      assert.deepEqual(told(additions), [
        [
          'addition/name',
          `"${level}"`,
          'power/warn-below-land is a must-fix: a replacement may make a risk of it, and no less',
        ],
      ]);
      assert.deepEqual(levelsUnder(additions.catalog, late), ['power/warn-below-land must-fix']);
      assert.deepEqual(additions.catalog.replacements, []);
    });
  }

  const idle: readonly (readonly [title: string, when: readonly string[], why: string])[] = [
    [
      'is never true',
      ['power.warn-cell <= power.land-cell', 'power.warn-cell > 100 V'],
      'no script can trigger this rule',
    ],
    [
      'denies itself',
      ['power.warn-cell <= power.land-cell', 'power.land-cell < power.warn-cell'],
      'no script can trigger this rule',
    ],
    [
      'compares a thing with itself',
      ['power.warn-cell > power.warn-cell'],
      'no script can trigger this rule',
    ],
    ['looks at nothing', ['2 > 1'], 'this rule looks at nothing of a craft'],
    [
      'looks at other settings',
      ['motor.idle > 20 %'],
      'this rule looks at nothing of what the one that it replaces looks at (power.warn-cell, power.land-cell)',
    ],
  ];
  for (const [title, when, why] of idle) {
    it(`is not in force where it ${title}, and is told`, () => {
      const additions = replacing({ when });
      assert.deepEqual(
        told(additions).map(([id, , message]) => [id, message]),
        [['addition/never', `${why}: power/warn-below-land stays in force as it is built in`]],
      );
      assert.deepEqual(levelsUnder(additions.catalog, late), ['power/warn-below-land must-fix']);
      assert.deepEqual(additions.catalog.replacements, []);
    });
  }

  it('speaks alone where the one that it replaces was code', () => {
    const text = `[pack.a]\nchemistry = lipo\ncells = 4\n[power]\nland-cell = 2.8 V\n`;
    const bare = additionsOf({}).catalog;
    assert.deepEqual(levelsUnder(bare, text), ['power/land-below-empty must-fix']);
    const additions = replacing(
      {
        when: ['power.land-cell < 2.9 V'],
        at: 'power.land-cell',
        message: 'Below 2.9 V is {power.land-cell}.',
      },
      'power/land-below-empty',
    );
    assert.deepEqual(told(additions), []);
    const found = new OwnCraft(additions.catalog, text).findings('power');
    assert.deepEqual(
      found.map(({ check, level, values }) => [check.id, level, values['power.land-cell']]),
      [['power/land-below-empty', 'risk', '2.8 V']],
    );
  });

  it('can’t take the place of what is told as a line is read', () => {
    const additions = replacing({ level: 'must-fix' }, 'line/outside-range');
    assert.deepEqual(
      told(additions).map(([id, marked, message]) => [id, marked, message]),
      [
        [
          'addition/name',
          '"line/outside-range"',
          'line/outside-range is told as a line is read: no rule can replace it',
        ],
      ],
    );
  });
});

describe('what replaces something else that must-fixes are about', () => {
  const idle = bundle.parameters
    .flatMap(({ parameters }) => parameters)
    .find(({ name }) => name === 'motor.idle');
  const lipo = bundle.chemistries.find(({ name }) => name === 'lipo');
  const link = bundle.links.find(({ supply }) => supply.join() === '3.3 V');
  const union = bundle.regions.find(({ name }) => name === 'european-union');
  assert.ok(idle && lipo && link && union);
  const [permit] = union.permits;
  assert.ok(permit);

  const rows: readonly (readonly [title: string, told: Written, marked: RegExp, message: RegExp])[] = [
    [
      'a setting with what is impossible as usual',
      { replaces: ['motor.idle'], parameters: [{ ...idle, range: ['0 %', '90 %'], usual: ['2 %', '60 %'] }] },
      /60 %/,
      /outside of 0\.5 % to 30 % motor\.idle is refused when built in/,
    ],
    [
      'a setting of another kind',
      {
        replaces: ['motor.idle'],
        parameters: [
          {
            ...idle,
            kind: 'count',
            range: [0, 9],
            usual: [1, 5],
            dimension: undefined,
            unit: undefined,
            default: null,
          },
        ],
      },
      /"count"/,
      /motor\.idle is a quantity for the rules that are built in/,
    ],
    [
      'a setting that measures something else',
      {
        replaces: ['motor.idle'],
        parameters: [
          {
            ...idle,
            dimension: 'time',
            unit: 'ms',
            range: ['0 ms', '9 ms'],
            usual: ['1 ms', '5 ms'],
            default: null,
          },
        ],
      },
      /"time"/,
      /motor\.idle measures a share for the rules that are built in/,
    ],
    [
      'a fuller cell',
      { replaces: ['lipo'], chemistries: [{ ...lipo, full: '4.4 V' }] },
      /"4\.4 V"/,
      /lipo is full at 4\.2 V/,
    ],
    [
      'an emptier cell',
      { replaces: ['lipo'], chemistries: [{ ...lipo, empty: '2.5 V' }] },
      /"2\.5 V"/,
      /lipo is empty at 3 V/,
    ],
    [
      'a link of more volts',
      { replaces: [link.name], links: [{ ...link, supply: ['5 V'] }] },
      /"5 V"/,
      /takes 3\.3 V/,
    ],
    [
      'a link turned round',
      { replaces: [link.name], links: [{ ...link, inverted: !link.inverted }] },
      /true|false/,
      /^inverted of/,
    ],
    [
      'a region that opens more',
      { replaces: ['european-union'], regions: [{ ...union, permits: [{ ...permit, limit: '1 W' }] }] },
      /"1 W"/,
      /opens more than european-union does/,
    ],
  ];
  for (const [title, file, marked, message] of rows) {
    it(`is refused at its place: ${title}`, () => {
      const [[, at, said] = [], ...more] = told(club(file));
      assert.deepEqual(more, []);
      assert.match(at ?? '', marked);
      assert.match(said ?? '', message);
    });
  }

  it('is in use where it is stricter, and named', () => {
    const additions = club({
      replaces: ['lipo', 'european-union', 'motor.idle'],
      chemistries: [{ ...lipo, full: '4.15 V' }],
      regions: [{ ...union, permits: [{ ...permit, limit: '1 mW' }] }],
      parameters: [{ ...idle, usual: ['4 %', '8 %'], default: null }],
    });
    assert.deepEqual(told(additions), []);
    assert.deepEqual(additions.catalog.replacements.map(replacementText), [
      'propsoff/club.json replaces the parameter motor.idle.',
      'propsoff/club.json replaces the chemistry lipo.',
      'propsoff/club.json replaces the region european-union.',
    ]);
  });
});

describe('what a workspace replaces is named', () => {
  const { catalog } = replacing({});
  const line =
    'propsoff/club.json replaces the check power/warn-below-land: it was a must-fix and is now a risk.';
  const { craft } = new OwnCraft(
    catalog,
    `[craft]\nname = "Sandpiper"\n[board]\nprofile = wren\n[motor]\nidle = 5 %\n`,
  );

  it('in the sheet, beside the answer', () => {
    const sheet = canItFly(craft, [], { packs: packColumns(craft), notKnown: [] });
    assert.deepEqual(sheet.replaced, [line]);
    assert.equal(sheet.answer, 'nothing found to mend, 1 replaced by the workspace');
  });

  it('on the bench card', () => {
    const card = benchCard(craft, []);
    assert.deepEqual(card.replaced, [line]);
    assert.match(
      benchCardMarkdown(card),
      /## Replaced by the workspace\n\n- propsoff\/club\.json replaces the check/,
    );
    assert.match(
      benchCardPage(card),
      /<h2>Replaced by the workspace<\/h2>\n<ul><li>propsoff\/club\.json replaces/,
    );
  });

  it('in the text that is handed over, and beside it', () => {
    const board = catalog.board('wren');
    const profile = board === undefined ? null : profileOf(board);
    assert.ok(profile);
    const view = new CraftView(craft, null);
    const { written, report } = prepareBoardText({
      profile,
      captured: null,
      view,
      findings: [],
      since: null,
      reason: null,
    });
    const [comment = ''] = profile.text.forms.comments;
    const said = written.lines
      .filter((one) => one.startsWith(comment))
      .map((one) => one.slice(comment.length).trim())
      .join(' ');
    assert.ok(said.includes(line), said);
    assert.equal(report[0], line);
  });

  it('nowhere where there is nothing', () => {
    const bare = new OwnCraft(additionsOf({}).catalog, '[craft]\nname = "Sandpiper"\n').craft;
    const { answer, replaced } = canItFly(bare, [], { packs: packColumns(bare), notKnown: [] });
    assert.deepEqual(replaced, []);
    assert.equal(answer, 'nothing found to mend');
    assert.doesNotMatch(benchCardMarkdown(benchCard(bare, [])), /Replaced/);
  });
});
