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
  /** What it became: a proposed name taken, a constant renamed, formatted. */
  readonly text: string;
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

const script = 'let quiet = 90 Hz\n[arming]\ntilt-limt = 60 deg\n\n[gyro.filter.1]\ncutoff   =2 * quiet\n';

/** The same after a person has worked on it; what was misspelt is still. */
const worked = [
  'let calm = 90 Hz',
  '',
  '[arming]',
  'tilt-limt = 60 deg',
  '',
  '[gyro.filter.1]',
  'cutoff = 2 * calm',
  'kind =',
].join('\n');

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
        TYPED: 'ki',
        TAKEN: 'kind',
        CONSTANT: 'quiet',
        RENAMED: 'calm',
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
    it(`${editor.title}, set up as the documents say, shows a finding and a hover, takes a name, renames and formats`, async () => {
      const { findings, hover, text } = await tried(editor, script);
      assert.deepEqual(
        findings.map(({ line }) => line),
        [3],
      );
      assert.match(findings[0]?.message ?? '', /Did you mean arming\.tilt-limit\?/);
      assert.match(hover, /Cutoff of a gyro filter/);
      assert.match(hover, /180 Hz/);
      assert.equal(text.trimEnd(), worked);
    });
  }
});
