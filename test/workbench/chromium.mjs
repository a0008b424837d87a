// Finds Chromium, or installs Debian's where that is possible; and says how it is started.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { findProgram, installDebianPackages, PlainError } from './machine.mjs';

/**
 * The same engine without a window around it: it takes a fifth less of a processor, and is the smaller package. It is no
 * phone: after a tap its mouse leaves the page, and what the tap explained is gone.
 */
const withoutWindow = 'chromium-headless-shell';
const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge'];
const macApplications = ['Google Chrome', 'Chromium', 'Microsoft Edge'];

function installedChromium(whole) {
  const chosen = process.env.PROPSOFF_CHROMIUM;
  if (chosen !== undefined && chosen !== '') {
    if (!existsSync(chosen)) throw new PlainError(`PROPSOFF_CHROMIUM names ${chosen}, which is not there`);
    return chosen;
  }
  for (const name of whole ? names : [withoutWindow, ...names]) {
    const path = findProgram(name);
    if (path !== undefined) return path;
  }
  return macApplications
    .map((name) => join('/Applications', `${name}.app`, 'Contents', 'MacOS', name))
    .find((path) => existsSync(path));
}

function install(name) {
  return installDebianPackages([name, 'fonts-dejavu-core'], 'tests in a browser need Chromium');
}

/**
 * Path of a Chromium to drive. PROPSOFF_CHROMIUM names one to be preferred.
 * @param {{ whole?: boolean }} options whether it must be the one that people have, with a window.
 * @throws {PlainError} if there is none and none can be installed.
 */
export async function ensureChromium({ whole = false } = {}) {
  const found = installedChromium(whole);
  if (found !== undefined) return found;
  if (whole) await install('chromium');
  else await install(withoutWindow).catch(() => install('chromium'));
  const installed = installedChromium(whole);
  if (installed === undefined) throw new PlainError('Chromium was installed but cannot be found on PATH');
  return installed;
}

/**
 * Arguments that keep Chromium quiet: no look-ups of its maker's hosts, no first-run pages; and that keep every page
 * on this machine. A browser does so by itself without giving up its cache, as it would for a test that looks at
 * each request.
 */
export const chromiumArguments = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];
