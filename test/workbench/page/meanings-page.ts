import { strict as assert } from 'node:assert';
import { join } from 'node:path';
import type { FrameLocator, Locator } from 'playwright-core';
import type { EditorDriver } from './driver';

/** A setting as the profile's file has it. */
interface Row {
  readonly group?: string | readonly string[];
  readonly name: string;
  readonly means?: string;
  readonly role?: string;
  readonly port?: string;
  readonly items?: readonly object[];
  readonly counts?: { readonly scale?: number; readonly table?: object };
}

/** The page on which is said what settings mean, and the profile that it keeps. */
export class MeaningsPage {
  constructor(private readonly editor: EditorDriver) {}

  get page(): FrameLocator {
    return this.editor.webview();
  }

  /** Opens the page of a captured text that is open in the editor. */
  async open(file: string): Promise<void> {
    await this.editor.runCommand('Propsoff: Say What Settings Mean');
    await this.editor.page.locator('.quick-input-list .monaco-list-row', { hasText: file }).first().click();
    await this.page.locator('.counts').waitFor();
  }

  row(key: string): Locator {
    return this.page.locator(`.row[data-key="${key}"]`);
  }

  /** Opens the choice of a row by its key. */
  async choose(key: string): Promise<void> {
    const own = this.page.locator('.part-own .fold[aria-expanded="false"]');
    if (!(await this.row(key).isVisible()) && (await own.count()) > 0) await own.click();
    await this.row(key).focus();
    await this.editor.press('ArrowRight');
    await this.page.locator('.editor').waitFor();
  }

  /** Says in the open choice which parameter it is. */
  async means(path: string): Promise<void> {
    await this.page.locator('.editor .wide input').fill(path);
    await this.editor.press('Tab');
    await this.page.locator('.editor .rest > p').waitFor();
  }

  async previewed(text: string): Promise<void> {
    await this.page.locator('.preview', { hasText: text }).waitFor();
  }

  /** Takes what the open choice says. */
  async take(board: string): Promise<void> {
    await this.pressed(board, () => this.page.locator('.editor button.main').click());
  }

  profile(board: string): readonly Row[] {
    const text = this.editor.savedText(join('boards', `${board}.json`));
    return text === undefined ? [] : JSON.parse(text).settings;
  }

  /** Of so many settings something is said. */
  said(board: string): number {
    return this.profile(board).filter(({ means, role, port, items }) =>
      [means, role, port, items].some((one) => one !== undefined),
    ).length;
  }

  /** Presses, and waits until it is kept. */
  async pressed(board: string, press: () => Promise<void>): Promise<void> {
    const counts = this.page.locator('.counts');
    const before = await counts.innerText();
    await press();
    await this.editor.waitUntil('the press to be kept', async () => (await counts.innerText()) !== before);
    assert.match(await counts.innerText(), new RegExp(`^${this.said(board)} of `));
  }
}
