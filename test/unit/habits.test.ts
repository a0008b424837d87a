import { strict as assert } from 'node:assert';
import { accessSync, constants, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(__dirname, '../..');
const textOf = (path: string) => readFileSync(join(root, path), 'utf8');

interface Manifest {
  readonly version: string;
  readonly engines: Readonly<Record<string, string>>;
  readonly scripts: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

/** One way to start the extension from the editor. */
interface Launch {
  readonly args: readonly string[];
  readonly preLaunchTask: string;
}

interface Task {
  readonly label: string;
  readonly command: string;
}

const manifest = JSON.parse(textOf('package.json')) as Manifest;

describe('the habits of the repository', () => {
  it('types are those of the oldest editor that is supported', () => {
    const [, oldest] = /^\^(\d+\.\d+)\.0$/.exec(manifest.engines.vscode ?? '') ?? [];
    assert.equal(manifest.devDependencies['@types/vscode'], oldest);
    const installed = JSON.parse(textOf('node_modules/@types/vscode/package.json')) as Manifest;
    assert.equal(installed.version, `${oldest}.0`);
  });

  it('every command that a text names is there', () => {
    const texts = ['README.md', 'DEVELOPERS.md', '.githooks/pre-commit', '.github/pull_request_template.md'];
    for (const path of texts) {
      const named = [...textOf(path).matchAll(/\bnpm run (?:--silent )?([a-z]+)/g)];
      assert.ok(named.length > 0, path);
      for (const [command, name = ''] of named) assert.ok(name in manifest.scripts, `${path}: ${command}`);
    }
  });

  it('every script of the manifest is told of', () => {
    const told = textOf('DEVELOPERS.md');
    for (const name of Object.keys(manifest.scripts)) {
      assert.match(told, new RegExp(`\`npm (run )?${name}\``), name);
    }
  });

  it('the editor builds by a command that is there, then starts the extension with the demo', () => {
    const launch = JSON.parse(textOf('.vscode/launch.json')) as { configurations: readonly Launch[] };
    const { tasks } = JSON.parse(textOf('.vscode/tasks.json')) as { tasks: readonly Task[] };
    for (const { command } of tasks) assert.ok((command.split(' ')[2] ?? '') in manifest.scripts, command);
    for (const { args, preLaunchTask } of launch.configurations) {
      assert.ok(tasks.some(({ label }) => label === preLaunchTask));
      const folder = args.at(-1)?.replace(/^.*\}\//, '') ?? '';
      assert.ok(readdirSync(join(root, folder)).some((name) => name.endsWith('.craft')));
    }
  });

  it('a hook that git can run checks what is staged', () => {
    accessSync(join(root, '.githooks/pre-commit'), constants.X_OK);
    assert.match(textOf('.githooks/pre-commit'), /^#!\/bin\/sh\n/);
  });

  it('an issue begins with a form that says what it is for', () => {
    const forms = readdirSync(join(root, '.github/ISSUE_TEMPLATE')).filter((name) => name.endsWith('.md'));
    assert.ok(forms.length > 0);
    for (const name of forms) {
      assert.match(textOf(join('.github/ISSUE_TEMPLATE', name)), /^---\nname: .+\nabout: .+\n---\n/, name);
    }
  });
});
