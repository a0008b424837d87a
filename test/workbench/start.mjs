// `npm start`: from a fresh clone to the extension at work in an editor in the browser.
// Options: --port <number> (or PORT in the environment); --page for the page without an install in the editor's place.
// Stop with Ctrl+C.
import { join } from 'node:path';
import { ensureDependencies } from './dependencies.mjs';
import { startWorkbench } from './launch.mjs';
import { mustRun, PlainError, portIsFree, reportAndFail, root, run, say } from './machine.mjs';
import { servePage } from './serve-page.mjs';

const usualPort = 8765;
const demo = join(root, 'test', 'demo');

/** What somebody who has never seen it should see first. */
const settings = { 'explorer.fileNesting.enabled': true, 'propsoff.buildSheet.showAtFirst': true };

function wantedPort(args) {
  const at = args.findIndex((arg) => arg === '--port' || arg.startsWith('--port='));
  const given = at < 0 ? process.env.PORT : (args[at].split('=')[1] ?? args[at + 1]);
  if (given === undefined || given === '') return undefined;
  const port = Number(given);
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    throw new PlainError(`${given} is not a port number`);
  return port;
}

/** A port that was asked for must be free; the usual one is only a habit. */
async function choosePort(asked) {
  if (await portIsFree(asked ?? usualPort)) return asked ?? usualPort;
  if (asked !== undefined) throw new PlainError(`port ${asked} is in use; choose another with --port`);
  return undefined;
}

async function showCommandLine() {
  say('the command line on the demo workspace: node dist/propsoff.js check test/demo');
  const code = await run(process.execPath, [join(root, 'dist', 'propsoff.js'), 'check', 'test/demo']);
  say(`exit code ${code}`);
}

/** The page without an install, as a host would give it. */
async function startPage(port) {
  say('making dist/page/propsoff.html');
  await mustRun('npm', ['run', '--silent', 'page']);
  const { address } = await servePage(port);
  say(`open ${address}`);
  say('in a browser. Scripts stay in that browser. The file opens from a disk as well. Ctrl+C stops.');
}

async function main() {
  const port = await choosePort(wantedPort(process.argv.slice(2)));
  await ensureDependencies();
  if (process.argv.includes('--page')) return startPage(port);
  say('building into dist/');
  await mustRun('npm', ['run', '--silent', 'build']);
  await showCommandLine();
  const workbench = await startWorkbench({ port, extension: root, folder: demo, settings });
  const racer = workbench.remoteUri(join(demo, 'sandmartin.craft'));
  say(`open ${workbench.address(demo, [['openFile', racer]])}`);
  say(
    'in a browser: the racer of the demo workspace, with Propsoff installed and its build sheet beside it.',
  );
  say('Edits there change the files in test/demo. Ctrl+C stops.');
  await workbench.ended;
  throw new PlainError(`the workbench ended by itself:\n${workbench.log()}`);
}

main().catch(reportAndFail);
