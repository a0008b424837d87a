import { findUnitSymbol } from '../../units/unit-table';

/** Symbols that boards and programs write beside those that a script knows. */
const unitsOfBoards: ReadonlySet<string> = new Set([
  ...[
    'kB',
    'KB',
    'MB',
    'GB',
    'TB',
    'KiB',
    'MiB',
    'GiB',
    'TiB',
    'B',
    'bytes',
    'byte',
    'bits',
    'bit',
    'bps',
    'kbps',
  ],
  ...['baud', 'Bd', 'sec', 'secs', 'second', 'seconds', 'msec', 'usec', 'minutes', 'hours', 'days', 'ticks'],
  ...['cells', 'turns', 'steps', 'counts', 'pct', 'percent', 'ppm', 'px', 'dots', 'kHz', 'kbit/s', 'Mbit/s'],
  ...[
    'Sekunden',
    'Grad',
    'Schritte',
    'secondes',
    'degrees',
    'deg',
    'dps',
    'gauss',
    'mG',
    'g',
    '\u00b0',
    '\u2030',
  ],
  ...['\u00b0C', '\u00b0/s', '1/s', '\u03a9', 'k\u03a9', 'U/min', 'rad', 'rpm', 'RPM'],
]);

/** A symbol, or two with a stroke between, such as `deg/s`. */
export function isKnownUnit(text: string): boolean {
  if (text.length > 24 || text === '') return false;
  if (unitsOfBoards.has(text) || findUnitSymbol(text) !== undefined) return true;
  const parts = text.split('/');
  return parts.length === 2 && parts.every((part) => isUnitPart(part.replace(/^\((.*)\)$/, '$1')));
}

/** Whether a word behind a number could be a unit, known or not. */
export function couldBeUnit(word: string): boolean {
  return /^(?:[%\u00b0\u2030]|\p{L})[\p{L}%\u00b0/^23\u00b2\u00b3*]{0,11}$/u.test(word);
}

function isUnitPart(text: string): boolean {
  const symbol = text.replace(/(?:\^?[23]|[\u00b2\u00b3])$/, '');
  return symbol !== '' && (unitsOfBoards.has(symbol) || findUnitSymbol(symbol) !== undefined);
}
