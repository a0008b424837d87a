// Finds a desktop editor to run the suite in, where there is one with a screen to show it on.
import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { findProgram, PlainError } from './machine.mjs';

/** `code` on PATH is a script that hands over and returns at once; the program itself lies beside it. */
function programBehind(script) {
  const bin = dirname(realpathSync(script));
  const candidates = {
    linux: [join(bin, '..', 'code')],
    darwin: [join(bin, '..', '..', '..', 'MacOS', 'Electron'), join(bin, '..', '..', '..', 'MacOS', 'Code')],
    win32: [join(bin, '..', 'Code.exe')],
  };
  return (candidates[process.platform] ?? []).find((path) => existsSync(path));
}

function hasScreen() {
  if (process.platform !== 'linux') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/**
 * Path of the desktop editor to use, or undefined for the headless workbench.
 * PROPSOFF_EDITOR names the program; `workbench` there means the headless one even if a desktop editor is found.
 */
export function desktopEditor() {
  const chosen = process.env.PROPSOFF_EDITOR ?? '';
  if (chosen === 'workbench') return undefined;
  if (chosen !== '') {
    if (!existsSync(chosen)) throw new PlainError(`PROPSOFF_EDITOR names ${chosen}, which is not there`);
    return chosen;
  }
  const script = findProgram('code');
  return script !== undefined && hasScreen() ? programBehind(script) : undefined;
}
