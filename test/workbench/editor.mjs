#!/usr/bin/env node
// Stands in for a desktop editor where there is none: takes the same arguments, runs the extension tests in the
// headless workbench, and ends with the suite's exit code.
import { existsSync, fstatSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { closeBrowser, openBrowser, startWorkbench } from './launch.mjs';
import { PlainError, reportAndFail } from './machine.mjs';

const longestRun = 8 * 60_000;

/** Options as `--name=value` or `--name`; everything else is a folder. Options that a browser has no use for are let be. */
function readArguments(args) {
  const read = { development: [], tests: undefined, userData: undefined, folder: process.cwd() };
  for (const arg of args) {
    const [name, value] = arg.startsWith('--') ? splitOnce(arg) : ['folder', resolve(arg)];
    if (name === '--extensionDevelopmentPath') read.development.push(resolve(value));
    if (name === '--extensionTestsPath') read.tests = resolve(value);
    if (name === '--user-data-dir') read.userData = value;
    if (name === 'folder') read.folder = value;
  }
  if (read.tests === undefined) throw new PlainError('--extensionTestsPath=<file> is missing');
  return read;
}

function splitOnce(arg) {
  const at = arg.indexOf('=');
  return at < 0 ? [arg, ''] : [arg.slice(0, at), arg.slice(at + 1)];
}

function settingsIn(userData) {
  const path = userData === undefined ? undefined : join(userData, 'User', 'settings.json');
  return path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : {};
}

/** The workbench calls codeAutomationExit in the page once the suite in the extension host has ended. */
async function runSuite(workbench, context, { development, tests, folder }) {
  const page = await context.newPage();
  const code = new Promise((settle, fail) => {
    page.exposeFunction('codeAutomationLog', () => undefined).catch(fail);
    page.exposeFunction('codeAutomationExit', settle).catch(fail);
    page.once('crash', () => fail(new Error('the page crashed')));
    workbench.ended.then(() => fail(new Error('the workbench ended before the tests did')));
    setTimeout(() => fail(new Error('the tests did not end in time')), longestRun).unref();
  });
  const payload = [
    ...development.map((path) => ['extensionDevelopmentPath', workbench.remoteUri(path)]),
    ['extensionTestsPath', workbench.remoteUri(tests)],
  ];
  await page.goto(workbench.address(folder, payload));
  return code;
}

/** Whoever starts an editor through a pipe and dies leaves nobody to end it; a closed pipe tells. */
function endWithStarter() {
  if (!fstatSync(0).isSocket()) return;
  process.stdin.once('close', () => process.exit(1));
  process.stdin.resume().unref();
}

async function main() {
  endWithStarter();
  const options = readArguments(process.argv.slice(2));
  const workbench = await startWorkbench({ settings: settingsIn(options.userData) });
  let context;
  try {
    context = await openBrowser();
    process.exitCode = await runSuite(workbench, context, options);
  } catch (error) {
    process.stderr.write(workbench.log());
    throw error;
  } finally {
    if (context !== undefined) await closeBrowser(context);
    await workbench.stop();
  }
}

main().catch(reportAndFail);
