import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { learnedSettings } from '../../../server/src/board/learn/learned-settings';
import { proposals } from '../../../server/src/board/learn/propose/propose';
import { readListing } from '../../../server/src/board/listing/read-listing';
import type { Catalog } from '../../../server/src/catalog/catalog';
import { suggestParameters } from '../../../server/src/catalog/suggest';
import { explainCheck, explainParameter } from '../../../server/src/features/hover/explain';
import { additionsOf, problemsOf } from '../../support/additions';
import { buzzer, sodiumIon, textOf, type Written } from '../../support/buzzer';
import { OwnCraft } from '../../support/own-checks';

const [tune] = buzzer.parameters;
const [shrill] = buzzer.checks;

function foundUnder(catalog: Catalog, text: string): readonly string[] {
  const craft = new OwnCraft(catalog, text);
  return [...craft.findings('buzzer'), ...craft.findings('line')].map(({ check }) => check.id);
}

describe('words of a board that a workspace adds', () => {
  const spanish = {
    words: [
      { concept: 'idle', words: { es: ['vacio'] } },
      { concept: 'gyro', words: { es: ['giroscopo'] } },
      { concept: 'cutoff', words: { es: ['corte'] } },
      { concept: 'wobble', words: { es: ['bamboleo'] }, near: ['filter'] },
    ],
  };
  const proposedBy = ({ catalog }: { readonly catalog: Catalog }, listing: string) =>
    proposals(learnedSettings(readListing(listing, null)), catalog).map((one) => one?.parameter);
  const listing = 'giroscopo lpf 1 corte = 200\nmotor vacio = 55\n';

  it('are known in names of settings, beside those that were known', () => {
    const additions = additionsOf({ 'spanish.json': spanish });
    assert.deepEqual(problemsOf(additions, 'spanish.json'), []);
    const [cutoff, idle] = proposedBy(additions, listing);
    assert.deepEqual([cutoff, idle], ['gyro.filter.<number>.cutoff', 'motor.idle']);
    assert.deepEqual(proposedBy(additions, 'motor idle = 4\n'), ['motor.idle']);
    assert.notEqual(proposedBy(additionsOf({}), listing)[1], 'motor.idle');
  });

  it('name concepts that there are', () => {
    const wrong = { words: [{ concept: 'wobble', words: { es: ['bamboleo'] }, near: ['shiver'] }] };
    const told = problemsOf(additionsOf({ 'spanish.json': wrong }), 'spanish.json');
    assert.deepEqual(
      told.map(([, at, message]) => [at, message]),
      [['"shiver"', 'there is no concept shiver']],
    );
  });
});

describe('a setting that a workspace adds', () => {
  const additions = additionsOf({ 'buzzer.json': buzzer });
  const { catalog } = additions;

  it('is one like any other, and what is not told of it is said to be untold', () => {
    assert.deepEqual(problemsOf(additions, 'buzzer.json'), []);
    const story = explainParameter(catalog, 'buzzer.tune') ?? '';
    for (const part of [/Pitch of the buzzer/, /2 kHz/, /off/, /Nothing is written down/, /this workspace/])
      assert.match(story, part);
  });

  it('is checked like any other', () => {
    const checked = (value: string) => foundUnder(catalog, `[buzzer]\ntune = ${value}\n`);
    assert.deepEqual(checked('2.5 kHz'), []);
    assert.deepEqual(checked('off'), []);
    assert.deepEqual(checked('3.5 kHz'), ['buzzer/shrill']);
    assert.deepEqual(checked('20 kHz'), ['line/outside-range']);
    assert.deepEqual(checked('3 ms'), ['line/wrong-dimension']);
    assert.deepEqual(checked('loud'), ['line/unknown-constant']);
  });

  it('is found by what it is also called, and by a slip', () => {
    const near = (name: string) =>
      suggestParameters(catalog, `buzzer.${name}`, 'buzzer').map(({ path }) => path);
    assert.deepEqual(near('beeper-note'), ['buzzer.tune']);
    assert.deepEqual(near('tone'), ['buzzer.tune']);
  });

  it('is named in return by what it is related to', () => {
    assert.ok(catalog.parameters.get('find.device')?.parameter.related.includes('buzzer.tune'));
  });

  it('brings a rule that explains itself', () => {
    assert.match(explainCheck(catalog, 'buzzer/shrill') ?? '', /heard from afar/);
  });

  it('may be one of a single member, and not one that stands for the same path as another', () => {
    const faultsOf = (name: string) => {
      const grown = additionsOf({ 'more.json': { parameters: [{ ...tune, name, related: [] }] } });
      return { grown, told: problemsOf(grown, 'more.json') };
    };
    const { grown, told } = faultsOf('control.when.fast-turn.tone');
    assert.deepEqual(told, []);
    assert.ok(grown.catalog.parameter('control.when.fast-turn.tone'));
    assert.equal(grown.catalog.parameter('control.when.high-throttle.tone'), undefined);
    assert.match(
      faultsOf('control.when.fast-turn.integral').told.join(),
      /control\.when\.<situation>\.integral stands for/,
    );
    assert.match(
      faultsOf('control.when.<situation>.from').told.join(),
      /control\.when\.zero-throttle\.from stands for/,
    );
    assert.match(
      faultsOf('control.when.climbing.tone').told.join(),
      /<situation> was expected in place of climbing/,
    );
  });

  it('may open a group of its own', () => {
    const kite = { parameters: [{ ...tune, name: 'kite.line', related: [] }] };
    const grown = additionsOf({ 'kite.json': kite }).catalog;
    assert.equal(grown.groups.get('kite')?.title, 'Kite');
    assert.ok(grown.isSection('kite'));
  });
});

describe('words, links, chemistries and regions that a workspace adds', () => {
  it('are taken where the built-in ones are', () => {
    const { catalog, problems } = additionsOf({
      'more.json': {
        choices: [
          { parameter: 'craft.purpose', name: 'crop-survey', summary: 'Looks at fields from above, slowly.' },
        ],
        chemistries: [sodiumIon],
      },
    });
    assert.deepEqual([...problems.values()].flat(), []);
    assert.deepEqual(
      foundUnder(catalog, '[craft]\npurpose = crop-survey\n[pack.a]\nchemistry = sodium-ion\n'),
      [],
    );
  });
});

describe('a file that is broken (F02)', () => {
  const rows: readonly (readonly [title: string, told: Written | string, said: readonly string[]])[] = [
    ['no JSON', '{ "checks": [ }', ['addition/not-json', '}', 'a value was expected']],
    ['a comment', '{ // mine\n}', ['addition/not-json', '// mine', 'JSON takes no comments']],
    ['empty', '', ['addition/not-json', '', 'the file is empty: {} adds nothing']],
    [
      'a name twice',
      '{"checks": [], "checks": []}',
      ['addition/not-json', '"checks"', '"checks" stands twice in one object'],
    ],
    ['an unknown field', { gears: 3 }, ['addition/shape', '"gears"', '"gears" is not known here']],
    [
      'an unknown kind',
      { parameters: [{ ...tune, kind: 'speed' }] },
      [
        'addition/shape',
        '"speed"',
        'kind is one of: quantity, count, flag, word, words, range, curve, place, text, date',
      ],
    ],
    [
      'a field of the wrong type',
      { parameters: [{ ...tune, title: 3 }] },
      ['addition/shape', '3', 'a text in double quotes was expected for title'],
    ],
    [
      'a name with an underscore',
      { parameters: [{ ...tune, name: 'buzzer.buzzer_tune' }] },
      [
        'addition/shape',
        '"buzzer.buzzer_tune"',
        'name is not in the form of a name: small letters, with hyphens between words',
      ],
    ],
    [
      'a setting of the board’s own',
      { parameters: [{ ...tune, name: 'own.buzzer-tune' }] },
      [
        'addition/reference',
        '"own.buzzer-tune"',
        'what stands under own is kept as the board writes it: choose another group, such as buzzer.tune',
      ],
    ],
    [
      'a rule about a setting of the board’s own',
      { checks: [{ ...shrill, when: ['own.buzzer-tune > 3 kHz'] }] },
      [
        'addition/reference',
        '"own.buzzer-tune > 3 kHz"',
        'own.buzzer-tune is kept as the board writes it, and no rule can read it',
      ],
    ],
    [
      'a quantity in no unit',
      { parameters: [{ ...tune, range: ['1 blink', '10 kHz'] }] },
      ['addition/value', '"1 blink"', '"1 blink" is not a quantity'],
    ],
    [
      'a unit of another dimension',
      { parameters: [{ ...tune, unit: 'ms' }] },
      ['addition/value', '"ms"', '"ms" is not a frequency'],
    ],
    [
      'a range that falls',
      { parameters: [{ ...tune, usual: ['4 kHz', '2 kHz'] }] },
      ['addition/value', '[\n        "4 kHz",\n        "2 kHz"\n      ]', '4 kHz to 2 kHz does not rise'],
    ],
    [
      'a name that is built in',
      { parameters: [{ ...tune, name: 'gyro.rate' }] },
      [
        'addition/name',
        '"gyro.rate"',
        'the parameter gyro.rate is built in: name it under "replaces" to have yours instead',
      ],
    ],
    [
      'a replacement of nothing',
      { ...buzzer, replaces: ['buzzer.tune'] },
      ['addition/name', '"buzzer.tune"', 'there is no buzzer.tune to replace'],
    ],
    [
      'a relation that leads nowhere',
      { parameters: [{ ...tune, related: ['find.devise'] }] },
      ['addition/reference', '"find.devise"', 'there is no parameter find.devise'],
    ],
    [
      'a section as a setting',
      { parameters: [{ ...tune, name: 'stick.roll' }] },
      ['addition/reference', '"stick.roll"', "stick.roll is a section and can't be set itself"],
    ],
    [
      'a word for a number',
      { choices: [{ parameter: 'gyro.rate', name: 'fast', summary: 'As fast as the board can.' }] },
      ['addition/reference', '"gyro.rate"', 'gyro.rate takes no words'],
    ],
    [
      'a rule about a name that there is not',
      { checks: [{ ...shrill, when: ['buzzer.tune > 3 kHz'] }] },
      ['addition/reference', '"buzzer.tune > 3 kHz"', 'there is no parameter buzzer.tune'],
    ],
    [
      'a rule with a comparison of unlike things',
      { ...buzzer, checks: [{ ...shrill, when: ['buzzer.tune > 3 V'] }] },
      ['addition/reference', '"buzzer.tune > 3 V"', 'a frequency is compared with a voltage'],
    ],
    [
      'a rule that no script can trigger',
      { ...buzzer, checks: [{ ...shrill, when: ['buzzer.tune > 20 kHz'] }] },
      ['addition/never', '[\n        "buzzer.tune > 20 kHz"\n      ]', 'no script can trigger this rule'],
    ],
  ];
  for (const [title, told, [id, marked, message]] of rows) {
    it(`says so once, at its place: ${title}`, () => {
      const said = problemsOf(additionsOf({ 'a.json': told }), 'a.json');
      assert.deepEqual(said[0], [id, marked, message]);
      assert.ok(id === 'addition/reference' || said.length === 1, JSON.stringify(said));
    });
  }

  it('leaves in use what it said when it was last fine (F01)', () => {
    const additions = additionsOf({ 'a.json': buzzer });
    const { catalog } = additions;
    const update = (text: string) => additions.update(new Map([['a.json', text]]));
    for (const text of ['{', '{"gears": 3}', textOf({ parameters: [{ ...tune, related: ['a.b'] }] })]) {
      assert.ok(update(text));
      assert.equal(problemsOf(additions, 'a.json').length, 1);
      assert.ok(additions.catalog.parameter('buzzer.tune'), text);
    }
    assert.ok(update(textOf({ ...buzzer, checks: [] })));
    assert.deepEqual(problemsOf(additions, 'a.json'), []);
    assert.equal(additions.catalog.check('buzzer/shrill'), undefined);
    assert.ok(catalog.check('buzzer/shrill'), 'an older catalogue stays as it was');
  });

  it('takes nothing else with it', () => {
    const additions = additionsOf({ 'a.json': '{', 'b.json': buzzer });
    assert.ok(additions.catalog.parameter('buzzer.tune'));
    assert.deepEqual(problemsOf(additions, 'b.json'), []);
  });

  it('never throws, whatever it holds', () => {
    for (const text of [
      '[]',
      '3',
      'null',
      '"x"',
      '['.repeat(100_000),
      '{"__proto__": {"checks": 1}}',
      '\u0000',
    ])
      assert.equal(problemsOf(additionsOf({ 'a.json': text }), 'a.json').length, 1, text.slice(0, 20));
  });
});

describe('several files', () => {
  it('may name what another one adds', () => {
    const additions = additionsOf({
      'a.json': { checks: buzzer.checks },
      'b.json': { parameters: buzzer.parameters },
    });
    assert.deepEqual([...additions.problems.values()].flat(), []);
  });

  it('may not add the same name, and the second one says where the first stands', () => {
    const additions = additionsOf({ 'a.json': buzzer, 'b.json': { parameters: buzzer.parameters } });
    assert.deepEqual(problemsOf(additions, 'a.json'), []);
    const [[, marked, message] = []] = problemsOf(additions, 'b.json');
    assert.equal(marked, '"buzzer.tune"');
    assert.match(message ?? '', /stands in a\.json already/);
  });

  it('lose what only a file that went away held', () => {
    const additions = additionsOf({
      'a.json': { checks: buzzer.checks },
      'b.json': { parameters: buzzer.parameters },
    });
    assert.ok(additions.update(new Map([['b.json', null]])));
    assert.equal(additions.catalog.check('buzzer/shrill'), undefined);
    assert.match(problemsOf(additions, 'a.json')[0]?.[2] ?? '', /no parameter buzzer\.tune/);
    assert.ok(additions.update(new Map([['b.json', textOf({ parameters: buzzer.parameters })]])));
    assert.ok(additions.catalog.check('buzzer/shrill'));
  });

  it('change nothing when they say what they said', () => {
    const additions = additionsOf({ 'a.json': buzzer });
    assert.equal(additions.update(new Map([['a.json', textOf(buzzer)]])), false);
  });
});

describe('what is built in', () => {
  it('may be replaced when it is said', () => {
    const own = { ...tune, name: 'gyro.rate', title: 'Our own sampling', related: [] };
    const { catalog, problems } = additionsOf({ 'a.json': { replaces: ['gyro.rate'], parameters: [own] } });
    assert.deepEqual([...problems.values()].flat(), []);
    assert.equal(catalog.parameters.get('gyro.rate')?.parameter.title, 'Our own sampling');
  });
});

describe('the example in the documents', () => {
  it('is one that works', () => {
    const [, example = ''] =
      /```json\n([\s\S]*?)```/.exec(readFileSync('schemas/ADDITIONS.md', 'utf8')) ?? [];
    const additions = additionsOf({ 'buzzer.json': example });
    assert.deepEqual(problemsOf(additions, 'buzzer.json'), []);
    assert.ok(additions.catalog.check('buzzer/shrill'));
  });
});
