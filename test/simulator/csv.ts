import type { Rows } from './recorder';

/** A column as some logger might write it: value × factor + offset, with so many digits. */
export interface WrittenColumn {
  readonly heading: string;
  /** A column of the rows; null: always 0. */
  readonly of: string | null;
  readonly factor: number;
  readonly offset: number;
  readonly digits: number;
}

export interface Layout {
  readonly name: string;
  readonly separator: string;
  readonly decimal: '.' | ',';
  readonly lineEnd: '\n' | '\r\n';
  /** Lines before the headings. */
  readonly before: readonly string[];
  readonly columns: readonly WrittenColumn[];
  /** A separator at the end of each line. */
  readonly trails: boolean;
  /** The first row has only zeros beside its stamp. */
  readonly startsWithZeros: boolean;
}

const [minus, zero] = [0x2d, 0x30];

/** The bytes of a file. Written by hand, for a hundred million numbers pass through here. */
export function csvOf(rows: Rows, layout: Layout): Uint8Array {
  const { separator, lineEnd, before, columns, trails } = layout;
  const head = [...before, columns.map(({ heading }) => heading).join(separator) + (trails ? separator : '')];
  const start = new TextEncoder().encode(head.map((line) => line + lineEnd).join(''));
  const ends = new TextEncoder().encode(lineEnd);
  const between = new TextEncoder().encode(separator)[0]!;
  const point = layout.decimal.charCodeAt(0);
  let bytes = new Uint8Array(start.length + rows.count * columns.length * 10 + 1024);
  bytes.set(start);
  let at = start.length;
  const values = columns.map(({ of }) => (of === null ? undefined : rows.columns.get(of)));
  const scales = columns.map(({ factor, digits }) => factor * 10 ** digits);
  const offsets = columns.map(({ offset, digits }) => offset * 10 ** digits);
  const digits = new Uint8Array(24);
  for (let row = 0; row < rows.count; row += 1) {
    if (at + columns.length * 24 + 8 > bytes.length) {
      const more = new Uint8Array(bytes.length * 2 + columns.length * 24);
      more.set(bytes);
      bytes = more;
    }
    for (let column = 0; column < columns.length; column += 1) {
      if (column > 0) bytes[at++] = between;
      const isZero = layout.startsWithZeros && row === 0 && column > 0;
      let left = isZero ? 0 : Math.round((values[column]?.[row] ?? 0) * scales[column]! + offsets[column]!);
      if (left < 0) {
        bytes[at++] = minus;
        left = -left;
      }
      const after = columns[column]!.digits;
      let written = 0;
      while (left > 0 || written <= after) {
        const rest = Math.floor(left / 10);
        digits[written++] = zero + (left - 10 * rest);
        left = rest;
      }
      for (let digit = written - 1; digit >= 0; digit -= 1) {
        bytes[at++] = digits[digit]!;
        if (digit === after && after > 0) bytes[at++] = point;
      }
    }
    if (trails) bytes[at++] = between;
    for (const byte of ends) bytes[at++] = byte;
  }
  return bytes.subarray(0, at);
}
