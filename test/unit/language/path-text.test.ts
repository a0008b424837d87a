import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { Document } from '../../../server/src/language/document';
import { pathText, stepsOf } from '../../../server/src/language/path-text';

const step = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 8 }),
  fc.string({ unit: fc.constantFrom(...'ab01_-."\\\\ #=[]@\u00a0\u0301\u{1f6e0}\ud83d'), maxLength: 6 }),
);
const steps = fc.array(step, { minLength: 1, maxLength: 5 });
/** What can stand in a line. */
const inLine = steps.filter((names) => !/[\n\r]/.test(names.join('')));

describe('a path as text', () => {
  it('has quotes where a step is no plain name, and nowhere else', () => {
    const rows: readonly (readonly [readonly string[], string])[] = [
      [['gyro', 'filter', '1', 'cutoff'], 'gyro.filter.1.cutoff'],
      [['pack', '4s', 'cells'], 'pack.4s.cells'],
      [['own', 'PID α', 'roll'], 'own."PID α".roll'],
      [['own', 'a.b', ''], 'own."a.b".""'],
      [['own', 'say "so"', 'c:\\'], 'own."say \\"so\\""."c:\\\\"'],
      [['own', '-a', 'a-', 'a-1', '#2'], 'own."-a"."a-".a-1."#2"'],
    ];
    for (const [names, text] of rows) {
      assert.equal(pathText(names), text);
      assert.deepEqual(stepsOf(text), names);
    }
  });

  it('comes apart into the steps that it was made of, whatever they are', () => {
    fc.assert(fc.property(steps, (names) => assert.deepEqual(stepsOf(pathText(names)), names)));
  });

  it('is another one for other steps: nothing is folded or composed', () => {
    fc.assert(
      fc.property(steps, steps, (one, other) =>
        assert.equal(pathText(one) === pathText(other), JSON.stringify(one) === JSON.stringify(other)),
      ),
    );
    assert.notEqual(pathText(['é']), pathText(['e\u0301']));
  });

  it('comes apart somehow, whatever text it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'a."\\\\ ') }), (text) =>
        assert.ok(stepsOf(text).length > 0),
      ),
    );
  });

  it('names the same in a header, in a whole path and below its section', () => {
    fc.assert(
      fc.property(inLine, inLine, (group, name) => {
        const path = pathText(['own', ...group, ...name]);
        const text = `${path} = 1\n[${pathText(['own', ...group])}]\n${pathText(name)} = 1\n`;
        const lines = [...Document.of(text).lines()];
        assert.deepEqual(
          lines.map(({ settingPath }) => settingPath),
          [path, null, path, null],
        );
        const told = lines[0]?.statement;
        assert.deepEqual(told?.kind === 'setting' && told.path.names.map(({ text: one }) => one), [
          'own',
          ...group,
          ...name,
        ]);
      }),
    );
  });
});
