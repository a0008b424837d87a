import { strict as assert } from 'node:assert';
import { match } from '../../../../server/src/board/listing/forms/match';
import { filled, templateFault, templateOf } from '../../../../server/src/board/listing/forms/template';

/** The fields of a line by a template, `name: tern, value: 5`; null where it does not fit. */
function fields(template: string, line: string): string | null {
  const found = match(templateOf(template), line);
  return found === null
    ? null
    : [...found].map(([field, { start, end }]) => `${field}: ${line.slice(start, end)}`).join(', ');
}

describe('a template of a line', () => {
  const cases: readonly (readonly [template: string, line: string, fields: string | null])[] = [
    ['{name} = {value}', 'tern = 5', 'name: tern, value: 5'],
    ['{name} = {value}', '  tern   =\t5  ', 'name: tern, value: 5'],
    ['{name} = {value}', 'tern=5', null],
    ['{name}={value}', 'tern = 5', 'name: tern, value: 5'],
    ['{name} = {value}', 'a=b = 5', 'name: a=b, value: 5'],
    ['{name} = {value}', '"a = b" = 5', 'name: "a = b", value: 5'],
    ['{name}: {value}', 'tern (low: 3): 5', 'name: tern (low: 3), value: 5'],
    ['{name} = {value}', 'tern =', 'name: tern, value: '],
    ['{name} = {value}', ' = 5', null],
    ['{name} ... {value}', 'tern ......... 5', 'name: tern, value: 5'],
    ['== {group} ==', '== north ==', 'group: north'],
    ['=== {group} ===', '======= north =======', 'group: north'],
    ['[{group}]', '[north]', 'group: north'],
    ['[{group}]', 'tern [north]', null],
    ['{group} {', 'north {', 'group: north'],
    ['in {group}:', 'in north coast:', 'group: north coast'],
    ['{name} is {value};', 'tern is set to 5;', 'name: tern, value: set to 5'],
    ['{name} is {value};', 'tern is 5', 'name: tern, value: 5'],
    ['{name} is {value};', 'tern is', 'name: tern, value: '],
    ['{index}) {name}: {value}', '12) tern: 5', 'index: 12, name: tern, value: 5'],
    ['{name}\t{value}', 'tern gain\t5', 'name: tern gain, value: 5'],
    ['{name}\t{value}', 'tern gain 5', null],
    ['{name}  {value}', 'tern gain   5', 'name: tern gain, value: 5'],
    ['{value} -> {name}', '5 -> tern', 'name: tern, value: 5'],
    [
      '{name} of {group} = {value} [{range}]',
      'gain of tern = 5 [0..9]',
      'name: gain, group: tern, range: 0..9, value: 5',
    ],
  ];
  for (const [template, line, expected] of cases)
    it(`${JSON.stringify(template)} on ${JSON.stringify(line)}`, () =>
      assert.equal(fields(template, line), expected));

  it('is filled in, with literal braces left as they are', () => {
    const values = new Map([
      ['name', 'tern'],
      ['value', '5'],
    ] as const);
    assert.equal(filled(templateOf('{name} = {value} {soft|steep}'), values), 'tern = 5 {soft|steep}');
  });

  it('has faults that are told', () => {
    const fault = (source: string) => templateFault(source, ['name'], ['name', 'value']);
    assert.equal(fault('{name} {value}'), null);
    assert.equal(fault('{value}'), 'needs the field {name}');
    assert.equal(fault('{name} {group}'), 'cannot hold {group}; it may hold {name}, {value}');
    assert.equal(fault('{name} {name}'), 'holds {name} twice');
    assert.equal(
      fault('{name}{value}'),
      'has two fields with nothing between them, which cannot be told apart',
    );
  });
});
