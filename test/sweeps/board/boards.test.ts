import assert from 'node:assert/strict';
import fc from 'fast-check';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { settingKey } from '../../../server/src/board/listing/setting-key';
import { testCatalog } from '../../support/catalog';
import { listingOf, onBoard, profile, racer, viewOf, written, writtenBy } from '../../support/demo-boards';

for (const name of ['wren', 'heron']) {
  describe(`a capture from ${name} with settings that nobody knows`, () => {
    it('comes back with every setting, whatever it holds', () => {
      const word = fc.stringMatching(/^[a-z][a-z-]{0,8}$/);
      const value = fc.stringMatching(/^[A-Za-z0-9.,+:'-]{1,12}$/);
      const { forms } = profile(name).text;
      fc.assert(
        fc.property(fc.array(fc.tuple(word, word, value), { minLength: 1, maxLength: 20 }), (settings) => {
          const lines = settings.flatMap(([group, own, text]) =>
            [...forms.headings, forms.lines[0]?.form ?? ''].map((source) =>
              source
                .replace('{group}', group)
                .replace('{name}', own)
                .replace('{value}', () => text),
            ),
          );
          const capture = lines.join('\n');
          const made = makeScript(profile(name), testCatalog, capture);
          const again = writtenBy(name, viewOf(made.text, null)).text;
          const held = (all: string) =>
            listingOf(name, all)
              .settings.map((setting) => `${settingKey(setting)} ${setting.value}`)
              .sort();
          assert.deepEqual(held(again), held(capture));
        }),
        { numRuns: 200 },
      );
    });
  });
}

describe('what goes to a board', () => {
  it('never does so whatever a pilot writes into a text, a name or a comment (K04)', () => {
    const hidden = fc.constantFrom(
      '\u202e',
      '\u2066',
      '\u0000',
      '\u001b[31m',
      '\u0085',
      '\u2028',
      '\u200b',
      '"',
      '\\',
      ';',
      '~',
    );
    const nastyText = fc.array(fc.oneof(hidden, fc.string({ unit: 'grapheme', maxLength: 4 })), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(nastyText, fc.constantFrom('wren', 'heron'), (parts, name) => {
        const text = parts.join('').replace(/[\r\n"\\]/g, ' ');
        const script = `${onBoard(racer, name).replace('"Sandmartin"', `"${text}"`)}\n# ${text}\n`;
        const { lines } = written(name, script, 'sprint');
        for (const line of lines.map((one) => one.replace(/\n$/, ''))) {
          assert.ok(!/[\p{Cc}\u202A-\u202E\u2066-\u2069\u2028\u2029]/u.test(line), JSON.stringify(line));
          assert.ok(line.length <= (profile(name).text.longestLine ?? Number.POSITIVE_INFINITY), line);
          assert.ok(!/\d[eE][+-]?\d/.test(line), line);
        }
      }),
      { numRuns: 200 },
    );
  });
});
