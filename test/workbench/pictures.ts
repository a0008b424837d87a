/**
 * Makes the README's pictures anew: the demo craft with three mistakes put in, in the real editor, and on a phone in the
 * page without an install. `npm run build` before.
 * Fails if the demo no longer has the lines that the mistakes go into, or the editor does not show them.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { scratchFolder } from './launch.mjs';
import { type EditorDriver, openEditor } from './page/driver';
import { photographPhone } from './phone-pictures';

const projectRoot = resolve(__dirname, '..', '..');
const pictures = join(projectRoot, 'client', 'pictures');
const script = 'sandmartin.craft';

/** Mistakes close to each other, so that one window shows them all. */
const mistakes: readonly (readonly [right: RegExp, wrong: string])[] = [
  [/^supply( *= *)5 V/m, 'supply$13.3 V'],
  [/^(\[switch\.arm\]\n)channel/m, '$1chanel'],
  [/^(\[switch\.arm\]\n.*\n)on( *= *)\d+\.\./m, '$1on$21450..'],
];

function writeFaultyDemo(folder: string): void {
  const path = join(folder, script);
  let text = readFileSync(path, 'utf8');
  for (const [right, wrong] of mistakes) {
    if (!right.test(text)) throw new Error(`${script} has no line like ${right}`);
    text = text.replace(right, wrong);
  }
  writeFileSync(path, text);
}

/** Drags the side bar's edge, so that the build sheet has the room that a pilot would give it. */
async function widenSideBar({ page }: EditorDriver, width: number): Promise<void> {
  const bar = page.locator('.part.sidebar');
  // An editor that is still busy lets go of the edge now and then.
  for (let tries = 0; tries < 5; tries += 1) {
    const box = await bar.boundingBox();
    if (box === null) throw new Error('the side bar is hidden');
    if (Math.abs(box.width - width) < 20) return;
    await page.mouse.move(box.x + box.width, 400);
    await page.mouse.down();
    await page.mouse.move(box.x + width, 400, { steps: 8 });
    await page.mouse.up();
    await page.mouse.move(0, 0);
  }
  throw new Error(`the side bar does not become ${width} wide`);
}

async function take(editor: EditorDriver, name: string): Promise<void> {
  await editor.screenshot(join(pictures, `${name}.png`));
  console.log(`client/pictures/${name}.png`);
}

async function photograph(editor: EditorDriver): Promise<void> {
  await editor.openFile(script);
  await editor.goTo(editor.lineOf(script, /^chanel/));
  await editor.waitForSquiggles('error');
  await editor.runCommand('Propsoff: Show Build Sheet');
  await editor.webview().locator('h1, h2').first().waitFor();
  await widenSideBar(editor, 460);
  await take(editor, 'editor-light');
  await editor.setTheme('dark');
  await take(editor, 'editor-dark');

  for (const theme of ['light', 'dark'] as const) {
    await editor.setTheme(theme);
    await editor.goTo(editor.lineOf(script, /^cutoff/));
    await editor.hoverOver('cutoff');
    await take(editor, `hover-${theme}`);
    await editor.press('Escape');

    await editor.goTo(editor.lineOf(script, /^rate = 3\.2 kHz/));
    await editor.press('End');
    await editor.press('Enter');
    await editor.suggestions();
    await take(editor, `completion-${theme}`);
    await editor.press('Escape');
    await editor.press('Control+Z');
  }
}

/** What a pilot does with a craft in order: its sheet part by part, a trial, two packs compared, the card. */
async function photographTools(editor: EditorDriver): Promise<void> {
  await editor.openFile(script);
  await editor.statusBar(/to mend/);
  await editor.runCommand('Propsoff: Show Build Sheet');
  await editor.webview().locator('h1').waitFor();
  await widenSideBar(editor, 520);
  for (const theme of ['light', 'dark'] as const) {
    await editor.setTheme(theme);
    for (const [part, name] of parts) await takePart(editor, part, `sheet-${name}-${theme}`);
  }
  await editor.goTo(editor.lineOf(script, /^cutoff/));
  await editor.runCommand('Propsoff: Try a Value');
  await editor.webview().locator('#try input.number').fill('150 Hz');
  await editor.webview().locator('#try tr[data-moved]').first().waitFor();
  for (const theme of ['light', 'dark'] as const) {
    await editor.setTheme(theme);
    await takePart(editor, 'try', `try-${theme}`);
  }
  await editor.runCommand('View: Show Explorer');
  await widenSideBar(editor, 250);
  await editor.runCommand('Propsoff: Compare Two Scripts');
  await editor.page.keyboard.type('Pack cruise');
  await editor.page.locator('.quick-input-list .monaco-list-row', { hasText: 'cruise' }).first().click();
  await takePages(editor, 'compare');
  await editor.runCommand('View: Close Editor');
  await editor.openFile(script);
  await editor.runCommand('Propsoff: Open Bench Card');
  await takePages(editor, 'card');
}

const parts = [
  ['my-hands', 'hands'],
  ['how-late', 'late'],
  ['which-pack', 'packs'],
  ['who-sees-me', 'seen'],
] as const;

/** One piece of the page in the side bar. */
async function takePart(editor: EditorDriver, id: string, name: string): Promise<void> {
  const part = editor.webview().locator(`#${id}`);
  await part.scrollIntoViewIfNeeded();
  await part.screenshot({ path: join(pictures, `${name}.png`), animations: 'disabled' });
  console.log(`client/pictures/${name}.png`);
}

/** The upper part of a page that stands beside the script. */
async function takePages(editor: EditorDriver, name: string): Promise<void> {
  const page = editor.page.locator('.editor-group-container').last();
  await editor.webview().locator('h1').waitFor();
  await editor.webview().locator('.waiting').waitFor({ state: 'detached' });
  for (const theme of ['light', 'dark'] as const) {
    await editor.setTheme(theme);
    const box = await page.boundingBox();
    if (box === null) throw new Error(`${name} does not show`);
    const clip = { ...box, height: Math.min(box.height, 1000) };
    await editor.page.screenshot({
      path: join(pictures, `${name}-${theme}.png`),
      clip,
      animations: 'disabled',
    });
    console.log(`client/pictures/${name}-${theme}.png`);
  }
}

/** In a window tall enough for the longest part of the sheet. */
async function photographInOrder(): Promise<void> {
  const editor = await openEditor({
    width: 1280,
    height: 3200,
    settings: { 'editor.minimap.enabled': false },
  });
  try {
    await photographTools(editor);
  } finally {
    await editor.close();
  }
}

async function main(): Promise<void> {
  const scratch = scratchFolder('pictures');
  const folder = join(scratch, 'demo');
  mkdirSync(pictures, { recursive: true });
  try {
    cpSync(join(projectRoot, 'test', 'demo'), folder, { recursive: true });
    writeFaultyDemo(folder);
    const settings = { 'editor.minimap.enabled': false, 'window.title': script };
    const editor = await openEditor({ folder, settings });
    try {
      await photograph(editor);
    } finally {
      await editor.close();
    }
    await photographInOrder();
    execFileSync(process.execPath, ['--import', 'tsx', 'server/build/one-page.ts'], { cwd: projectRoot });
    await photographPhone(pictures, script, readFileSync(join(folder, script), 'utf8'));
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

// The browser that all windows share would keep the process.
main().then(
  () => process.exit(),
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
