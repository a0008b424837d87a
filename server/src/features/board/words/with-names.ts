import { withoutEnd } from './without-end';

/** How what a sentence names is called; null: as it stands. */
export interface Naming {
  /** A path such as `gyro.rate`, or the end of one of several words: `keep-steering`. */
  called(name: string): string | null;
  /** `[gyro.filter.1]` */
  section(path: string): string | null;
  /** `esc.speed-feedback on` */
  turned(name: string, isOn: boolean): string | null;
}

/** A sentence of ours with paths of a script called otherwise. */
export function withNames(text: string, naming: Naming): string {
  // Words stand at the odd places.
  const parts = text.split(/([\w./-]+)/);
  for (let at = 1; at < parts.length; at += 2) {
    const word = parts[at] ?? '';
    const name = withoutEnd(word, /[./-]/);
    const isInBrackets = parts[at - 1]?.endsWith('[') === true && parts[at + 1]?.startsWith(']') === true;
    if (isInBrackets && isPath.test(name)) putSection(parts, at, naming.section(name));
    else if (isName(name) && !putTurned(parts, at, naming))
      parts[at] = (naming.called(name) ?? name) + word.slice(name.length);
  }
  return parts.join('');
}

const isPath = /^[a-z][a-z0-9-]*(\.[a-z0-9][a-z0-9-]*)*$/;
/** One word is a word of a sentence too. */
const isCompound = /^[a-z]+(-[a-z]+)+$/;

function isName(word: string): boolean {
  return (word.includes('.') && isPath.test(word)) || isCompound.test(word);
}

function putSection(parts: string[], at: number, called: string | null): void {
  if (called === null) return;
  parts[at - 1] = parts[at - 1]?.slice(0, -1) ?? '';
  parts[at] = called;
  parts[at + 1] = parts[at + 1]?.slice(1) ?? '';
}

/** False where the word is not said to be on or off. */
function putTurned(parts: string[], at: number, { turned }: Naming): boolean {
  const state = parts[at + 2] ?? '';
  const word = withoutEnd(state, /[./-]/);
  if (parts[at + 1] !== ' ' || (word !== 'on' && word !== 'off')) return false;
  const told = turned(parts[at] ?? '', word === 'on');
  if (told === null) return false;
  if (parts[at - 2] === 'Turn') parts[at - 2] = 'Set';
  parts[at] = told;
  parts[at + 1] = '';
  parts[at + 2] = state.slice(word.length);
  return true;
}
