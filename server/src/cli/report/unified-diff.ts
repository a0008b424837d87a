import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import { painted, type Terminal } from '../terminal';
import { visible } from './visible';

/** What parts two texts of a file, in the form that `patch` and `git apply` read; made harmless where a person looks. */
export function unifiedDiff(
  path: string,
  before: string,
  after: string,
  terminal: Pick<Terminal, 'hasColour' | 'width'>,
): string {
  const name = visible(path);
  const patch = createTwoFilesPatch(name, name, before, after, undefined, undefined, {
    context: 3,
    headerOptions: FILE_HEADERS_ONLY,
  });
  const lines = patch.split('\n');
  const shown = terminal.width === null ? lines : lines.map(visible);
  return shown.map((line) => colouredLine(line, terminal)).join('\n');
}

function colouredLine(line: string, terminal: Pick<Terminal, 'hasColour'>): string {
  if (/^(?:---|\+\+\+|@@) /.test(line)) return painted(line, 'bold', terminal);
  if (line.startsWith('-')) return painted(line, 'red', terminal);
  return line.startsWith('+') ? painted(line, 'green', terminal) : line;
}
