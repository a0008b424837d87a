import { strict as assert } from 'node:assert';
import type { WindowSize } from '../launch.mjs';
import { type EditorDriver, openEditor } from './driver';

/** The window that tests of many files share. */
let opened: EditorDriver | undefined;

async function close(): Promise<void> {
  await opened?.close();
  opened = undefined;
}

// Outside of every `describe`: once, after all files.
after(close);

/**
 * A window with the demo for each test of a `describe`. It is one for all of them, of other files too, for loading it
 * takes longer than most tests. Each begins with the folder as it was and nothing open; where that can't be had, and
 * after a test that failed, the next gets another window. What the extension remembers of a script stays: a test that
 * begins where nothing is remembered opens its own.
 */
export function oneWindow({ width = 1280, height = 800 }: WindowSize = {}): () => EditorDriver {
  beforeEach(async () => {
    if (opened !== undefined && !(await opened.startOver())) await close();
    opened ??= await openEditor();
    await opened.page.setViewportSize({ width, height });
  });

  afterEach(async function () {
    if (this.currentTest?.state !== 'passed') await close();
  });

  return () => opened ?? assert.fail('no editor');
}
