import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { clientAbilities } from '../../../server/src/lsp/client-abilities';
import type { Encoding } from '../../../server/src/lsp/convert/encoding';
import { diagnosticsFor } from '../../../server/src/lsp/convert/to-diagnostic';
import { Session } from '../../../server/src/lsp/session';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { craftLine } from '../../support/craft-scripts';
import { edited, lineEdits } from '../../support/line-edits';
import { MemoryFiles } from '../../support/memory-files';

const uri = 'test:///work/main.craft';
const client = clientAbilities({ textDocument: { publishDiagnostics: { relatedInformation: true } } });

function opened(text: string, encoding: Encoding): Session {
  const workspace = new Workspace({ catalog: testCatalog, fileSystem: new MemoryFiles() });
  workspace.openScript(uri, text, 1);
  return new Session(workspace, client, encoding);
}

/** Lines with something wrong behind characters that each encoding counts differently, and some with more to it. */
const faultyLine = fc.constantFrom(
  'wobble = 1',
  '"é😀" = 2',
  'gyro.rate = "é😀" 3',
  'rate = 1,5 kHz # é😀 accept',
  '[gyro]',
  '[motor]',
  'kv = 1950 rpm/V',
  'gyro.filter.1.cutoff = 90 ms',
  '# fine',
);
const line = fc.oneof(faultyLine, craftLine);
const edit = lineEdits(line, { at: 60, over: 3, lines: 4 });

describe('findings as they are published', () => {
  for (const encoding of ['utf-8', 'utf-16', 'utf-32'] as const) {
    it(`are those of a script that was opened just now, after any edits, in ${encoding}`, () => {
      fc.assert(
        fc.property(fc.array(line, { maxLength: 60 }), fc.array(edit, { maxLength: 8 }), (lines, edits) => {
          const session = opened(lines.join('\n'), encoding);
          for (const _ of edited(session.workspace, uri, edits)) {
            const now = session.workspace.get(uri)?.script.document.text() ?? '';
            assert.deepEqual(diagnosticsFor(session, uri), diagnosticsFor(opened(now, encoding), uri));
          }
        }),
        { numRuns: 40 },
      );
    });
  }

  it('are the same objects where an edit leaves them, and others where their line has moved', () => {
    const session = opened('wobble = 1\n\nwabble = 2\n', 'utf-16');
    const before = diagnosticsFor(session, uri);
    const place = { line: 1, character: 0 };
    session.workspace.change(uri, [{ start: place, end: place, text: '\n' }], 2);
    const after = diagnosticsFor(session, uri);
    assert.equal(after.length, 2);
    assert.equal(after[0], before[0]);
    assert.equal(before[1]?.range.start.line, 2);
    assert.deepEqual(after[1], { ...before[1], range: after[1]?.range });
    assert.equal(after[1]?.range.start.line, 3);
  });

  it('are the worst of very many, in the order of the script among equals', () => {
    const lines = Array.from({ length: 900 }, (_, index) => (index % 3 === 0 ? `wobble-${index} = 1` : '?'));
    const session = opened(lines.join('\n'), 'utf-16');
    const findings = session.workspace.findings(uri);
    const worst = ['must-fix', 'risk', 'note', 'tidy']
      .flatMap((level) => findings.filter((finding) => finding.level === level))
      .slice(0, 500);
    const [note, ...shown] = diagnosticsFor(session, uri);
    assert.match(String(note?.message), new RegExp(`^${findings.length - 500} more `));
    assert.deepEqual(
      shown.map(({ code, range }) => [code, range.start.line]),
      worst.map(({ check, place }) => [check.id, place.script.lineNumber(place.line)]),
    );
  });
});
