import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { compileCatalog } from '../../../server/build/compile-catalog';

const root = mkdtempSync(join(tmpdir(), 'catalogue-'));
cpSync(join(process.cwd(), 'schemas'), join(root, 'schemas'), { recursive: true });
after(() => rmSync(root, { recursive: true }));

/** The problems after one replacement in one file of a copy of the data, which is then put back. */
function problemsAfter(file: string, before: string, after: string): readonly string[] {
  const path = join(root, 'schemas', file);
  const text = readFileSync(path, 'utf8');
  assert.ok(text.includes(before), `${file} has no ${before}`);
  writeFileSync(path, text.replace(before, after));
  try {
    return compileCatalog(root).problems;
  } finally {
    writeFileSync(path, text);
  }
}

function includes(problems: readonly string[], ...parts: readonly string[]): void {
  const found = problems.some((problem) => parts.every((part) => problem.includes(part)));
  assert.ok(found, `${parts.join(' … ')} is not in\n${problems.join('\n')}`);
}

describe('compiling broken data', () => {
  it('says the file and the place of text that is no JSON', () => {
    includes(problemsAfter('grids.json', '"rows": 16', '"rows": 16,,'), 'schemas/grids.json', 'JSON');
  });

  it('says the place of a wrong value, with the name of its row', () => {
    const problems = problemsAfter('links.json', '"dataBits": 8', '"dataBits": "eight"');
    includes(problems, 'schemas/links.json', 'links[0] "sbus".dataBits', 'expected number');
  });

  it('says of a file that does not fit only that, and nothing of what other files then miss', () => {
    const problems = problemsAfter('parameters/motor.json', '"stage": "', '"stage": "un');
    assert.equal(problems.length, 1, problems.join('\n'));
    includes(problems, 'schemas/parameters/motor.json', 'stage');
  });

  it('refuses a field that the model does not know', () => {
    const problems = problemsAfter('signals.json', '"kind": "digital"', '"kind": "digital", "speed": 3');
    includes(problems, 'schemas/signals.json', 'signals[0] "dshot150"', 'speed');
  });

  it('refuses a quantity of another dimension, and one in no unit', () => {
    includes(problemsAfter('links.json', '"9 ms"', '"9 V"'), 'sbus.frameInterval', '"9 V" is not a time');
    includes(problemsAfter('links.json', '"9 ms"', '"9 blinks"'), 'sbus.frameInterval', '"9 blinks"');
    includes(problemsAfter('links.json', '"100000 baud"', '"100000 Hz"'), 'sbus.baud', 'is not a line speed');
  });

  it('refuses voltages that do not rise', () => {
    const problems = problemsAfter('chemistries.json', '"land": "3.4 V"', '"land": "3.7 V"');
    includes(problems, 'lipo.warn', '3.6 V must lie above land, which is 3.7 V');
  });

  it('refuses a region without its caution', () => {
    const problems = problemsAfter('regions.json', 'this is no legal advice', 'this is all there is');
    includes(problems, 'european-union', 'no legal advice');
  });

  it('refuses a board that counts in another dimension, or names a setting that there is not', () => {
    const file = 'boards/heron.json';
    const step = /"step": "([^"]+ Hz)"/.exec(readFileSync(join('schemas', file), 'utf8'))?.[1] ?? '';
    includes(problemsAfter(file, `"step": "${step}"`, '"step": "3 kg"'), '.step', '"3 kg" is not');
    includes(problemsAfter(file, '"gyro.rate"', '"gyro.nothing"'), 'parameter', 'no parameter gyro.nothing');
  });

  it('refuses a drawing of a board with more motors than outputs, one twice, or one that there is not', () => {
    const drawnAs = (motors: string) =>
      problemsAfter('boards/wren.json', '["rear-left", "rear-right", "front-left", "front-right"]', motors);
    includes(drawnAs('["front", "rear", "left", "right", "rear-left"]'), '5 motors at 4 outputs');
    includes(drawnAs('["front", "rear", "front"]'), 'motorsAsPrinted', 'motor front stands there twice');
    includes(drawnAs('["front", "sideways"]'), 'motorsAsPrinted[1]', 'sideways is no place of a motor');
  });

  it('refuses names of a board that can’t be told apart', () => {
    const file = 'boards/heron.json';
    includes(problemsAfter(file, '"gyro rate"', '"gyro is rate"'), '.name', 'can’t be told apart');
    includes(problemsAfter(file, '"gyro rate"', '"gyro full scale"'), '.name', 'stands in the profile twice');
    includes(problemsAfter(file, '"{name} is {value};"', '"{value};"'), 'text.forms.lines[0]', '{name}');
    includes(problemsAfter(file, '"in {group}:"', '"in section:"'), 'text.forms.headings[0]', '{group}');
    includes(problemsAfter(file, '"nothing"', '"speed"'), 'spelled', 'can’t be told apart in a list');
  });

  it('refuses a relation that leads nowhere or does not lead back', () => {
    const broken = (related: string) => problemsWithRelated(related);
    includes(broken('gyro.nothing'), 'gyro.rate.related', 'there is no gyro.nothing');
    includes(
      broken('flight.<name>.note'),
      'gyro.rate.related',
      'flight.<name>.note does not name it in return',
    );
    includes(broken('gyro.rate'), 'gyro.rate.related', 'names itself');
  });

  it('refuses members that have a setting twice, lack what nobody has, or stand apart from their part', () => {
    const from = '"control.when.fast-turn.from"';
    const own = problemsAfter(
      'parameters/control.json',
      `"name": ${from}`,
      '"name": "control.when.fast-turn.integral"',
    );
    includes(own, 'control.when.fast-turn.integral', 'every situation has it already');
    const lacking = problemsAfter('collections.json', '"setting": "derivative"', '"setting": "feeling"');
    includes(lacking, 'control.when.motors-short', 'lacks feeling, which no situation has');
    const both = problemsAfter('collections.json', '"setting": "derivative"', '"setting": "gives-way"');
    includes(both, 'control.when.motors-short', 'both has and lacks gives-way');
    const unknown = problemsAfter(
      'parameters/control.json',
      `"name": ${from}`,
      '"name": "control.when.climbing.from"',
    );
    includes(unknown, 'expected <situation> in place of climbing');
  });

  it('refuses a sentence that stands in the catalogue already', () => {
    const problems = problemsAfter(
      'grids.json',
      'What is placed on row 13 or below, counted from 0, is not drawn at all.',
      'The character grid over a picture of 625 lines: three rows more than over the other standard.',
    );
    includes(problems, 'ntsc', 'stands in pal already');
  });
});

/** Changes one field of `gyro.rate` in a copy of the data. */
function problemsWith(change: (parameter: Record<string, unknown>) => void): readonly string[] {
  const text = readFileSync(join(process.cwd(), 'schemas/parameters/gyro.json'), 'utf8');
  const data = JSON.parse(text);
  change(data.parameters.find((one: { name: string }) => one.name === 'gyro.rate'));
  return problemsAfter('parameters/gyro.json', text, JSON.stringify(data));
}

function problemsWithRelated(related: string): readonly string[] {
  return problemsWith((parameter) => {
    parameter.related = [related];
  });
}

describe('compiling broken words', () => {
  it('refuses a unit that no script could have', () => {
    const spelled = (unit: string) => problemsAfter('signals.json', '160 us', `160 ${unit}`);
    for (const unit of ['µs', 'US', 'microseconds'])
      includes(spelled(unit), 'dshot300', `"0 ${unit}" should have its unit as u`);
    assert.deepEqual(spelled('ms'), []);
  });

  it('refuses words of the trade that lead nowhere, and a concept that stands there twice', () => {
    const file = 'trade-words.json';
    includes(problemsAfter(file, '"near": ["filter"]', '"near": ["sieve"]'), 'there is no concept sieve');
    includes(
      problemsAfter(file, '"gyro.rate": [', '"gyro.nothing": ['),
      'there is no parameter gyro.nothing',
    );
    const twice = problemsAfter(file, '"concept": "pitch"', '"concept": "roll"');
    includes(twice, 'the concept roll stands there twice');
  });

  it('refuses units of recordings that there are not, and sizes that nothing can have', () => {
    const file = 'recordings.json';
    includes(problemsAfter(file, '"unit": "mA"', '"unit": "milli"'), file, 'there is no unit milli');
    includes(
      problemsAfter(file, '"sizes": [2.5, 70]', '"sizes": [70, 2.5]'),
      'voltage: its sizes go from 70',
    );
    includes(problemsAfter(file, '"idle": 1000', '"idle": 3000'), 'idle lies at full');
    includes(problemsAfter(file, '"kind": "frames"', '"kind": "time"'), 'the kind time stands there twice');
    includes(problemsAfter(file, '"percent", ', '"rpm", '), 'the word rpm says two units');
  });

  it('refuses what people call a parameter that there is not, and words that stand there twice', () => {
    const file = 'synonyms.json';
    includes(problemsAfter(file, '"craft.mass":', '"craft.mas":'), file, 'craft.mas: there is no such');
    includes(problemsAfter(file, '"dry weight"', '"weight"'), 'craft.mass: "weight" stands there twice');
  });

  it('refuses a default whose reason stands elsewhere', () => {
    const problems = problemsWith((parameter) => {
      parameter.default = { value: '4 kHz', from: 'no sound carrier is sent unless asked for' };
    });
    includes(problems, 'stands in', 'gyro.rate');
  });
});

describe('compiling broken parameters', () => {
  it('refuses a usual range that reaches outside the range', () => {
    const problems = problemsWith((parameter) => {
      parameter.usual = ['1 mHz', '900 GHz'];
    });
    includes(problems, 'gyro.rate.usual');
  });

  it('refuses a default outside the usual range, and one of another dimension', () => {
    const assumed = (value: string) =>
      problemsWith((parameter) => {
        parameter.default = { value, from: 'this test' };
      });
    includes(assumed('100 GHz'), 'gyro.rate.default', 'outside the usual range');
    includes(assumed('3 V'), 'gyro.rate.default', 'is not a frequency');
  });

  it('refuses a summary of a few words', () => {
    const problems = problemsWith((parameter) => {
      parameter.summary = 'How often it is read.';
    });
    includes(problems, 'gyro.rate.summary', 'has 5 words');
  });

  it('refuses a name in the wrong file, twice, or with a wrong placeholder', () => {
    const renamed = (name: string) =>
      problemsWith((parameter) => {
        parameter.name = name;
      });
    includes(renamed('motor.speed-of-reading'), 'must begin with "gyro."');
    includes(renamed('gyro.full-scale'), 'gyro.full-scale', 'twice');
    includes(renamed('gyro.filter.<name>.depth'), 'expected <number> in place of <name>');
    includes(renamed('gyro.<name>.depth'), 'follows no collection');
    includes(renamed('gyro.filter'), 'is a setting and cannot hold');
  });

  it('refuses common values that a line would be refused for, and unmarked ends', () => {
    const file = 'common-values.json';
    const instead = (value: string) => problemsAfter(file, '"value": "0.5 s"', `"value": "${value}"`);
    includes(instead('0.5 V'), 'arming.delay', '0.5 V is refused', 'line/wrong-dimension');
    includes(instead('40 s'), 'arming.delay', '40 s is refused', 'line/outside-range');
    includes(instead('5 s'), 'arming.delay', '5 s is an end, and does not say so');
    includes(instead('1 s'), 'arming.delay', '1 s stands there twice');
    includes(problemsAfter(file, '"crsf"', '"crsq"'), 'receiver.link', 'crsq is refused');
    includes(problemsAfter(file, '"arming.delay"', '"arming.never"'), 'there is no such parameter');
    includes(problemsAfter(file, '"race"', '"rave"'), 'rave is no purpose');
  });
});
