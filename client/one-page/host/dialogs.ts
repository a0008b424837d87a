import type { URI } from 'vscode-uri';
import { askButtons, askFiles, askText, type PickItem, pickOne, showMessage } from '../ask';
import { addPicked, downloadUri } from './files';

/** `wren.craft` of a place. */
export function lastOf({ path }: URI): string {
  return path.split('/').at(-1) ?? '';
}

function buttonsOf(given: readonly unknown[]): { isModal: boolean; detail: string; buttons: string[] } {
  const [first, ...rest] = given;
  const isOptions = typeof first === 'object' && first !== null;
  const { modal = false, detail = '' } = (isOptions ? first : {}) as { modal?: boolean; detail?: string };
  return { isModal: modal, detail, buttons: (isOptions ? rest : given).map(String) };
}

function messenger(level: Parameters<typeof showMessage>[0]) {
  return async (message: string, ...given: readonly unknown[]): Promise<string | undefined> => {
    const { isModal, detail, buttons } = buttonsOf(given);
    return isModal ? askButtons(message, detail, buttons) : showMessage(level, message, buttons);
  };
}

interface Pickable {
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
  readonly kind?: number;
}

interface InputAsked {
  readonly title?: string;
  readonly prompt?: string;
  readonly value?: string;
  readonly placeHolder?: string;
  readonly validateInput?: (typed: string) => string | null | undefined | Promise<string | null | undefined>;
}

/** Editors draw icons for such words in a label. */
function withoutIcons(label: string): string {
  return label.replace(/\$\([\w~-]+\) ?/g, '');
}

/** Those members of `window` that say or ask something. */
export const dialogs = {
  showInformationMessage: messenger('information'),
  showWarningMessage: messenger('warning'),
  showErrorMessage: messenger('error'),

  async showQuickPick<T extends string | Pickable>(
    items: readonly T[] | Promise<readonly T[]>,
    { title = '', placeHolder }: { readonly title?: string; readonly placeHolder?: string } = {},
  ): Promise<T | undefined> {
    const choices = (await items).map((item): PickItem<T> => {
      if (typeof item === 'string') return { label: item, pick: item };
      const { label, description, detail, kind } = item;
      const row = { label: withoutIcons(label), description, detail };
      return kind === -1 ? row : { ...row, pick: item };
    });
    return pickOne(title, choices, placeHolder);
  },

  async showInputBox({ title = '', validateInput, ...rest }: InputAsked): Promise<string | undefined> {
    return askText({ title, ...rest, ...(validateInput === undefined ? {} : { fault: validateInput }) });
  },

  async showOpenDialog(asked: { filters?: Record<string, readonly string[]>; canSelectMany?: boolean }) {
    const files = await askFiles(Object.values(asked.filters ?? {}).flat(), asked.canSelectMany ?? false);
    if (files.length === 0) return undefined;
    return Promise.all(
      files.map(async (file) => addPicked(file.name, new Uint8Array(await file.arrayBuffer()))),
    );
  },

  /** The browser asks where it is to lie; here only which of its kinds. */
  async showSaveDialog({
    title = '',
    defaultUri,
    filters = {},
  }: {
    title?: string;
    defaultUri?: URI;
    filters?: Record<string, readonly string[]>;
  }): Promise<URI | undefined> {
    const name = defaultUri === undefined ? 'propsoff' : lastOf(defaultUri);
    const kinds = Object.entries(filters);
    if (kinds.length < 2) return downloadUri(name);
    const picked = await pickOne(
      title,
      kinds.map(([label, [ending = '']]) => ({ label, description: `.${ending}`, pick: ending })),
    );
    return picked === undefined ? undefined : downloadUri(name.replace(/\.\w+$/, `.${picked}`));
  },
};
