import assert from 'node:assert/strict';
import fc from 'fast-check';
import { compileTemplate, type Field, fill, match, type Template } from '../../../server/src/board/template';

function compiled(source: string, fields: readonly Field[] = ['name', 'value']): Template {
  const made = compileTemplate(source, fields, ['group', 'name', 'value', 'index', 'board', 'count']);
  assert.equal(made.kind, 'template', source);
  return (made as { template: Template }).template;
}

function read(source: string, line: string): Readonly<Record<string, string>> | null {
  const found = match(compiled(source), line);
  return found === null ? null : Object.fromEntries([...found].map(([field, { text }]) => [field, text]));
}

function fault(source: string): string {
  const made = compileTemplate(source, ['name', 'value'], ['group', 'name', 'value', 'index']);
  return made.kind === 'fault' ? made.message : '';
}

describe('a template', () => {
  it('is refused with the reason where it can’t be told apart or lacks a field', () => {
    assert.match(fault('{name}'), /\{value\} is missing/);
    assert.match(fault('{name}{value}'), /nothing between/);
    assert.match(fault('{name} {name} {value}'), /stands there twice/);
    assert.match(fault('{name} {value} {colour}'), /\{colour\} is no field/);
    assert.match(fault('{name} = {value'), /is missing|brace/);
  });

  it('reads the shapes that listings come in', () => {
    assert.deepEqual(read('{name} = {value}', 'cut   =  12 '), { name: 'cut', value: '12' });
    assert.deepEqual(read('{name} {value}', 'cut 12 34'), { name: 'cut', value: '12 34' });
    assert.deepEqual(read('{group}/{name} <- {value}', 'calm/cut <- 12'), {
      group: 'calm',
      name: 'cut',
      value: '12',
    });
    assert.deepEqual(read('{index},{name},{value},', '7,cut,12,'), { index: '7', name: 'cut', value: '12' });
    assert.deepEqual(read('{group}: {name} -> {value}', 'a: b -> c -> d'), {
      group: 'a',
      name: 'b',
      value: 'c -> d',
    });
    assert.deepEqual(read('{name} is {value};', 'this thing is 5.5;'), { name: 'this thing', value: '5.5' });
    assert.deepEqual(read('{value} for {name}', '12 for the cut'), { value: '12', name: 'the cut' });
  });

  it('reads nothing out of a line of another form', () => {
    for (const line of ['', 'cut', '= 12', 'cut 12', 'cut == ', 'is 5;', 'this is 5'])
      assert.equal(read('{name} is {value};', line), null, line);
  });

  it('keeps words as words: "is" inside a word is no literal', () => {
    assert.deepEqual(read('{name} is {value};', 'disc noise is 3;'), { name: 'disc noise', value: '3' });
  });

  it('tells where its fields stand', () => {
    const found = match(compiled('{name} = {value}'), '  cut = 12');
    assert.deepEqual(found?.get('value'), { start: 8, end: 10, text: '12' });
  });

  it('gives back what it was filled with, for any names and values', () => {
    const word = fc.stringMatching(/^[a-z][a-z-]{0,12}$/);
    const value = fc
      .string({ minLength: 1, maxLength: 30 })
      .filter((text) => text.trim() === text && text !== '');
    const templates = [
      '{name} = {value}',
      '{group}/{name} <- {value}',
      '{index} {name} {value}',
      '({name}) {value} |',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...templates), word, word, value, (source, group, name, text) => {
        fc.pre(!/[\t\n\r\v\f]|\s{2}|[^\S ]/.test(text));
        const found = match(
          compiled(source),
          fill(compiled(source), { group, name, value: text, index: '3' }),
        );
        assert.equal(found?.get('name')?.text, name);
        assert.equal(found?.get('value')?.text, text);
      }),
      { numRuns: 500 },
    );
  });

  it('costs no more than the line is long, whatever stands in it', () => {
    // One that tried every place against every other would not come back from these.
    const long = 50_000;
    for (const line of ['a'.repeat(long), '='.repeat(long), ' = '.repeat(long), `a ${'< '.repeat(long)}`]) {
      for (const source of [
        '{name} = {value}',
        '{group}/{name} <- {value}',
        '{name} {value}',
        '{name} =={value}==',
      ]) {
        assert.doesNotThrow(() => match(compiled(source), line));
      }
    }
  });
});
