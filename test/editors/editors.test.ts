import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { chmodSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { built } from '../support/built';
import { codeBlocks } from '../support/document';
import { withScratch } from '../support/scratch';

interface Answer {
  readonly findings: readonly { readonly line: number; readonly message: string }[];
  readonly hover: string;
}

interface Editor {
  readonly title: string;
  /** The language of the set-up's block in `schemas/EDITORS.md`. */
  readonly setUp: string;
  /** The name of its file: by the ending an editor knows what it reads. */
  readonly setUpFile: string;
  readonly driver: string;
  /** How it is started without a screen, so that it reads a set-up and then does what a driver says. */
  readonly command: (setUp: string, driver: string) => readonly [program: string, ...args: string[]];
}

const editors: readonly Editor[] = [
  {
    title: 'Neovim',
    setUp: 'lua',
    setUpFile: 'init.lua',
    driver: 'drive.lua',
    command: (setUp, driver) => ['nvim', '--headless', '-u', setUp, '-c', `luafile ${driver}`],
  },
  {
    title: 'Emacs',
    setUp: 'elisp',
    setUpFile: 'init.el',
    driver: 'drive.el',
    command: (setUp, driver) => ['emacs', '--batch', '-l', setUp, '-l', driver],
  },
];

const script = '[arming]\ntilt-limt = 60 deg\n\n[gyro.filter.1]\ncutoff = 180 Hz\n';

/** The documents' own set-up for an editor: what is shown there is what is tried here. */
function setUpFor({ setUp, title }: Editor): string {
  const [block, ...others] = codeBlocks('schemas/EDITORS.md').filter(({ language }) => language === setUp);
  assert.ok(block !== undefined && others.length === 0, `schemas/EDITORS.md has one set-up for ${title}`);
  return block.text;
}

/** Starts the editor in a folder of its own, with a `propsoff` on the path, and gives what it was shown. */
async function tried(editor: Editor, text: string): Promise<Answer> {
  const starter = `#!/bin/sh\nexec '${process.execPath}' '${built('propsoff.js')}' "$@"\n`;
  const files = { [editor.setUpFile]: setUpFor(editor), 'my.craft': text, 'bin/propsoff': starter };
  return withScratch(files, async (scratch) => {
    chmodSync(scratch.file('bin/propsoff'), 0o755);
    const [program, ...args] = editor.command(scratch.file(editor.setUpFile), join(__dirname, editor.driver));
    const { stderr, error } = spawnSync(program, args, {
      cwd: scratch.path,
      encoding: 'utf8',
      timeout: 60_000,
      env: {
        ...process.env,
        HOME: scratch.path,
        PATH: [scratch.file('bin'), process.env.PATH].join(delimiter),
        SCRIPT: scratch.file('my.craft'),
        WORD: 'cutoff',
        ANSWER: scratch.file('answer.json'),
      },
    });
    try {
      return JSON.parse(readFileSync(scratch.file('answer.json'), 'utf8')) as Answer;
    } catch {
      throw new Error(`${editor.title} gave no answer: ${error?.message ?? stderr}`);
    }
  });
}

describe('other editors', () => {
  for (const editor of editors) {
    it(`${editor.title}, set up as the documents say, shows a finding on its line and a hover`, async () => {
      const { findings, hover } = await tried(editor, script);
      assert.deepEqual(
        findings.map(({ line }) => line),
        [2],
      );
      assert.match(findings[0]?.message ?? '', /Did you mean arming\.tilt-limit\?/);
      assert.match(hover, /Cutoff of a gyro filter/);
      assert.match(hover, /180 Hz/);
    });
  }
});
