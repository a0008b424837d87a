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
});
