// Starts the workbench on a loopback port with folders of its own, opens it in Chromium, and leaves nothing behind.
import { spawn } from 'node:child_process';
import { closeSync, mkdirSync, openSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { chromiumArguments, ensureChromium } from './chromium.mjs';
import { atExit, freePort, mustRun, scratchFolder, until } from './machine.mjs';
import { ensureWorkbench, workbenchNode } from './setup.mjs';

/** Everything in the editor that is not about the open script is off. */
export const quietSettings = {
  'chat.commandCenter.enabled': false,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'git.openRepositoryInParentFolders': 'never',
  'remote.autoForwardPorts': false,
  // Else all that every process has open is listed every few seconds.
  'remote.autoForwardPortsSource': 'output',
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'update.showReleaseNotes': false,
  'window.commandCenter': false,
  'workbench.enableExperiments': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
};

/** What every process of a workbench has in its environment: the folder of that one. */
export const homeVariable = 'PROPSOFF_WORKBENCH_HOME';

/** Variables of an editor or server around us would make this one join it or listen elsewhere. */
function cleanEnvironment(home, extra) {
  const foreign = /^(VSCODE_|CODE_SERVER_|ELECTRON_|CS_|PORT$|PASSWORD$|HASHED_PASSWORD$|GITHUB_TOKEN$)/;
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !foreign.test(name)));
  // An empty gallery: this workbench offers and looks up no other extensions.
  const own = { EXTENSIONS_GALLERY: '{}', XDG_DATA_HOME: join(home, 'share'), [homeVariable]: home };
  return { ...env, ...own, ...extra };
}

/** Has an extension's folder count as installed, where it lies: what a person has, without packing it first. */
function installInPlace(home, extension) {
  const manifest = JSON.parse(readFileSync(join(extension, 'package.json'), 'utf8'));
  const entry = {
    identifier: { id: `${manifest.publisher}.${manifest.name}` },
    version: manifest.version,
    location: { $mid: 1, scheme: 'file', path: resolve(extension) },
  };
  writeFileSync(join(home, 'extensions', 'extensions.json'), JSON.stringify([entry]));
}

/** Has the editor's own installer unpack an extension into the home's folder of extensions. */
async function installPackage(entry, home, path) {
  const folders = ['--user-data-dir', join(home, 'data'), '--extensions-dir', join(home, 'extensions')];
  const args = ['--config', join(home, 'server.yaml'), ...folders, '--install-extension', resolve(path)];
  await mustRun(workbenchNode(), [entry, ...args], { env: cleanEnvironment(home, {}), quiet: true });
}

function prepareHome(settings, extension) {
  const home = scratchFolder('workbench');
  const user = join(home, 'data', 'User');
  for (const folder of [user, join(home, 'extensions')]) mkdirSync(folder, { recursive: true });
  writeFileSync(join(home, 'server.yaml'), 'auth: none\n');
  writeFileSync(join(user, 'settings.json'), JSON.stringify({ ...quietSettings, ...settings }, undefined, 2));
  if (extension !== undefined) installInPlace(home, extension);
  return home;
}

/** Has the server start with some of the editor's own extensions only. */
function builtInArguments(entry, home, names) {
  if (names === undefined) return [];
  const all = join(dirname(entry), '..', '..', 'lib', 'vscode', 'extensions');
  const folder = join(home, 'built-in');
  mkdirSync(folder);
  for (const name of names) symlinkSync(resolve(all, name), join(folder, name));
  return ['--builtin-extensions-dir', folder];
}

function serverArguments(home, port, folder) {
  return [
    ['--config', join(home, 'server.yaml')],
    ['--bind-addr', `127.0.0.1:${port}`],
    ['--auth', 'none'],
    ['--user-data-dir', join(home, 'data')],
    ['--extensions-dir', join(home, 'extensions')],
    ['--session-socket', join(home, 'session.sock')],
    ['--disable-telemetry', '--disable-update-check', '--disable-workspace-trust'],
    ['--disable-getting-started-override', '--disable-proxy', '--ignore-last-opened'],
    folder === undefined ? [] : [resolve(folder)],
  ].flat();
}

/** Signals the server and all that it started; false if there is nobody left to hear it. */
function signalGroup(child, name) {
  try {
    process.kill(-child.pid, name);
    return true;
  } catch {
    return false;
  }
}

/** Ends the server with all that it started, and waits until the last of it is gone. */
async function endGroup(child) {
  const isGone = () => !signalGroup(child, 0);
  signalGroup(child, 'SIGTERM');
  await until('the workbench to end', 5_000, isGone).catch(() => signalGroup(child, 'SIGKILL'));
  await until('the workbench to be gone', 5_000, isGone);
}

function remoteUri(origin, path) {
  return `vscode-remote://${new URL(origin).host}${resolve(path)}`;
}

/** Address of a folder in the workbench; payload pairs are the editor's own start arguments. */
function addressOf(origin, folder, payload) {
  const url = new URL(origin);
  url.searchParams.set('folder', resolve(folder));
  if (payload.length > 0) url.searchParams.set('payload', JSON.stringify(payload));
  return url.href;
}

/**
 * Starts a workbench server of its own. See launch.d.mts for the shapes.
 * @throws {Error} with the server's last words if it does not come up.
 */
export async function startWorkbench({
  port,
  settings = {},
  env = {},
  extension,
  package: packed,
  builtIn,
  folder,
} = {}) {
  const entry = await ensureWorkbench();
  const home = prepareHome(settings, extension);
  if (packed !== undefined) await installPackage(entry, home, packed);
  const chosen = port ?? (await freePort());
  const logPath = join(home, 'server.log');
  const log = openSync(logPath, 'w');
  const args = [...builtInArguments(entry, home, builtIn), ...serverArguments(home, chosen, folder)];
  const child = spawn(workbenchNode(), [entry, ...args], {
    env: cleanEnvironment(home, env),
    stdio: ['ignore', log, log],
    detached: true,
  });
  closeSync(log);
  // A process that ends without calling stop takes the server along.
  const callOff = atExit(() => signalGroup(child, 'SIGKILL'));
  const ended = new Promise((settle) => child.once('exit', settle));
  const origin = `http://127.0.0.1:${chosen}/`;
  const workbench = {
    origin,
    home,
    ended,
    log: () => readFileSync(logPath, 'utf8'),
    address: (folder, payload = []) => addressOf(origin, folder, payload),
    remoteUri: (path) => remoteUri(origin, path),
    stop: async () => {
      await endGroup(child);
      callOff();
      rmSync(home, { recursive: true, force: true, maxRetries: 5 });
    },
  };
  try {
    await until('the workbench to answer', 60_000, () => {
      if (child.exitCode !== null) throw new Error(`the workbench ended with code ${child.exitCode}`);
      return fetch(`${origin}healthz`)
        .then((answer) => answer.ok)
        .catch(() => false);
    });
  } catch (error) {
    const words = workbench.log();
    await workbench.stop();
    throw new Error(`${error.message}\n${words}`);
  }
  return workbench;
}

/**
 * Starts a Chromium that can reach nothing but this machine: `whole`, the one that people have, or what is quicker.
 * @returns {Promise<import('playwright-core').Browser>}
 */
export async function launchBrowser({ show = false, whole = show } = {}) {
  const executablePath = await ensureChromium({ whole });
  const { chromium } = await import('playwright-core');
  return chromium.launch({ executablePath, headless: !show, args: chromiumArguments });
}

/** An empty profile of a browser: nothing that another one keeps is in it. */
export function emptyProfile(browser, { width = 1280, height = 800 } = {}) {
  return browser.newContext({
    viewport: { width, height },
    permissions: ['clipboard-read', 'clipboard-write'],
  });
}

/**
 * Starts a Chromium of its own with an empty profile.
 * @returns {Promise<import('playwright-core').BrowserContext>} close it with closeBrowser.
 */
export async function openBrowser(options = {}) {
  return emptyProfile(await launchBrowser(), options);
}

/** Closes the browser that openBrowser started. */
export async function closeBrowser(context) {
  await context.browser()?.close();
}

export { scratchFolder };
