/**
 * What a person can do and see in the editor, for tests that look at it from outside, through the browser.
 * Nothing here waits for a set time: every step waits for what a person would see next, up to a deadline.
 */
import { strict as assert } from 'node:assert';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, BrowserContext, Frame, FrameLocator, Locator, Page } from 'playwright-core';
import {
  emptyProfile,
  launchBrowser,
  type RunningWorkbench,
  scratchFolder,
  startWorkbench,
  type WindowSize,
} from '../launch.mjs';

/** Time that one step may take, in milliseconds. Long, because machines that run tests may be busy. */
const deadline = 45_000;

const projectRoot = resolve(__dirname, '..', '..', '..');

const themes = {
  light: { setting: 'Default Light Modern', className: 'vs' },
  dark: { setting: 'Default Dark Modern', className: 'vs-dark' },
  'dark high contrast': { setting: 'Default High Contrast', className: 'hc-black' },
  'light high contrast': { setting: 'Default High Contrast Light', className: 'hc-light' },
} as const;

/** The kinds of theme that a person may choose. */
export type Theme = keyof typeof themes;

export const everyTheme: readonly Theme[] = ['light', 'dark', 'light high contrast', 'dark high contrast'];

/** Of axe's rules those about colours, which read no style sheets. By their tag one would come along that is off otherwise. */
const colourRules: RunOptions = {
  preload: false,
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
};

/** What a window wears of which nobody has chosen a theme. */
const firstTheme = themes.light.className;

/** How serious the editor shows a problem to be. */
export type SquiggleLevel = 'error' | 'warning' | 'info' | 'hint';

export interface OpenOptions extends WindowSize {
  /** Folder to open; a copy of it is opened, so that a test may change files. Defaults to the demo workspace. */
  readonly folder?: string;
  /** A packed extension to install in place of the one that was built. */
  readonly package?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
  /**
   * The display language, such as `de`. Extensions get it as with a language pack; without one the editor's own
   * texts stay English.
   */
  readonly language?: string;
}

/** Opens a window with the extension and a folder in it, as if it were the first one. Close it when done. */
export async function openEditor(options: OpenOptions = {}): Promise<EditorDriver> {
  const scratch = scratchFolder('page');
  const original = options.folder ?? demoFolder();
  const folder = join(scratch, basename(original));
  cpSync(original, folder, { recursive: true });
  prepareFolderSettings(folder);
  const workbench = await workbenchFor(options);
  const context = await openProfile(options);
  await context.addInitScript({ content: stillEditor });
  if (options.language !== undefined)
    await context.addInitScript({ content: languageScript(options.language) });
  const driver = new EditorDriver(workbench, context, await context.newPage(), folder, scratch);
  try {
    await driver.load();
  } catch (error) {
    await driver.close();
    throw error;
  }
  return driver;
}

/** All that a window needs of a workbench; whose own it is, it stops. */
type Workbench = Pick<RunningWorkbench, 'address' | 'stop'> & Partial<Pick<RunningWorkbench, 'home'>>;

/**
 * Both take longer to start than most tests take, so that all windows of a run are of one workbench and of one
 * browser. What an editor remembers lies in the profile, and each window has an empty one. They end with this process.
 */
let shared: Promise<RunningWorkbench> | undefined;
let browser: Browser | undefined;

/** An empty profile of the run's browser. */
export async function openProfile(size: WindowSize = {}): Promise<BrowserContext> {
  if (browser?.isConnected() !== true)
    browser = await launchBrowser({ show: process.env.PROPSOFF_SHOW === '1' });
  return emptyProfile(browser, size);
}

async function workbenchFor({ settings, package: packed }: OpenOptions): Promise<Workbench> {
  if (settings !== undefined || packed !== undefined) return newWorkbench(settings, packed);
  shared ??= newWorkbench();
  const { address, home } = await shared;
  return { address, home, stop: async () => {} };
}

/** The editor's own extensions that a person meets here; the others only take time whenever a window is loaded. */
const builtInUsed = [
  ...['theme-defaults', 'theme-seti', 'json', 'json-language-features'],
  ...['markdown-basics', 'markdown-language-features', 'git', 'git-base'],
];

/**
 * What the editor draws anew with each key and move of the cursor, a fifth of all processor time, and no test looks at;
 * given settings stand in place of these.
 */
const lessToDraw = {
  'breadcrumbs.enabled': false,
  'editor.cursorBlinking': 'solid',
  'editor.disableLayerHinting': true,
  'editor.guides.indentation': false,
  'editor.hideCursorInOverviewRuler': true,
  'editor.matchBrackets': 'never',
  'editor.minimap.enabled': false,
  'editor.renderLineHighlight': 'none',
  'editor.selectionHighlight': false,
  'editor.stickyScroll.enabled': false,
  'workbench.layoutControl.enabled': false,
};

/**
 * Scroll bars that fade and marks that turn have the whole window drawn sixty times a second, without a graphics card.
 * They come and go at once here; pages of ours in the window move as they do for people.
 */
const stillEditor = `if (window === top) {
  const still = new CSSStyleSheet();
  const times = 'animation-duration: 0s; animation-delay: 0s; transition-duration: 0s; transition-delay: 0s;';
  const rule = times + 'animation-iteration-count: 1;';
  still.replaceSync('*, ::before, ::after { ' + rule.replaceAll(';', ' !important;') + ' }');
  document.adoptedStyleSheets.push(still);
}`;

function newWorkbench(
  settings: OpenOptions['settings'] = lessToDraw,
  packed?: string,
): Promise<RunningWorkbench> {
  return startWorkbench({
    settings: { 'files.exclude': { '.vscode': true }, ...settings },
    builtIn: builtInUsed,
    ...(packed === undefined
      ? { extension: process.env.PROPSOFF_DEV_PATH ?? projectRoot }
      : { package: packed }),
  });
}

/** Says what a language pack's first script says; what the editor's own says afterwards is not heard. */
function languageScript(language: string): string {
  const property = `{ get: () => ${JSON.stringify(language)}, set: () => undefined }`;
  return `Object.defineProperty(globalThis, '_VSCODE_NLS_LANGUAGE', ${property})`;
}

function demoFolder(): string {
  return process.env.PROPSOFF_WORKSPACE ?? join(projectRoot, 'test', 'demo');
}

/** A megabyte with comments and names, for which half does. */
function axeSource(): string {
  return readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
}

/** Whether something shows within a few seconds. */
function shownSoon(wanted: Locator): Promise<boolean> {
  return wanted
    .first()
    .waitFor({ timeout: 5_000 })
    .then(
      () => true,
      () => false,
    );
}

/** The file is there from the start, so that the editor watches it. */
function prepareFolderSettings(folder: string): void {
  const path = join(folder, '.vscode', 'settings.json');
  mkdirSync(dirname(path), { recursive: true });
  if (!existsSync(path)) writeFileSync(path, '{}');
}

/** Makes a copy of a folder the same as it again; what is the same already is not touched. */
function restore(copy: string, original: string): void {
  const namesIn = (folder: string) => readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const isFile = (path: string) => statSync(path).isFile();
  for (const name of namesIn(copy)) {
    const path = join(copy, name);
    if (existsSync(join(original, name)) || !existsSync(path) || name.startsWith('.vscode')) continue;
    rmSync(path, { recursive: true });
  }
  for (const name of namesIn(original)) {
    const [from, to] = [join(original, name), join(copy, name)];
    if (!isFile(from) || (existsSync(to) && readFileSync(to).equals(readFileSync(from)))) continue;
    mkdirSync(dirname(to), { recursive: true });
    cpSync(from, to);
  }
  const settings = join('.vscode', 'settings.json');
  if (!existsSync(join(original, settings))) writeFileSync(join(copy, settings), '{}');
}

export class EditorDriver {
  constructor(
    private readonly workbench: Workbench,
    private readonly context: BrowserContext,
    /** The page itself, for what has no method here. */
    readonly page: Page,
    /** The opened copy of the folder. */
    readonly folder: string,
    private readonly scratch: string,
  ) {
    page.setDefaultTimeout(deadline);
  }

  /** Loads the editor anew, as a person does with the browser's reload. */
  async load(): Promise<void> {
    await this.page.goto(this.workbench.address(this.folder));
    const rows = this.page.locator('.explorer-folders-view .monaco-list-row');
    const list = this.page.locator('.explorer-folders-view .monaco-list');
    await (this.isEmptyFolder() ? list : rows).first().waitFor({ state: 'attached' });
  }

  /** A folder in which there is nothing to see has no row in the explorer. */
  private isEmptyFolder(): boolean {
    return this.folder !== '' && readdirSync(this.folder).every((name) => name === '.vscode');
  }

  /**
   * Closes all that is open and makes the folder a copy of another, which takes a tenth of the time of another window.
   * Whether nothing is left of what was done is looked at, and said: what an extension remembers is not undone.
   */
  startOver(original = demoFolder()): Promise<boolean> {
    return this.becomeAsNew(original).then(
      () => true,
      () => false,
    );
  }

  private async becomeAsNew(original: string): Promise<void> {
    await this.press('Escape');
    await this.clearNotifications();
    if (await this.isAnyShown('.part.panel')) await this.press('Control+J');
    if (!(await this.isAnyShown('.explorer-folders-view'))) await this.press('Control+Shift+E');
    await this.page.locator('.explorer-folders-view').filter({ visible: true }).waitFor();
    // Last: what it asks of a text that was not saved would be taken back by what comes after. A chord may be lost.
    await this.waitUntil('all that is open to be closed', async () => {
      await this.press('Control+K');
      await this.press('Control+W');
      for (let looks = 0; looks < 40; looks += 1) {
        if (await this.isNothingLeft()) return true;
        await pause(50);
      }
      return false;
    });
    // Only now: what is closed may still be saved.
    restore(this.folder, original);
    await this.page.locator(`.monaco-workbench.${firstTheme}`).waitFor();
  }

  private async isNothingLeft(): Promise<boolean> {
    const unsaved = this.page.locator('.monaco-dialog-box .monaco-button', { hasText: "Don't Save" });
    if (await unsaved.isVisible()) await unsaved.click();
    const left = ['.editor-group-container .tab', '.notification-toast', '.monaco-dialog-box', '.part.panel'];
    return !(await this.isAnyShown(left.join())) && (await this.page.locator('iframe.webview').count()) === 0;
  }

  private async isAnyShown(selector: string): Promise<boolean> {
    return (await this.page.locator(selector).filter({ visible: true }).count()) > 0;
  }

  /** Closes everything and removes what was copied. */
  async close(): Promise<void> {
    // A page that is left has its extension host end; one that is gone without a word, as by a crash, may come back.
    await this.page.goto('about:blank').catch(() => undefined);
    await this.context.close();
    await this.workbench.stop();
    rmSync(this.scratch, { recursive: true, force: true, maxRetries: 5 });
  }

  /** Opens a file of the folder by its name: from the explorer where it is shown there, else through quick open. */
  async openFile(name: string): Promise<void> {
    const tab = `.editor-group-container.active .tab.active[data-resource-name="${basename(name)}"]`;
    // Rows that come in late may push another under the mouse.
    await this.waitUntil(`${name} to be open`, async () => {
      if (!(await this.opensFromExplorer(basename(name))))
        await this.pick('Control+P', name, (rows) => this.labelled(rows, basename(name)));
      return shownSoon(this.page.locator(tab));
    });
    await this.editor().locator('.view-line').first().waitFor();
    await this.editor().locator('.view-lines').click();
  }

  /** A quarter quicker than quick open, which searches the folder. Clicked twice, it stays when another is opened. */
  private async opensFromExplorer(name: string): Promise<boolean> {
    const rows = this.page.locator('.explorer-folders-view .monaco-list-row');
    const row = this.labelled(rows, name).first();
    if (!(await row.isVisible())) return false;
    return row.dblclick({ timeout: 3_000 }).then(
      () => true,
      () => false,
    );
  }

  /** Runs a command by its title, as `Category: Title`, through the command palette. */
  async runCommand(title: string): Promise<void> {
    await this.pick('F1', `>${title}`, (rows) => this.labelled(rows, title));
  }

  /** Puts the cursor at a place; both numbers count from 1, as the status bar shows them. */
  async goTo(line: number, column = 1): Promise<void> {
    await this.pick('Control+G', `:${line}:${column}`, (row) => row.filter({ hasText: `${line}` }));
    const shown = new RegExp(`Ln ${line}, Col ${column}\\b`);
    await this.page.locator('.statusbar-item').filter({ hasText: shown }).waitFor();
  }

  /** A file in the opened folder, as it was last saved; undefined where there is none, and while it is being saved. */
  savedText(file: string): string | undefined {
    const path = join(this.folder, file);
    // The editor empties a file before it writes it.
    return (existsSync(path) && readFileSync(path, 'utf8')) || undefined;
  }

  /** Line of a file in the opened folder, as it was last saved, that matches first; counted from 1. */
  lineOf(file: string, pattern: RegExp): number {
    const at = (this.savedText(file) ?? '').split('\n').findIndex((line) => pattern.test(line));
    if (at < 0) throw new Error(`${file} has no line like ${pattern}`);
    return at + 1;
  }

  /** Puts the keys back into the text. */
  async focusEditor(): Promise<void> {
    await this.editor().locator('.view-lines').click();
  }

  /** Types at the cursor, key by key. */
  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }

  /** Presses a key or chord, such as `Control+Space`. */
  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
  }

  /** The lines of the active editor that are on screen, as read. */
  async visibleText(): Promise<string> {
    const lines = await this.editor()
      .locator('.view-line')
      .evaluateAll((elements) =>
        elements
          .map((element) => ({ top: element.getBoundingClientRect().top, text: element.textContent ?? '' }))
          .sort((a, b) => a.top - b.top)
          .map(({ text }) => text),
      );
    return lines.join('\n').replaceAll('\u00a0', ' ');
  }

  /** Waits until a line on screen has a problem of a level; gives how many underlined places there are to see. */
  async waitForSquiggles(level: SquiggleLevel): Promise<number> {
    const squiggles = this.editor().locator(`.squiggly-${level}`);
    await squiggles.first().waitFor({ state: 'attached' });
    return squiggles.count();
  }

  /** Waits until no line on screen has a problem of a level. */
  async waitForNoSquiggles(level: SquiggleLevel): Promise<void> {
    await this.waitUntil(
      `no ${level}`,
      async () => (await this.editor().locator(`.squiggly-${level}`).count()) === 0,
    );
  }

  /** Rests the mouse on a word of the active editor and gives the text of the hover that comes up. */
  async hoverOver(word: string): Promise<string> {
    const hover = this.page.locator('.monaco-editor .monaco-hover:visible .hover-contents');
    const loading = /^Loading\.\.\.$/;
    let said = '';
    const isThere = async () => {
      const texts = await hover.allInnerTexts();
      // Read once: it may go again before it is asked a second time.
      said = texts.some((text) => loading.test(text.trim())) ? '' : texts.join('\n').trim();
      return said !== '';
    };
    await this.waitUntil(`a hover over ${word}`, async () => {
      // What comes in late above the line, such as a lens, moves the word away from under the mouse.
      const mouse = await this.moveMouseOnto(word);
      for (let looks = 0; looks < 40; looks += 1) {
        if (await isThere()) break;
        await pause(50);
      }
      const { x, y } = await this.placeOf(word);
      if (x === mouse.x && y === mouse.y) return isThere();
      // What came up is of something else: it goes before the word is tried again.
      await this.page.mouse.move(0, 0);
      await hover.first().waitFor({ state: 'hidden' });
      return false;
    });
    return said;
  }

  /** Clicks twice on the first place where a word stands. */
  async doubleClick(word: string): Promise<void> {
    const { x, y } = await this.placeOf(word);
    await this.page.mouse.dblclick(x, y);
  }

  /** Waits until a text is on screen. */
  async waitForText(text: string): Promise<void> {
    await this.waitUntil(`"${text}" to be there`, async () => (await this.visibleText()).includes(text));
  }

  /** Asks for completion at the cursor and gives the labels that are on screen. */
  async suggestions(): Promise<string[]> {
    await this.press('Control+Space');
    const widget = this.page.locator('.suggest-widget.visible');
    const rows = widget.locator('.monaco-list-row .label-name');
    await rows.first().waitFor();
    return rows.allInnerTexts();
  }

  /** Asks for completion at the cursor and takes the row with a label, wherever in the list it is. */
  async acceptSuggestion(label: string): Promise<void> {
    await this.suggestions();
    const rows = this.page.locator('.suggest-widget.visible .monaco-list-row');
    const row = rows.filter({ has: this.page.locator('.label-name').getByText(label, { exact: true }) });
    await row.first().click();
  }

  /** Titles of the quick fixes offered at the cursor; the menu stays open. */
  async quickFixes(): Promise<string[]> {
    const rows = this.page.locator('.action-widget .monaco-list-row.action');
    // What comes in late about a text that was just opened closes the menu.
    await this.waitUntil('quick fixes', async () => {
      await this.press('Control+.');
      if (await shownSoon(rows)) return true;
      await this.press('Escape');
      return false;
    });
    return rows.allInnerTexts();
  }

  /** Takes the fix with this in its title, by keys: a click on its row is lost. What comes in late may move the rows. */
  async takeFix(title: string): Promise<void> {
    const titles = await this.quickFixes();
    assert.ok(
      titles.some((one) => one.includes(title)),
      titles.join('; '),
    );
    const chosen = this.page.locator('.action-widget .monaco-list-row.action.focused', { hasText: title });
    await this.waitUntil(`${title} to be chosen`, async () => {
      if (await chosen.isVisible()) return true;
      await this.press('ArrowDown');
      return false;
    });
    await this.press('Enter');
  }

  /** Waits for a status-bar item with this in its text and gives the whole text. */
  async statusBar(text: string | RegExp): Promise<string> {
    const item = this.statusBarItem(text);
    await item.waitFor();
    return (await item.allInnerTexts()).join('').replaceAll('\u00a0', ' ').trim();
  }

  /** Whether there is such an item now. */
  async isInStatusBar(text: string | RegExp): Promise<boolean> {
    return this.statusBarItem(text).isVisible();
  }

  async clickStatusBar(text: string | RegExp): Promise<void> {
    await this.statusBarItem(text).locator('a').first().click();
  }

  /** The page inside the webview that is on screen; the nth if there are several. */
  webview(index = 0): FrameLocator {
    return this.page.locator('iframe.webview.ready').nth(index).contentFrame().frameLocator('#active-frame');
  }

  /** The page inside the webview, for scripts that run in it. */
  async frame(): Promise<Frame> {
    const outer = this.page.locator('iframe.webview.ready').first().contentFrame();
    const shown = await outer.locator('#active-frame').elementHandle();
    return (await shown?.contentFrame()) ?? Promise.reject(new Error('no page of ours is on screen'));
  }

  /** What axe finds wrong with the page inside the webview, serious or worse: rule and places. */
  accessFaults(): Promise<readonly string[]> {
    return this.faultsBy({});
  }

  /** The same in a theme. Between themes only colours change: in all but one only the rules about these are asked. */
  async accessFaultsIn(theme: Theme): Promise<readonly string[]> {
    await this.setTheme(theme);
    return this.faultsBy(theme === everyTheme[0] ? {} : colourRules);
  }

  private async faultsBy(rules: RunOptions): Promise<readonly string[]> {
    const frame = await this.frame();
    if (!(await frame.evaluate<boolean>("'axe' in window"))) await frame.evaluate(axeSource());
    // The whole report is a megabyte about what is right.
    const options = JSON.stringify({ ...rules, resultTypes: ['violations'] });
    const violations = await frame.evaluate<AxeResults['violations']>(
      `axe.run(${options}).then((report) => report.violations)`,
    );
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
  }

  /** Takes away what is told: of more than three notifications the others wait until these are gone. */
  async clearNotifications(): Promise<void> {
    if (await this.isAnyShown('.notifications-toasts .notification-toast'))
      await this.runCommand('Notifications: Clear All Notifications');
  }

  /** Texts of the notifications that are on screen. */
  async notifications(): Promise<string[]> {
    return this.page.locator('.notifications-toasts .notification-list-item-message').allInnerTexts();
  }

  /**
   * Changes settings and leaves the others as they are. They are the folder's settings, which the editor reads
   * again at once; the settings given at the start are the person's own.
   */
  changeSettings(changes: Readonly<Record<string, unknown>>): void {
    const settings: unknown = JSON.parse(readFileSync(this.settingsPath, 'utf8'));
    writeFileSync(this.settingsPath, JSON.stringify({ ...(settings as object), ...changes }, undefined, 2));
  }

  /** Chooses a colour theme and waits until the editor wears it. */
  async setTheme(theme: Theme): Promise<void> {
    this.changeSettings({ 'workbench.colorTheme': themes[theme].setting });
    await this.page.locator(`.monaco-workbench.${themes[theme].className}`).waitFor();
  }

  /** Takes a picture of the whole window. */
  async screenshot(path: string): Promise<void> {
    await this.page.screenshot({ path, animations: 'disabled' });
  }

  /** Asks again until the answer is yes; fails with what was waited for. */
  async waitUntil(what: string, ask: () => Promise<boolean>): Promise<void> {
    const end = Date.now() + deadline;
    // Each look costs the editor a hundredth of a second: what takes longer is looked at less often.
    for (let next = 25; !(await ask()); next = Math.min(1.5 * next, 250)) {
      if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
      await pause(next);
    }
  }

  /** Folder that the editor keeps its own things in; an editor that is a page alone has none. */
  get home(): string {
    return this.workbench.home ?? assert.fail('this editor is a page alone');
  }

  private get settingsPath(): string {
    return join(this.folder, '.vscode', 'settings.json');
  }

  private statusBarItem(text: string | RegExp): Locator {
    return this.page.locator('.statusbar-item:visible').filter({ hasText: text }).first();
  }

  private editor(): Locator {
    return this.page.locator('.editor-group-container.active .monaco-editor').first();
  }

  /** Those with a label that says just this: a longer one would name something else. */
  private labelled(among: Locator, text: string): Locator {
    return among.filter({ has: this.page.locator('.label-name').getByText(text, { exact: true }) });
  }

  /** Opens a quick input with a key, types, and takes the row that a person would take. */
  private async pick(key: string, text: string, choose: (rows: Locator) => Locator): Promise<void> {
    const box = this.page.locator('.quick-input-widget:visible');
    const wanted = choose(box.locator('.monaco-list-row')).first();
    await this.waitUntil(`"${text}" to be offered and taken`, () => this.takes(key, text, box, wanted));
  }

  /**
   * Whether a key brings a box up that offers a row, which goes when it is clicked. If not, as when something else takes
   * the focus meanwhile or the row is drawn anew under the mouse, a person closes it, clicks elsewhere, and tries again.
   */
  private async takes(key: string, text: string, box: Locator, wanted: Locator): Promise<boolean> {
    const soon = { timeout: 3_000 };
    await this.press(key);
    try {
      await box.locator('input[type=text]').fill(text, soon);
      await wanted.waitFor(soon);
      await wanted.click(soon);
      // Not the box: what was picked may ask something next.
      await wanted.waitFor({ state: 'hidden', timeout: 15_000 });
      return true;
    } catch {
      await this.press('Escape');
      await this.page.locator('.sidebar .composite.title').first().click();
      return false;
    }
  }

  private async moveMouseOnto(word: string): Promise<Place> {
    const { x, y } = await this.placeOf(word);
    // Coming from a distance, as a hand does: a mouse that is already there raises no hover.
    await this.page.mouse.move(0, 0);
    await this.page.mouse.move(x, y, { steps: 4 });
    return { x, y };
  }

  /** The middle of the first place where a word stands on screen. */
  private async placeOf(word: string): Promise<Place> {
    let place: Place | undefined;
    // For a moment a line that is drawn anew stands nowhere.
    await this.waitUntil(`${word} to be on screen`, async () => {
      place = await this.placeNow(word);
      return place !== undefined;
    });
    if (place === undefined) throw new Error(`${word} is not on screen`);
    return place;
  }

  private placeNow(word: string): Promise<Place | undefined> {
    return this.editor()
      .locator('.view-lines')
      .evaluate((lines, wanted) => {
        const walker = lines.ownerDocument.createTreeWalker(lines, 4);
        for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
          const at = (node.nodeValue ?? '').replaceAll('\u00a0', ' ').indexOf(wanted);
          if (at < 0) continue;
          const range = lines.ownerDocument.createRange();
          range.setStart(node, at);
          range.setEnd(node, at + wanted.length);
          const box = range.getBoundingClientRect();
          return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
        }
        return undefined;
      }, word);
  }
}

/** In pixels of the window. */
interface Place {
  readonly x: number;
  readonly y: number;
}
