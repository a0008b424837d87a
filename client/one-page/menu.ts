import { askText, closeMessages, type PickItem, pickOne } from './ask';
import { commands } from './host/commands';
import { window, workspace } from './host/vscode';
import { isWide } from './width';

interface MenuEntry {
  readonly title: string;
  readonly run: () => unknown;
  /** It needs more room than a phone has. */
  readonly isWideOnly?: boolean;
}

/** Titles of the extension's commands, by their names, as its manifest has them. */
declare const PROPSOFF_TITLES: Readonly<Record<string, string>>;

/** A command of the extension. */
function command(name: string, isWideOnly = false): MenuEntry {
  const title = PROPSOFF_TITLES[`command.${name}`] ?? name;
  return { title, run: () => commands.executeCommand(`propsoff.${name}`), isWideOnly };
}

/** By what a pilot wants to do. */
const groups: readonly (readonly [title: string, entries: readonly MenuEntry[]])[] = [
  [
    'This craft',
    [
      command('openBenchCard'),
      command('tryValue'),
      command('findValue'),
      command('compareScripts'),
      command('pickPack'),
      command('explainLine'),
      command('noteFlight'),
      command('findChannels'),
    ],
  ],
  [
    'The board’s own text',
    [
      { title: 'Paste a Board’s Text…', run: pasteBoardText },
      command('sayMeanings'),
      command('copyForBoard'),
      command('previewBoardText'),
      command('compareWithCapture'),
      command('clearProof'),
      command('useAsBoardText'),
      command('pickBoardOfText'),
      command('editProfile'),
      command('makeCraftScript'),
    ],
  ],
  ['Flights', [command('openRecording', true)]],
  ['The checks', [command('startChecks'), command('showLog')]],
];

export async function openMenu(
  extra: readonly (readonly [title: string, entries: readonly MenuEntry[]])[],
): Promise<void> {
  const choices = [...groups, ...extra].flatMap(([title, entries]): readonly PickItem<MenuEntry>[] => {
    const shown = entries.filter(({ isWideOnly }) => isWideOnly !== true || isWide());
    return shown.length === 0
      ? []
      : [{ label: title }, ...shown.map((entry) => ({ label: entry.title, pick: entry }))];
  });
  const picked = await pickOne('What would you like to do?', choices);
  if (picked !== undefined) closeMessages();
  await picked?.run();
}

/** What a board has printed becomes its text here, with all that is known of it. */
async function pasteBoardText(): Promise<void> {
  const content = await askText({
    title: 'Paste a Board’s Text',
    prompt: 'Paste all that the board printed when it listed its settings.',
    isLong: true,
    fault: (typed) => (typed.trim() === '' ? 'Nothing is pasted yet.' : null),
  });
  if (content === undefined) return;
  await window.showTextDocument(await workspace.openTextDocument({ content }));
  await commands.executeCommand('propsoff.useAsBoardText');
}
