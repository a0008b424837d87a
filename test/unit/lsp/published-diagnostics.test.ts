import { strict as assert } from 'node:assert';
import { clientAbilities } from '../../../server/src/lsp/client-abilities';
import { diagnosticsFor } from '../../../server/src/lsp/convert/to-diagnostic';
import { Session } from '../../../server/src/lsp/session';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const uri = 'test:///work/main.craft';
const client = clientAbilities({ textDocument: { publishDiagnostics: { relatedInformation: true } } });

function opened(text: string): Session {
  const workspace = new Workspace({ catalog: testCatalog, fileSystem: new MemoryFiles() });
  workspace.openScript(uri, text, 1);
  return new Session(workspace, client, 'utf-16');
}

describe('findings as they are published', () => {
  it('are the same objects where an edit leaves them, and others where their line has moved', () => {
    const session = opened('wobble = 1\n\nwabble = 2\n');
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
    const session = opened(lines.join('\n'));
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
