import { quoted, readQuoted } from './quoted-text';

/** The group of the settings that only the board knows: its steps may be any text, and its values are raw. */
export const ownGroup = 'own';

/** Whether a section is meant for such settings: one in capitals is reported, and what stands below it is kept all the same. */
export function isOwnGroup(name: string | undefined): boolean {
  return name?.toLowerCase() === ownGroup;
}

/** A step that is written without quotes. */
export const plainStep = /[A-Za-z0-9_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*/y;

/**
 * A path as text: plain steps as they are, others in double quotes, with dots between them. There is one such
 * text for each path, so that texts may be compared in place of paths.
 */
export function pathText(steps: readonly string[]): string {
  return steps.map((step) => (isPlainStep(step) ? step : quoted(step))).join('.');
}

/** The steps of a path: `own."PID α".roll` is `own`, `PID α`, `roll`. Takes any text; never throws. */
export function stepsOf(text: string): readonly string[] {
  if (!text.includes('"')) return text.split('.');
  const steps: string[] = [];
  for (let at = 0; at <= text.length; ) {
    const { step, end } = readStep(text, at);
    steps.push(step);
    at = end + 1;
  }
  return steps;
}

/** Whether a path leads into the settings that only the board knows. */
export function isOwnPath(path: string): boolean {
  return path.startsWith(`${ownGroup}.`);
}

/** The text of a path below a section; the path itself where no section is open. */
export function joinedPath(section: string, path: string): string {
  return section === '' ? path : `${section}.${path}`;
}

function readStep(text: string, start: number): { readonly step: string; readonly end: number } {
  if (text[start] === '"') {
    const { text: step, end } = readQuoted(text, start);
    return { step, end };
  }
  const dot = text.indexOf('.', start);
  const end = dot < 0 ? text.length : dot;
  return { step: text.slice(start, end), end };
}

function isPlainStep(step: string): boolean {
  plainStep.lastIndex = 0;
  return plainStep.exec(step)?.[0].length === step.length && step !== '';
}
