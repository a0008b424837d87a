import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import * as vscode from 'vscode';

interface Binding {
  readonly key: string;
  readonly command: string;
  readonly when?: string;
}

/** Every binding that this editor has by itself and from the extensions that it has. */
async function defaultBindings(): Promise<readonly Binding[]> {
  const uri = vscode.Uri.parse('vscode://defaultsettings/keybindings.json');
  const document = await vscode.workspace.openTextDocument(uri);
  return parse(document.getText()) as readonly Binding[];
}

/** Whether one is the other, or the first keys of the other: then one of the two can't be reached. */
function collide(one: string, other: string): boolean {
  return `${one} `.startsWith(`${other} `) || `${other} `.startsWith(`${one} `);
}

describe('the keyboard shortcuts', () => {
  const manifest = JSON.parse(
    readFileSync(join(process.env.PROPSOFF_ROOT ?? '', 'package.json'), 'utf8'),
  ) as {
    contributes: { keybindings: readonly Binding[]; commands: readonly { readonly command: string }[] };
  };
  const { keybindings: ours, commands } = manifest.contributes;

  it('collide with none that the editor has', async () => {
    const all = await defaultBindings();
    const others = all.filter(({ command }) => !command.startsWith('propsoff.'));
    assert.ok(others.length > 500, `${others.length} bindings of the editor`);
    const clashes = ours.flatMap(({ key }) =>
      others
        .filter((other) => collide(key, other.key))
        .map(({ key: taken, command }) => `${key}: ${taken} ${command}`),
    );
    assert.deepEqual(clashes, []);
  });

  it('are known to the editor, for commands that there are, and only in a script', async () => {
    const known = (await defaultBindings()).filter(({ command }) => command.startsWith('propsoff.'));
    assert.deepEqual(
      known.map(({ key, command }) => `${key} ${command}`).sort(),
      ours.map(({ key, command }) => `${key} ${command}`).sort(),
    );
    for (const { command, when } of ours) {
      assert.ok(
        commands.some((one) => one.command === command),
        command,
      );
      assert.match(when ?? '', /editorTextFocus && editorLangId/);
    }
  });
});
