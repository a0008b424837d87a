import type { Layer } from './layers';
import type { Script } from './script';
import type { PlacedLine } from './setting';

/** A line with the layer that its script is in. */
export interface LayeredLine extends PlacedLine {
  readonly layer: Layer;
}

/** Lines in the order in which they take effect: an include stands for all that it brings in. */
export function inEffectOrder(lines: readonly LayeredLine[]): readonly LayeredLine[] {
  if (lines.length < 2) return lines;
  return lines
    .map((line) => ({ line, order: orderOf(line) }))
    .sort((one, other) => compareNumbers(one.order, other.order))
    .map(({ line }) => line);
}

/** The line numbers of the includes on the way to a line, and its own. */
function orderOf({ layer, script, line }: LayeredLine): readonly number[] {
  return [...layer.through.map((step) => step.script.lineNumber(step.line)), script.lineNumber(line)];
}

function compareNumbers(one: readonly number[], other: readonly number[]): number {
  for (const [index, number] of one.entries()) {
    const difference = number - (other[index] ?? -1);
    if (difference !== 0) return difference;
  }
  return one.length - other.length;
}

interface MemberHeader {
  readonly name: string;
  /** The line that opens its section, if one does. */
  readonly header: PlacedLine | undefined;
}

/** Compares members of a collection by their headers, script by script; those without come last, by name. */
export function byHeader(scripts: readonly Script[]): (one: MemberHeader, other: MemberHeader) => number {
  return (one, other) => {
    if (one.header === undefined || other.header === undefined) {
      if (one.header === other.header) return one.name < other.name ? -1 : 1;
      return one.header === undefined ? 1 : -1;
    }
    const byScript = scripts.indexOf(one.header.script) - scripts.indexOf(other.header.script);
    return byScript || numberOf(one.header) - numberOf(other.header);
  };
}

function numberOf({ script, line }: PlacedLine): number {
  return script.lineNumber(line);
}
