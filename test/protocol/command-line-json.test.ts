import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { exactSchema, outputForms } from '../../server/build/output-schemas';
import { propsoff } from '../support/command-line';
import { faults } from '../support/faults';
import { assertFits, validatorFor } from '../support/json-schema';
import { type Scratch, withScratch } from '../support/scratch';

const demo = resolve('test/demo');
const read = (name: string) => readFileSync(join(demo, name), 'utf8');
const files = {
  'club-habits.craft': read('club-habits.craft'),
  'my.craft': read('sandmartin.craft'),
  'old.craft': read('wagtail.craft'),
  'flights/before-the-rain.csv': read('flights/before-the-rain.csv'),
  'flight.csv': read('flights/before-the-rain.csv'),
  'before.csv': read('flights/before-the-rain.csv'),
  'faulty.craft': faults.map(({ text }) => text).join('\n'),
};

/** What is printed must fit the form exactly, and the published schema as well. */
function assertPrinted(command: string, stdout: string): void {
  const printed: unknown = JSON.parse(stdout);
  const form = outputForms.get(command);
  assert.ok(form, command);
  assertFits(validatorFor(exactSchema(form)), printed);
  const published = readFileSync(resolve(`schemas/output/${command}.schema.json`), 'utf8');
  assertFits(validatorFor(JSON.parse(published) as object), printed);
}

/** Captures of the racer's board: whole, cut off, and one that says something else. */
function captured(scratch: Scratch) {
  const { stdout } = propsoff(['board-text', 'my.craft'], { cwd: scratch.path });
  const lines = stdout.split('\n');
  scratch.write('captured.txt', stdout);
  scratch.write('half.txt', lines.slice(0, lines.length / 2).join('\n'));
  scratch.write(
    'other.txt',
    [...lines, ...lines.slice(3, 6), 'no such line'].join('\n').replace('AETR', 'TAER'),
  );
}

const printed: readonly (readonly string[])[] = [
  ['check', 'my.craft', 'old.craft'],
  ['check', 'faulty.craft'],
  ['check', resolve('test/faults')],
  ['sheet', 'my.craft', '--recorded'],
  ['sheet', 'old.craft', '--pack', 'single'],
  ['sheet', 'club-habits.craft'],
  ['sheet', 'faulty.craft'],
  ['compare', 'old.craft', 'my.craft'],
  ['compare', 'my.craft', 'club-habits.craft'],
  ['compare', 'my.craft', '--pack', 'sprint', '--pack', 'cruise'],
  ['find', 'my.craft'],
  ['find', 'my.craft', '--pack', 'cruise', '--move', 'filters', '--tones', '90'],
  ['find', 'my.craft', '--pack', 'cruise', '--recording', 'flight.csv'],
  ['channels', '--pilots', '5', 'my.craft'],
  ['channels', '--pilots', '12', 'my.craft'],
  ['recording', 'flight.csv', '--craft', 'my.craft'],
  ['recording', 'flight.csv', '--compare', 'before.csv'],
  ['recording', 'flight.csv', '--columns'],
  ['explain', 'gyro.filter.1.cutoff'],
  ['explain', 'receiver.link'],
  ['explain', 'wire/port-shared'],
  ['explain', 'tune/derivative-unfiltered'],
  ['explain', 'gyro'],
  ['explain', 'cutoff'],
  ['explain', 'pack'],
  ['bench-card', 'my.craft'],
  ['bench-card', 'old.craft'],
  ['prove', 'my.craft', 'captured.txt'],
  ['prove', 'my.craft', 'half.txt'],
  ['prove', 'my.craft', 'other.txt'],
  [
    'learn',
    'captured.txt',
    '--sure',
    '--confirm',
    'no/such=gyro.filter.1.cutoff unit Hz step 1 Hz value 2',
    '--role',
    'other=motor.idle',
  ],
];

describe('what the command line prints as JSON', () => {
  it('has a published schema for every command that can', () => {
    const commands = [...propsoff(['--help']).stdout.matchAll(/^ {2}([a-z]+(?:-[a-z]+)*) {2,}[a-z]/gm)];
    const withJson = commands
      .map(([, name = '']) => name)
      .filter((name) => propsoff([name, '--help']).stdout.includes('--json '));
    assert.deepEqual(withJson.sort(), [...outputForms.keys()].sort());
  });

  it('fits its schema, whatever is looked at', () =>
    withScratch(files, async (scratch) => {
      captured(scratch);
      for (const args of printed) {
        const { stdout, status, stderr } = propsoff([...args, '--json'], { cwd: scratch.path });
        assert.notEqual(status, 2, `${args.join(' ')}: ${stderr}`);
        assertPrinted(args[0] ?? '', stdout);
      }
    })).timeout(300_000);

  it('tells additions with problems in the same form', () =>
    withScratch({ 'a.craft': '', 'propsoff/odd.json': '{ "gears": 3 }' }, async ({ path }) => {
      const { stdout, status } = propsoff(['check', '--json'], { cwd: path });
      assert.equal(status, 1);
      assertPrinted('check', stdout);
    }));

  it('is refused by the schema where it is something else', () => {
    const form = outputForms.get('check');
    assert.ok(form);
    const counts = { 'must-fix': 0, risk: 0, note: 0, tidy: 0 };
    const exact = validatorFor(exactSchema(form));
    const published = validatorFor(
      JSON.parse(readFileSync(resolve('schemas/output/check.schema.json'), 'utf8')) as object,
    );
    assert.deepEqual(exact({ version: 1, files: [], replaced: [], counts }), []);
    assert.notDeepEqual(exact({ version: 1, files: [], replaced: [], counts, more: 1 }), []);
    assert.deepEqual(published({ version: 1, files: [], replaced: [], counts, more: 1 }), []);
    for (const wrong of [
      { version: 2, files: [], replaced: [], counts },
      { version: 1, files: [{}], replaced: [], counts },
      [],
    ])
      assert.notDeepEqual(published(wrong), []);
  });
});
