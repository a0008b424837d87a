import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import * as vscode from 'vscode';
import { closeAll, foundIn, openText, untilFound } from './scripts';
import { until } from './until';

/** The processes of the language server that this editor started. */
function servers(): readonly number[] {
  const table = execFileSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' });
  return table.split('\n').flatMap((row) => {
    const [, pid = '', parent = '', args = ''] = /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(row) ?? [];
    const isOurs = Number(parent) === process.pid && /dist[/\\]server\.js/.test(args);
    return isOurs ? [Number(pid)] : [];
  });
}

describe('when the checks crash', () => {
  afterEach(closeAll);

  it('they come back by themselves, with what was typed meanwhile (I01)', async () => {
    const document = await openText('[arming]\ntilt-limt = 60 deg\n');
    await untilFound(document, 'line/unknown-name');
    const [server, ...others] = servers();
    assert.ok(server !== undefined && others.length === 0, `${servers().length} servers run`);
    process.kill(server, 'SIGKILL');
    await until('the server to be gone', () => !servers().includes(server));
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, new vscode.Position(2, 0), 'needs = [nothing-such]\n');
    assert.ok(await vscode.workspace.applyEdit(edit));
    await untilFound(document, 'line/unknown-word');
    assert.ok(foundIn(document).includes('line/unknown-name'));
    assert.equal(servers().length, 1);
  });
});
