import { strict as assert } from 'node:assert';
import { withScratch } from '../../support/scratch';
import type { WindowSize } from '../launch.mjs';
import { type EditorDriver, openEditor } from './driver';

/** How the tests of a `describe` begin. */
export interface Beginning extends WindowSize {
  /** All that is in the folder; the demo if left out. */
  readonly files?: Readonly<Record<string, string>>;
  /** Each test goes on where the one before it ended. */
  readonly goesOn?: boolean;
}

/** The window that tests of many files share. */
let opened: EditorDriver | undefined;

/** Closes it before its time, for a test of what is left then. */
export async function closeWindow(): Promise<void> {
  await opened?.close();
  opened = undefined;
}

async function begin({ width = 1280, height = 800 }: WindowSize, folder?: string): Promise<void> {
  if (opened !== undefined && !(await opened.startOver(folder))) await closeWindow();
  opened ??= await openEditor(folder === undefined ? {} : { folder });
  await opened.page.setViewportSize({ width, height });
}

// Outside of every `describe`: once, after all files.
after(closeWindow);

/**
 * A window with a folder for each test of a `describe`. It is one for all of them, of other files too, for loading it
 * takes longer than most tests. Each begins with the folder as it was and nothing open; where that can't be had, and
 * after a test that failed, the next gets another window. What the extension remembers of a script stays: a test that
 * begins where nothing is remembered names its files otherwise, or opens its own window.
 */
export function oneWindow(beginning: Beginning = {}): () => EditorDriver {
  const { files, goesOn = false } = beginning;
  let hasFailed = false;

  (goesOn ? before : beforeEach)(() =>
    files === undefined ? begin(beginning) : withScratch(files, ({ path }) => begin(beginning, path)),
  );

  afterEach(function () {
    hasFailed ||= this.currentTest?.state !== 'passed';
  });

  (goesOn ? after : afterEach)(async () => {
    if (hasFailed) await closeWindow();
    hasFailed = false;
  });

  return () => opened ?? assert.fail('no editor');
}
