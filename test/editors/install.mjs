// Finds the editors that a person may use in place of the one that Propsoff is made for, or installs Debian's.
import { findProgram, installDebianPackages, PlainError, run } from '../workbench/machine.mjs';

/** Emacs brings its protocol client along from version 29 on; before, it is a package of its own. */
async function emacsHasClient() {
  if (findProgram('emacs') === undefined) return false;
  return (await run('emacs', ['--batch', '--eval', "(require 'eglot)"], { silent: true })) === 0;
}

async function missingEditors() {
  return [
    ...(findProgram('nvim') === undefined ? ['neovim'] : []),
    ...((await emacsHasClient()) ? [] : ['emacs-nox', 'elpa-eglot']),
  ];
}

/** @throws {PlainError} if one of them is missing and can't be installed. */
export async function ensureEditors() {
  const missing = await missingEditors();
  if (missing.length === 0) return;
  await installDebianPackages(missing, 'the server is tried with two more editors');
  const still = await missingEditors();
  if (still.length > 0) throw new PlainError(`${still.join(', ')}: installed, but can’t be started`);
}
