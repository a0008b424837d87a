import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { asked, closeAll, foundIn, openDemo, openText, placeOf, untilFound } from './scripts';
import { until } from './until';

function textOf(content: vscode.MarkdownString | vscode.MarkedString): string {
  return typeof content === 'string' ? content : content.value;
}

function labelOf({ label }: vscode.CompletionItem): string {
  return typeof label === 'string' ? label : label.label;
}

async function complete(document: vscode.TextDocument, at: vscode.Position) {
  const command = 'vscode.executeCompletionItemProvider';
  return until('completion', async () => {
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      command,
      document.uri,
      at,
      undefined,
      3,
    );
    return list.items.length > 0 && list.items;
  });
}

describe('a script of the demo', () => {
  afterEach(closeAll);

  it('tells on hover what a parameter is and holds with each pack', async () => {
    const document = await openDemo('sandmartin.craft');
    const at = placeOf(document, 'warn-cell');
    const [hover] = await asked<vscode.Hover>('vscode.executeHoverProvider', document.uri, at);
    const told = hover?.contents.map(textOf).join('\n') ?? '';
    for (const word of [/power.warn-cell/, /sprint/, /3\.6 V/, /cruise/, /3\.1 V/, /Risk/])
      assert.match(told, word);
    assert.equal(hover?.range && document.getText(hover.range), 'warn-cell');
  });

  it('shows what calculated values come to', async () => {
    const document = await openDemo('sandmartin.craft');
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await asked<vscode.InlayHint>('vscode.executeInlayHintProvider', document.uri, all);
    const labels = hints.map(({ label, position }) => [document.lineAt(position.line).text, String(label)]);
    const cutoff = labels.find(([line]) => line?.includes('2.5 * quiet'));
    assert.match(cutoff?.[1] ?? '', /225 Hz/);
  });

  it('goes from an override to what it overrides, in the script that is included', async () => {
    const document = await openDemo('bittern.craft');
    const at = new vscode.Position(placeOf(document, '= 35 %').line, 2);
    const places = await asked<vscode.Location | vscode.LocationLink>(
      'vscode.executeDefinitionProvider',
      document.uri,
      at,
    );
    const uris = places.map((place) => ('targetUri' in place ? place.targetUri : place.uri).path);
    assert.ok(uris.some((path) => path.endsWith('/club-habits.craft')));
  });

  it('links to what it includes', async () => {
    const document = await openDemo('sandmartin.craft');
    const [link] = await asked<vscode.DocumentLink>('vscode.executeLinkProvider', document.uri);
    assert.match(link?.target?.path ?? '', /\/club-habits\.craft$/);
  });

  it('has an outline of its sections, and folds by them', async () => {
    const document = await openDemo('sandmartin.craft');
    const symbols = await asked<vscode.DocumentSymbol>('vscode.executeDocumentSymbolProvider', document.uri);
    const motor = symbols.find(({ name }) => name === 'motor');
    assert.ok(motor?.children.some(({ name }) => name === 'kv'));
    const folds = await asked<vscode.FoldingRange>('vscode.executeFoldingRangeProvider', document.uri);
    assert.ok(folds.some(({ start }) => start === motor?.range.start.line));
  });

  it('gets its own colours for units and choices', async () => {
    const document = await openDemo('sandmartin.craft');
    const legend = await until('the legend', () =>
      vscode.commands.executeCommand<vscode.SemanticTokensLegend | undefined>(
        'vscode.provideDocumentSemanticTokensLegend',
        document.uri,
      ),
    );
    for (const type of ['unit', 'enumMember', 'acceptance'])
      assert.ok(legend.tokenTypes.includes(type), type);
    const tokens = await until('tokens', () =>
      vscode.commands.executeCommand<vscode.SemanticTokens | undefined>(
        'vscode.provideDocumentSemanticTokens',
        document.uri,
      ),
    );
    assert.ok(tokens.data.length > 500);
  });

  it('has a constant renamed everywhere', async () => {
    const document = await openDemo('sandmartin.craft');
    const uses = document.getText().match(/\bquiet\b/g)?.length ?? 0;
    const edit = await until('the edits of a rename', () =>
      vscode.commands.executeCommand<vscode.WorkspaceEdit | undefined>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        placeOf(document, 'quiet'),
        'lowest-tone',
      ),
    );
    assert.equal(edit.get(document.uri).length, uses);
    assert.ok(await vscode.workspace.applyEdit(edit));
    assert.match(document.getText(), /let lowest-tone = 90 Hz/);
    await until(
      'the craft to be as it was',
      () => !foundIn(document).some((id) => id.startsWith('line/unknown')),
    );
  });
});

describe('a pack of the demo', () => {
  afterEach(closeAll);

  it('is found wherever it is named, and renamed there', async () => {
    const document = await openDemo('sandmartin.craft');
    const at = placeOf(document, 'cruise');
    const places = await asked<vscode.Location>('vscode.executeReferenceProvider', document.uri, at);
    const names = document.getText().match(/(?<=pack\.|@ |pack += )cruise\b/g)?.length ?? 0;
    assert.ok(names >= 3);
    assert.equal(places.length, names);
    const marks = await asked<vscode.DocumentHighlight>('vscode.executeDocumentHighlights', document.uri, at);
    assert.equal(marks.length, names);
    const edit = await until('the edits of a rename', () =>
      vscode.commands.executeCommand<vscode.WorkspaceEdit | undefined>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        at,
        'stroll',
      ),
    );
    assert.ok(await vscode.workspace.applyEdit(edit));
    assert.ok(!/(pack\.|@ )cruise\b/.test(document.getText()));
    await until('the craft to be as it was', () => !foundIn(document).includes('line/unknown-pack'));
  });

  it('may not take a name that another one has', async () => {
    const document = await openDemo('sandmartin.craft');
    await assert.rejects(async () => {
      await vscode.commands.executeCommand(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        placeOf(document, 'cruise'),
        'sprint',
      );
    });
  });
});

describe('a script that is being written', () => {
  afterEach(closeAll);

  it('is offered the names of its section first, and each tells more when it is looked at', async () => {
    const document = await openText('[arming]\n\n');
    const items = await complete(document, new vscode.Position(1, 0));
    const sorted = [...items].sort((one, other) => ((one.sortText ?? '') < (other.sortText ?? '') ? -1 : 1));
    const tilt = sorted.slice(0, 6).find((item) => labelOf(item) === 'tilt-limit');
    assert.ok(tilt, sorted.slice(0, 6).map(labelOf).join(' '));
    assert.match(textOf(tilt.documentation ?? ''), /tilt/i);
  });

  it('is offered only the words that a parameter takes', async () => {
    const document = await openText('[signal-loss]\naction = ');
    const labels = (await complete(document, new vscode.Position(1, 9))).map(labelOf);
    assert.ok(labels.includes('motors-off') && labels.includes('return'), labels.join(' '));
    assert.ok(!labels.includes('tilt-limit'));
  });

  it('has a mistyped name mended by its fix, and the finding goes', async () => {
    const document = await openText('[arming]\ntilt-limt = 60 deg\n');
    const { range } = await untilFound(document, 'line/unknown-name');
    assert.equal(document.getText(range), 'tilt-limt');
    const fixes = vscode.CodeActionKind.QuickFix.value;
    // Edits are made once an action is picked: the editor is asked to resolve the first few.
    const actions = await asked<vscode.CodeAction>(
      'vscode.executeCodeActionProvider',
      document.uri,
      range,
      fixes,
      5,
    );
    const fix = actions.find(({ isPreferred }) => isPreferred === true);
    assert.match(fix?.title ?? '', /tilt-limit/);
    assert.ok(fix?.edit && (await vscode.workspace.applyEdit(fix.edit)));
    assert.equal(document.lineAt(1).text, 'tilt-limit = 60 deg');
    await until('the finding to go', () => !foundIn(document).includes('line/unknown-name'));
  });

  it('is formatted without losing a word', async () => {
    const text = '[motor]\nkv=1950 rpm/V # note\npoles   = 14\n';
    const document = await openText(text);
    const edits = await asked<vscode.TextEdit>('vscode.executeFormatDocumentProvider', document.uri, {
      tabSize: 2,
      insertSpaces: true,
    });
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, [...edits]);
    assert.ok(await vscode.workspace.applyEdit(edit));
    assert.equal(document.getText().replaceAll(' ', ''), text.replaceAll(' ', ''));
    const [, one, other] = document.getText().split('\n');
    assert.equal(one?.indexOf('='), other?.indexOf('='));
  });

  it('clears its findings when it is closed', async () => {
    const document = await openText('[arming]\ntilt-limt = 60 deg\n');
    await untilFound(document, 'line/unknown-name');
    await closeAll();
    await until('the findings to go', () => foundIn(document).length === 0);
  });
});
