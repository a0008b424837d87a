import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { closeAll, foundIn, openText, placeOf, untilFound } from './scripts';

interface Contributed {
  readonly languages: readonly {
    readonly id: string;
    readonly extensions: readonly string[];
    readonly configuration: string;
    readonly icon: { readonly light: string; readonly dark: string };
  }[];
  readonly grammars: readonly { readonly language: string; readonly path: string }[];
  readonly commands: readonly { readonly command: string; readonly category: string }[];
}

function extension(): vscode.Extension<unknown> {
  const found = vscode.extensions.getExtension('propsoff.propsoff');
  assert.ok(found);
  return found;
}

function contributed(): Contributed {
  return extension().packageJSON.contributes as Contributed;
}

describe('the language in the editor', () => {
  after(closeAll);

  it('is known, with files of its own for icons, colours and editing', async () => {
    assert.ok((await vscode.languages.getLanguages()).includes('craft-script'));
    const [language] = contributed().languages;
    assert.ok(language);
    assert.deepEqual(language.extensions, ['.craft']);
    const files = [
      language.configuration,
      language.icon.light,
      language.icon.dark,
      contributed().grammars[0]?.path,
    ];
    for (const file of files) {
      const uri = vscode.Uri.joinPath(extension().extensionUri, file ?? '?');
      assert.ok((await vscode.workspace.fs.readFile(uri)).length > 0, file);
    }
  });

  it('has every command that the palette offers', async () => {
    await openText('');
    await extension().activate();
    const known = await vscode.commands.getCommands(true);
    for (const { command, category } of contributed().commands) {
      assert.equal(category, 'Propsoff');
      assert.ok(known.includes(command), command);
    }
  });

  it('starts by itself only for its own scripts (I02)', () => {
    assert.deepEqual(extension().packageJSON.activationEvents, [
      'onLanguage:craft-script',
      'onLanguage:board-text',
      'workspaceContains:propsoff',
    ]);
  });

  it('lets the log be set for a window, and no folder change what is checked', () => {
    const setting = vscode.workspace.getConfiguration('propsoff').inspect('trace.server');
    assert.equal(setting?.defaultValue, 'off');
    const suggestions = vscode.workspace
      .getConfiguration('editor', { languageId: 'craft-script' })
      .get<{ comments: string; strings: string }>('quickSuggestions');
    assert.deepEqual([suggestions?.comments, suggestions?.strings], ['off', 'off']);
  });
});

describe('an old copy of a script, as beside a new one in a comparison', () => {
  afterEach(closeAll);

  it('has no problems listed (D08)', async () => {
    const text = '[arming]\ntilt-limt = 60 deg\n';
    const provided = vscode.workspace.registerTextDocumentContentProvider('earlier', {
      provideTextDocumentContent: () => text,
    });
    const earlier = await vscode.workspace.openTextDocument(vscode.Uri.parse('earlier:/cfg/main.craft'));
    await vscode.window.showTextDocument(earlier);
    assert.equal(earlier.languageId, 'craft-script');
    // What is opened after it is checked; by then the old copy would be.
    await untilFound(await openText(text), 'line/unknown-name');
    assert.deepEqual(foundIn(earlier), []);
    provided.dispose();
  });

  it('still tells on hover what a setting is, and what is included beside it (D08)', async () => {
    const [folder] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(folder);
    const text = 'include "club-habits.craft"\nlet steep = 2 * arming.tilt-limit\n';
    const provided = vscode.workspace.registerTextDocumentContentProvider('earlier', {
      provideTextDocumentContent: () => text,
    });
    const uri = folder.uri.with({ scheme: 'earlier', path: `${folder.uri.path}/old.craft` });
    const earlier = await vscode.workspace.openTextDocument(uri);
    await vscode.window.showTextDocument(earlier);
    const at = new vscode.Position(1, 20);
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      uri,
      at,
    );
    assert.equal(hovers.length, 1);
    const told =
      hovers[0]?.contents.map((one) => (typeof one === 'string' ? one : one.value)).join('\n') ?? '';
    assert.match(told, /arming\.tilt-limit/);
    assert.match(told, /40 deg/); // as the included script sets it
    provided.dispose();
  });
});

describe('a double click selects', () => {
  after(closeAll);

  const cases: readonly (readonly [line: string, under: string, word: string])[] = [
    ['gyro.filter.1.cutoff = 90 Hz', 'filter', 'gyro.filter.1.cutoff'],
    ['gyro.filter.1.centre = 90 Hz', '1', 'gyro.filter.1.centre'],
    ['field-elevation = 640 m', 'elevation', 'field-elevation'],
    ['x = -0.25', '25', '-0.25'],
    ['x = 1.5e-3', '5e', '1.5e-3'],
    ['x = 1_000_000', '000', '1_000_000'],
    ['x = 20 µs', 'µ', 'µs'],
    ['x = 20 μs', 's', 'μs'],
    ['x = 3 m/s', 's', 'm/s'],
    ['x = 3 deg/s^2', '^', 'deg/s^2'],
    ['x = 0.05 %/(deg/s)', 'deg', '%/(deg/s)'],
    ['x = 5 kΩ', 'Ω', 'kΩ'],
    ['on = 1750..2050 us', '2050', '2050'],
    ['date = 2026-05-14', '05', '2026-05-14'],
    ['port = uart2', '2', 'uart2'],
    ['# accept tune/derivative-unfiltered: why', 'unfiltered', 'tune/derivative-unfiltered'],
  ];

  for (const [line, under, word] of cases) {
    it(`${word} as one word`, async () => {
      const document = await openText(line);
      const range = document.getWordRangeAtPosition(placeOf(document, under));
      assert.equal(range && document.getText(range), word);
    });
  }
});
