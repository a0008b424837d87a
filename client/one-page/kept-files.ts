import { askButtons, askFiles, askText, type Choice, pickOne, tell } from './ask';
import { download } from './download';
import { commands } from './host/commands';
import { freePath } from './host/documents';
import { addPicked, fs } from './host/files';
import { keptPath, keptUri, thePage } from './host/page';
import { window } from './host/vscode';

/** What is long and only looked at; all else is kept. */
const recordingEndings = ['csv', 'tsv'];

const encoder = new TextEncoder();

/** The texts that this page keeps: one is opened, renamed or deleted. */
export async function openScripts(): Promise<void> {
  const { store } = thePage();
  const choices = store.paths().map(
    (path): Choice<() => unknown> => ({
      label: path,
      pick: () => window.showTextDocument(keptUri(path)),
    }),
  );
  const { active } = thePage().texts;
  const own = active === null ? null : keptPath(active.place);
  const changes: Choice<() => unknown>[] =
    own === null || store.read(own) === undefined
      ? []
      : [
          { label: 'The one that is shown' },
          { label: 'Rename…', pick: () => rename(own) },
          { label: 'Duplicate', pick: () => duplicate(own) },
          { label: 'Delete', pick: () => remove(own) },
        ];
  const picked = await pickOne('Scripts on This Page', [...choices, ...changes]);
  await picked?.();
}

async function rename(path: string): Promise<void> {
  const { store } = thePage();
  const to = await askText({
    title: 'Rename',
    value: path,
    fault: (typed) => faultOfName(typed, path),
  });
  if (to === undefined || to === path) return;
  await writeText(to, store.read(path) ?? '');
  await window.showTextDocument(keptUri(to));
  dropText(path);
}

function faultOfName(name: string, own: string): string | null {
  if (!/^[^/\\]+(\/[^/\\]+)*\.[a-z]+$/i.test(name.trim()))
    return 'A name with its ending is wanted, such as my-quad.craft.';
  return name !== own && thePage().store.read(name) !== undefined
    ? 'There is a text of that name already.'
    : null;
}

async function duplicate(path: string): Promise<void> {
  const [, base = path, ending = ''] = /^(.*?)(\.[^.]*)$/.exec(path) ?? [];
  const to = freePath(base, ending);
  await writeText(to, thePage().store.read(path) ?? '');
  await window.showTextDocument(keptUri(to));
}

async function remove(path: string): Promise<void> {
  const text = thePage().store.read(path) ?? '';
  dropText(path);
  const back = 'Bring It Back';
  if ((await tell('information', `${path} is deleted.`, [back])) !== back) return;
  await writeText(path, text);
  await window.showTextDocument(keptUri(path));
}

function dropText(path: string): void {
  const { store, texts, client } = thePage();
  const uri = keptUri(path).toString();
  const open = texts.open.get(uri);
  if (open !== undefined) texts.close(open);
  store.remove(path);
  client.fileChanged(uri, 'gone');
}

async function writeText(path: string, text: string): Promise<void> {
  await fs.writeFile(keptUri(path), encoder.encode(text));
}

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
    else if (recordingEndings.includes(ending))
      await commands.executeCommand('propsoff.openRecording', addPicked(file.name, bytes));
    else taken.push(...(await takeText(file.name, bytes)));
  }
  const first = taken.find((path) => path.endsWith('.craft')) ?? taken[0];
  if (first !== undefined) await window.showTextDocument(keptUri(first));
}

async function takeText(name: string, bytes: Uint8Array): Promise<readonly string[]> {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return [await takeInto(name, text)];
  } catch {
    void tell('error', `${name} is no text in UTF-8: it was not opened.`);
    return [];
  }
}

async function takeBundle(name: string, bytes: Uint8Array): Promise<readonly string[]> {
  const { textsIn } = await import('./bundle');
  const texts = textsIn(bytes);
  if (texts === null) {
    void tell('error', `${name} is no bundle that can be read: it was not opened.`);
    return [];
  }
  const taken: string[] = [];
  for (const [path, text] of texts) taken.push(await takeInto(path, text));
  return taken;
}

/** Nothing that is kept is replaced without a word: of two texts of one name, the person says what becomes of them. */
async function takeInto(path: string, text: string): Promise<string> {
  const before = thePage().store.read(path);
  let to = path;
  if (before !== undefined && before !== text) {
    const both = 'Keep Both';
    const picked = await askButtons(
      `There is another ${path} already`,
      'Both can be kept: the one that is opened then has another name.',
      [both, 'Replace It'],
    );
    if (picked === undefined) return path;
    const [, base = path, ending = ''] = /^(.*?)(\.[^.]*)$/.exec(path) ?? [];
    if (picked === both) to = freePath(base, ending);
  }
  await writeText(to, text);
  return to;
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
    bytes: bundleOf(store.paths().map((path) => [path, store.read(path) ?? ''])),
  };
  const offered = [one, all].filter((file) => file !== null);
  const saving = offered.map(
    ({ name: label, bytes }): Choice<() => unknown> => ({
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
      (file): Choice<() => unknown> => ({
        label: `Share ${file.name}…`,
        pick: () => navigator.share({ files: [file] }),
      }),
    );
  const picked = await pickOne('Save or Share', [...saving, ...sharing]);
  await picked?.();
}
