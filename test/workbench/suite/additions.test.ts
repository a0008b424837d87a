import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { buzzer, textOf } from '../../support/buzzer';
import { asked, closeAll, foundIn, openText, placeOf, untilFound } from './scripts';
import { until } from './until';

const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
const file = vscode.Uri.joinPath(folder ?? vscode.Uri.file('/'), 'propsoff', 'buzzer.json');
const script = '[buzzer]\ntune = 3.5 kHz\n';

async function write(text: string): Promise<void> {
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
}

describe('a file in the folder "propsoff"', () => {
  before(() => write(textOf(buzzer)));
  afterEach(closeAll);
  after(() => vscode.workspace.fs.delete(vscode.Uri.joinPath(file, '..'), { recursive: true }));

  it('adds a setting that is checked, explained and completed', async () => {
    const document = await openText(script);
    await untilFound(document, 'buzzer/shrill');
    const [hover] = await asked<vscode.Hover>(
      'vscode.executeHoverProvider',
      document.uri,
      placeOf(document, 'tune'),
    );
    const told = hover?.contents.map((one) => (typeof one === 'string' ? one : one.value)).join('\n') ?? '';
    assert.match(told, /Pitch of the buzzer/);
    const other = await openText('[buzzer]\n\n');
    const list = await until('completion', () =>
      vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        other.uri,
        new vscode.Position(1, 0),
      ),
    );
    const labels = list.items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    assert.ok(labels.includes('tune'), labels.join(' '));
  });

  it('is checked as it is typed, at the place, while what it was when it was fine stays in use', async () => {
    const document = await openText(script);
    await untilFound(document, 'buzzer/shrill');
    const added = await vscode.workspace.openTextDocument(file);
    await vscode.window.showTextDocument(added, { preview: false });
    const start = placeOf(added, '"unit": "kHz"', '"unit": '.length);
    const unit = new vscode.Range(start, start.translate(0, '"kHz"'.length));
    const edit = new vscode.WorkspaceEdit();
    edit.replace(file, unit, '"bananas"');
    assert.ok(await vscode.workspace.applyEdit(edit));
    const problem = await untilFound(added, 'addition/value');
    assert.equal(added.getText(problem.range), '"bananas"');
    assert.match(problem.message, /"bananas" is not a unit/);
    const typed = new vscode.WorkspaceEdit();
    typed.replace(document.uri, new vscode.Range(1, 7, 1, 10), '3.6');
    assert.ok(await vscode.workspace.applyEdit(typed));
    await until(
      'the finding to stay',
      () => document.getText().includes('3.6') && foundIn(document).length > 0,
    );
    assert.deepEqual(foundIn(document), ['buzzer/shrill']);
    await vscode.window.showTextDocument(added);
    await vscode.commands.executeCommand('undo');
    await until('the problem to go', () => !foundIn(added).includes('addition/value'));
  });

  it('is no craft script: none of our features is offered for it', async () => {
    const added = await vscode.workspace.openTextDocument(file);
    await vscode.window.showTextDocument(added);
    await openText(script);
    const hints = await vscode.commands.executeCommand<readonly unknown[] | undefined>(
      'vscode.executeInlayHintProvider',
      file,
      new vscode.Range(0, 0, added.lineCount, 0),
    );
    assert.equal(hints?.length ?? 0, 0);
  });
});
