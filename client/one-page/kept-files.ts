import { askButtons, askFiles, type PickItem, pickOne, showMessage } from './ask';
import type { Unpacked } from './bundle';
import { download } from './download';
import { commands } from './host/commands';
import { addPicked } from './host/files';
import { keptUri, thePage } from './host/page';
import { window } from './host/vscode';
import { writeText, writtenAt } from './kept-scripts';
import { isWide } from './width';

/** What is long and only looked at; all else is kept. */
const recordingEndings = ['csv', 'tsv'];

const encoder = new TextEncoder();

/** Files of this device: texts are kept here from now on, a bundle is unpacked, a recording is looked at. */
export async function openFiles(): Promise<void> {
  // A phone greys out what has an ending that it does not know.
  await takeFiles(await askFiles([], true));
}

export async function takeFiles(files: readonly File[]): Promise<void> {
  const taken: string[] = [];
  for (const file of files) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const ending = file.name.split('.').at(-1)?.toLowerCase() ?? '';
    if (ending === 'zip') taken.push(...(await takeBundle(file.name, bytes)));
    else if (recordingEndings.includes(ending)) await takeRecording(file.name, bytes);
    else taken.push(...(await takeText(file.name, bytes)));
  }
  const first = taken.find((path) => path.endsWith('.craft')) ?? taken[0];
  if (first !== undefined) await window.showTextDocument(keptUri(first));
}

async function takeRecording(name: string, bytes: Uint8Array): Promise<void> {
  if (isWide()) await commands.executeCommand('propsoff.openRecording', addPicked(name, bytes));
  else
    void showMessage(
      'information',
      `${name} looks like a recording, and those need more room to be read: open it on a wider screen, or turn this one.`,
    );
}

async function takeText(name: string, bytes: Uint8Array): Promise<readonly string[]> {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return await takeInto(plainName(name), text);
  } catch {
    void showMessage(
      'error',
      `${name} is no text in UTF-8: it was not opened. If it is a text, save it as UTF-8 first.`,
    );
    return [];
  }
}

/** A phone may give a text another ending, and some devices write endings large: what is a script stays one. */
function plainName(name: string): string {
  return name.replace(/\.(craft|boardtext)(\.txt)?$/i, (_, ending: string) => `.${ending.toLowerCase()}`);
}

async function takeBundle(name: string, bytes: Uint8Array): Promise<readonly string[]> {
  const { textsIn } = await import('./bundle');
  const unpacked = textsIn(bytes);
  if (unpacked === null) {
    void showMessage('error', `${name} is no bundle that can be read: it was not opened.`);
    return [];
  }
  const taken: string[] = [];
  for (const [path, text] of unpacked.texts) taken.push(...(await takeInto(path, text)));
  void showMessage(unpacked.others.length === 0 ? 'information' : 'warning', unpackedWords(name, unpacked));
  return taken;
}

/** "night.zip is opened: it holds 3 texts." */
function unpackedWords(name: string, { texts, others }: Unpacked): string {
  const count = texts.length === 0 ? 'no text' : texts.length === 1 ? 'one text' : `${texts.length} texts`;
  const held = `${name} is opened: it holds ${count}.`;
  const most = 4;
  const named = [
    ...others.slice(0, most),
    ...(others.length > most ? [`${others.length - most} more`] : []),
  ].join(', ');
  return others.length === 0
    ? held
    : `${held} Left out, as no text in UTF-8 or without a place here: ${named}.`;
}

/**
 * Nothing that is kept is replaced without a word: of two texts of one name, the person says what becomes of them. Gives
 * the path that is to be shown, if any is.
 */
async function takeInto(path: string, text: string): Promise<readonly string[]> {
  const before = thePage().store.read(path);
  let to = path;
  if (before !== undefined && before !== text) {
    const both = 'Keep Both';
    const picked = await askButtons(
      `There is another ${path} already`,
      'Both can be kept: the one that is opened then has another name.',
      [both, 'Replace It'],
    );
    if (picked === undefined) {
      void showMessage('information', `Another ${path} was not opened: the one that is kept here stays.`);
      return [];
    }
    if (picked === both) to = thePage().store.free(path);
  }
  await writeText(to, text);
  return [to];
}

/** The text that is shown, or all of them. */
export async function saveFiles(): Promise<void> {
  const { bundleOf } = await import('./bundle');
  const { texts, store } = thePage();
  const { active } = texts;
  const name = active === null ? null : (active.place.path.split('/').at(-1) ?? null);
  const one = active === null || name === null ? null : { name, bytes: encoder.encode(active.written) };
  const all = {
    name: 'propsoff.zip',
    bytes: bundleOf(store.paths().map((path) => [path, writtenAt(path)])),
  };
  const offered = [one, all].filter((file) => file !== null);
  const saving = offered.map(
    ({ name: label, bytes }): PickItem<() => unknown> => ({
      label: `Save ${label}`,
      detail: label.endsWith('.zip')
        ? 'All scripts, texts and profiles of this page in one bundle'
        : 'The text that is shown',
      pick: () => download(label, bytes),
    }),
  );
  const sharing = offered
    .map(
      ({ name: label, bytes }) =>
        new File([bytes as BlobPart], label, {
          type: label.endsWith('.zip') ? 'application/zip' : 'text/plain',
        }),
    )
    .filter((file) => navigator.canShare?.({ files: [file] }) === true)
    .map(
      (file): PickItem<() => unknown> => ({
        label: `Share ${file.name}…`,
        pick: () => navigator.share({ files: [file] }),
      }),
    );
  const picked = await pickOne('Save or Share', [...saving, ...sharing]);
  await picked?.();
}
