import type { WorkspaceEdit } from 'vscode-languageclient';
import { cardKey } from '../src/bench-card';
import { askText, type PickItem, pickOne, showMessage } from './ask';
import { applyEdit } from './host/documents';
import { deleteKept, fs } from './host/files';
import { keptPath, keptUri, thePage } from './host/page';
import { window } from './host/vscode';
import { editOf } from './protocol-edit';

/** The texts that this page keeps: one is opened, renamed or deleted. */
export async function openScripts(): Promise<void> {
  const { store } = thePage();
  const choices = store.paths().map(
    (path): PickItem<() => unknown> => ({
      label: path,
      pick: () => window.showTextDocument(keptUri(path)),
    }),
  );
  const { active } = thePage().texts;
  const own = active === null ? null : keptPath(active.place);
  const changes: PickItem<() => unknown>[] =
    own === null || store.read(own) === undefined
      ? []
      : [
          { label: 'The one that is shown' },
          { label: 'Rename…', pick: () => rename(own) },
          { label: 'Duplicate', pick: () => duplicate(own) },
          { label: 'Delete', pick: () => remove(own) },
        ];
  const none = 'No script is kept here yet: New begins one, Open takes one from this device.';
  const hint = choices.length === 0 ? none : undefined;
  const picked = await pickOne('Scripts on This Page', [...choices, ...changes], hint);
  await picked?.();
}

/** What a script of that name includes, and what was handed over, noted and ticked for it, goes along. */
async function rename(path: string): Promise<void> {
  const typed = await askText({ title: 'Rename', value: path, fault: (name) => faultOfName(name, path) });
  const to = typed?.trim();
  if (to === undefined || to === path) return;
  const files = [{ oldUri: keptUri(path).toString(), newUri: keptUri(to).toString() }];
  const follow = await thePage().client.ask<WorkspaceEdit>('workspace/willRenameFiles', { files });
  if (follow !== null) await applyEdit(editOf(follow));
  const kept = dropText(path);
  await bringBack(to, kept);
}

/** Why a text can't have that name; null where it can. */
function faultOfName(name: string, own: string): string | null {
  const wanted = name.trim();
  if (!wanted.split('/').every(isStep) || !/[^/]\.[a-z]+$/i.test(wanted))
    return 'A name with its ending is wanted, such as my-quad.craft.';
  return wanted !== own && thePage().store.read(wanted) !== undefined
    ? 'There is a text of that name already.'
    : null;
}

/** A part of a path that leads nowhere else, and stays what it is on any device. */
function isStep(step: string): boolean {
  return step !== '' && step === step.trim() && !/^\.+$/.test(step) && !/[\\\p{Cc}]/u.test(step);
}

async function duplicate(path: string): Promise<void> {
  const to = thePage().store.free(path);
  await writeText(to, writtenAt(path));
  await window.showTextDocument(keptUri(to));
}

async function remove(path: string): Promise<void> {
  const kept = dropText(path);
  const back = 'Bring It Back';
  if ((await showMessage('information', `${path} is deleted.`, [back])) === back) await bringBack(path, kept);
}

/** A text with all that is kept about it: none of it may be taken for that of another one of the same name. */
interface Kept {
  readonly text: string;
  /** By the endings of their names. */
  readonly records: readonly (readonly [ending: string, text: string])[];
  readonly card: unknown;
}

function dropText(path: string): Kept {
  const { store } = thePage();
  const text = writtenAt(path);
  // What is kept beside a text is named after it: `wren.craft.handed.json`.
  const records = store
    .paths()
    .filter((other) => other.startsWith(`${path}.`) && other.endsWith('.json'))
    .map((other) => [other.slice(path.length), store.read(other) ?? ''] as const);
  const key = cardKey(keptUri(path));
  const card = store.remembered(key);
  store.remember(key, undefined);
  for (const one of [path, ...records.map(([ending]) => path + ending)]) deleteKept(one);
  return { text, records, card };
}

/** Shows it again, where nothing else has its name by now. */
async function bringBack(path: string, { text, records, card }: Kept): Promise<void> {
  const { store } = thePage();
  const to = store.free(path);
  for (const [name, record] of records) await writeText(to + name, record);
  store.remember(cardKey(keptUri(to)), card);
  await writeText(to, text);
  await window.showTextDocument(keptUri(to));
}

export async function writeText(path: string, text: string): Promise<void> {
  await fs.writeFile(keptUri(path), new TextEncoder().encode(text));
}

/** The text of a path with what was typed a moment ago. */
export function writtenAt(path: string): string {
  const { store, texts } = thePage();
  return texts.open.get(keptUri(path).toString())?.written ?? store.read(path) ?? '';
}
