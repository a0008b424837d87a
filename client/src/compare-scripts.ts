import * as vscode from 'vscode';
import {
  type ComparedSide,
  compareRequest,
  summaryRequest,
  variantsRequest,
} from '../../server/src/lsp/protocol';
import type { FromCompare, ToCompare } from '../compare/messages';
import { about } from './about';
import type { Client } from './client';
import { craftFiles } from './craft-files';
import { earlierRevisions, mayHaveRevisions } from './earlier-revisions';
import { nameOf } from './file-name';
import { goTo } from './go-to';
import { activeCraftScript } from './language';
import { openOwnPanel } from './own-page';

const { t } = vscode.l10n;

/** The two sides as they stand when asked: a script that is open is read anew each time. */
interface ScriptPair {
  readonly before: () => Promise<ComparedSide>;
  readonly after: () => Promise<ComparedSide>;
  /** Scripts whose changes change the comparison. */
  readonly uris: readonly vscode.Uri[];
}

interface ComparisonItem extends vscode.QuickPickItem {
  readonly pair?: () => Promise<ScriptPair | undefined>;
}

/**
 * Compares the active craft script with another, with an earlier revision, one pack of it with another, or the craft with
 * itself with a load or without, and in the cold.
 */
export async function compareScripts(context: vscode.ExtensionContext, client: Client): Promise<void> {
  const document = activeCraftScript()?.document;
  if (document === undefined) {
    void vscode.window.showInformationMessage(
      t('Open a craft script first: it is one side of the comparison.'),
    );
    return;
  }
  const choices = await choicesFor(document, client);
  const picked = await vscode.window.showQuickPick(choices, {
    title: t('Compare {name} with', { name: nameOf(document.uri) }),
    placeHolder: mayHaveRevisions()
      ? t(
          'Another script, an earlier revision, another pack, or this craft with a load, in the cold or in a wind',
        )
      : t('Another script, another pack, or this craft with a load, in the cold or in a wind'),
    matchOnDescription: true,
  });
  const pair = await picked?.pair?.();
  if (pair !== undefined) show(context, client, pair);
}

async function choicesFor(document: vscode.TextDocument, client: Client): Promise<readonly ComparisonItem[]> {
  const { uri } = document;
  const here = asOpen(uri, nameOf(uri));
  const summary = await client.request(summaryRequest, about(uri));
  const packs = (summary?.packs ?? []).filter((pack) => pack !== summary?.packInView);
  const variants = (await client.request(variantsRequest, about(uri))) ?? [];
  const found = await craftFiles();
  const others = found.filter((one) => one.toString() !== uri.toString());
  const group = (label: string, items: readonly ComparisonItem[]): readonly ComparisonItem[] =>
    items.length === 0 ? [] : [{ label, kind: vscode.QuickPickItemKind.Separator }, ...items];
  return [
    ...group(
      t('Another pack'),
      packs.map((pack) => ({
        label: t('Pack {pack}', { pack }),
        description: t('instead of {pack}', { pack: summary?.packInView ?? '' }),
        pair: async () => ({
          before: here,
          after: async () => ({ ...(await here()), pack }),
          uris: [uri],
        }),
      })),
    ),
    ...group(
      t('With and without'),
      variants.flatMap(({ words, path, to }) =>
        to === null
          ? []
          : [
              {
                label: words,
                description: `${path} = ${to}`,
                pair: heldOtherwise(uri, here, { path, to }, words),
              },
            ],
      ),
    ),
    ...group(t('Earlier'), [
      ...(document.isDirty && uri.scheme !== 'untitled' ? [asSaved(uri, here)] : []),
      ...(mayHaveRevisions() ? [ofRevision(uri, here)] : []),
    ]),
    ...group(
      t('Another script'),
      others.map((other) => ({
        label: nameOf(other),
        description: vscode.workspace.asRelativePath(other),
        pair: async () => ({ before: asText(other), after: here, uris: [other, uri] }),
      })),
    ),
  ];
}

function asSaved(uri: vscode.Uri, here: ScriptPair['after']): ComparisonItem {
  const saved = async (): Promise<ComparedSide> => {
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
    return { uri: uri.toString(), text, name: t('{name} as saved', { name: nameOf(uri) }), ...asItIs };
  };
  return {
    label: t('As it was saved'),
    description: t('what the unsaved changes do'),
    pair: async () => ({ before: saved, after: here, uris: [uri] }),
  };
}

function ofRevision(uri: vscode.Uri, here: ScriptPair['after']): ComparisonItem {
  return {
    label: t('An earlier revision…'),
    description: t('from the version control of this folder'),
    pair: async () => withRevision(uri, here),
  };
}

async function withRevision(uri: vscode.Uri, here: ScriptPair['after']): Promise<ScriptPair | undefined> {
  const revisions = await earlierRevisions(uri);
  if (revisions === null) {
    void vscode.window.showInformationMessage(
      t(
        'Earlier revisions can’t be read here: the editor’s Git extension is not there, as in a browser without a server.',
      ),
    );
    return undefined;
  }
  if (revisions.length === 0) {
    void vscode.window.showInformationMessage(
      t('There is no earlier revision of {name}: it is not under version control here.', {
        name: nameOf(uri),
      }),
    );
    return undefined;
  }
  const items = revisions.map((revision) => ({
    label: revision.title,
    description: `${revision.date} ${revision.hash}`,
    revision,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: t('Which revision?'),
    matchOnDescription: true,
  });
  if (picked === undefined) return undefined;
  const { revision } = picked;
  const text = await revision.text();
  const name = t('{name} of {date}', { name: nameOf(uri), date: revision.date });
  return { before: async () => ({ uri: uri.toString(), text, name, ...asItIs }), after: here, uris: [uri] };
}

/** In view there, and nothing held otherwise. */
const asItIs = { pack: null, otherwise: null };

/** The script as it stands beside itself; nothing is written. */
function heldOtherwise(
  uri: vscode.Uri,
  here: ScriptPair['after'],
  otherwise: ComparedSide['otherwise'],
  words: string,
): () => Promise<ScriptPair> {
  return async () => ({
    before: here,
    after: async () => ({ ...(await here()), otherwise, name: words }),
    uris: [uri],
  });
}

function asOpen(uri: vscode.Uri, name: string): ScriptPair['after'] {
  return async () => ({ uri: uri.toString(), text: null, name, ...asItIs });
}

/** A script that need not be open in an editor. */
function asText(uri: vscode.Uri): ScriptPair['before'] {
  return async () => {
    const document = await vscode.workspace.openTextDocument(uri);
    return { uri: uri.toString(), text: document.getText(), name: nameOf(uri), ...asItIs };
  };
}

/** The comparison in a page at the side; it follows both scripts until it is closed. */
function show(context: vscode.ExtensionContext, client: Client, { before, after, uris }: ScriptPair): void {
  const page = { name: 'compare', title: t('Compare') } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Beside);
  let asked = 0;
  const refresh = async () => {
    asked += 1;
    const mine = asked;
    const message = await compared(client, before, after);
    if (mine === asked && message !== null) await panel.webview.postMessage(message);
  };
  const following = client.onChecked((uri) => {
    if (uris.some((one) => one.toString() === uri.toString())) void refresh();
  });
  panel.onDidDispose(() => following.dispose());
  panel.webview.onDidReceiveMessage((message: FromCompare) =>
    message.kind === 'ready' ? refresh() : goTo(message.target, vscode.ViewColumn.One),
  );
}

/** Null while the server is not there: the page keeps what it shows. */
async function compared(
  client: Client,
  before: ScriptPair['before'],
  after: ScriptPair['after'],
): Promise<ToCompare | null> {
  try {
    const sides = { before: await before(), after: await after() };
    const comparison = await client.request(compareRequest, sides);
    if (comparison !== null) return { kind: 'comparison', comparison };
    if (client.state !== 'running') return null;
    return {
      kind: 'nothing',
      why: t('One of the two scripts is not open any more. Open it and compare again.'),
    };
  } catch {
    return { kind: 'nothing', why: t('One of the two scripts can’t be read any more.') };
  }
}
