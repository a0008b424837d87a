import { checksOf } from '../catalog/catalog';
import type { Fault } from '../catalog/faults/fault';
import { readQuantity } from '../catalog/faults/quantities';
import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';
import type { Check } from '../catalog/model/check';
import type { Chemistry, Link, Region } from '../catalog/model/hardware';
import type { Parameter } from '../catalog/model/parameter';
import { findDimensionName } from '../units/dimension-names';

/**
 * What would have a must-fix that is built in pass as less than a risk: a replacement may be stricter, or make a
 * risk of it, and no less. Whoever means another thing gives it a name of its own.
 */
export function loweringFaults(addition: Addition, bundle: Bundle): readonly Fault[] {
  const { replaces } = addition;
  const each = <T>(
    list: string,
    rows: readonly T[],
    builtIn: readonly T[],
    keyOf: (row: T) => string,
    faultsOf: (row: T, before: T) => readonly Fault[],
  ): readonly Fault[] => {
    const known = new Map(builtIn.map((row) => [keyOf(row), row]));
    return rows.flatMap((row, index) => {
      const before = replaces.includes(keyOf(row)) ? known.get(keyOf(row)) : undefined;
      if (before === undefined) return [];
      return faultsOf(row, before).map(({ at, message }) => ({ at: [list, index, ...at], message }));
    });
  };
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  return [
    ...each('checks', addition.checks, checksOf(bundle), idOf, checkFaults),
    ...each('parameters', addition.parameters, parameters, nameOf, parameterFaults),
    ...each('chemistries', addition.chemistries, bundle.chemistries, nameOf, chemistryFaults),
    ...each('links', addition.links, bundle.links, nameOf, linkFaults),
    ...each('regions', addition.regions, bundle.regions, nameOf, regionFaults),
  ];
}

const ownName = 'give yours a name of its own instead';

function nameOf({ name }: { readonly name: string }): string {
  return name;
}

function idOf({ id }: { readonly id: string }): string {
  return id;
}

/** Groups whose findings are made as a line is read: no rule can take their place. */
const ofLines = ['line/', 'board/'];

function checkFaults({ id, level }: Pick<Check, 'id' | 'level'>, before: Check): readonly Fault[] {
  if (ofLines.some((group) => id.startsWith(group)))
    return [{ at: ['id'], message: `${id} is told as a line is read: no rule can replace it` }];
  if (before.level !== 'must-fix' || level === 'must-fix' || level === 'risk') return [];
  const message = `${id} is a must-fix: a replacement may make a risk of it, and no less`;
  return [{ at: ['level'], message }];
}

/** Of what is built in as impossible, nothing may become usual: outside of what is usual is a risk. */
function parameterFaults(parameter: Parameter, before: Parameter): readonly Fault[] {
  const { name } = before;
  if (parameter.kind !== before.kind) {
    const message = `${name} is a ${before.kind} for the rules that are built in: ${ownName}`;
    return [{ at: ['kind'], message }];
  }
  const [now, was] = [measure(parameter), measure(before)];
  if (now === null || was === null) return [];
  if (now.dimension !== was.dimension) {
    const message = `${name} measures ${findDimensionName(was.dimension)?.phrase ?? was.dimension} for the rules that are built in: ${ownName}`;
    return [{ at: now.at.slice(0, -1).concat('dimension'), message }];
  }
  const [usual, range] = [endsOf(now.usual, now.dimension), endsOf(was.range, was.dimension)];
  if (usual.low >= range.low && usual.high <= range.high) return [];
  const message = `outside of ${was.range.join(' to ')} ${name} is refused when built in: usual may not reach there`;
  return [{ at: now.at, message }];
}

interface NumberBounds {
  readonly dimension: string;
  readonly range: readonly (string | number)[];
  readonly usual: readonly (string | number)[];
  readonly at: readonly string[];
}

function measure(parameter: Parameter): NumberBounds | null {
  switch (parameter.kind) {
    case 'quantity':
    case 'range':
      return { ...parameter, at: ['usual'] };
    case 'count':
      return { ...parameter, dimension: 'ratio', at: ['usual'] };
    case 'curve':
      return { ...parameter.up, at: ['up', 'usual'] };
    default:
      return null;
  }
}

function endsOf([low, high]: NumberBounds['range'], dimension: string) {
  const read = (end: string | number | undefined) =>
    typeof end === 'string' ? (readQuantity(end, dimension).value ?? Number.NaN) : (end ?? Number.NaN);
  return { low: read(low), high: read(high) };
}

/** A fuller cell and an emptier one: what a charger and a warning are held against. */
function chemistryFaults(cell: Chemistry, before: Chemistry): readonly Fault[] {
  return [
    ...(volts(cell.full) > volts(before.full)
      ? [{ at: ['full'], message: `${cell.name} is full at ${before.full}: for another cell ${ownName}` }]
      : []),
    ...(volts(cell.empty) < volts(before.empty)
      ? [{ at: ['empty'], message: `${cell.name} is empty at ${before.empty}: for another cell ${ownName}` }]
      : []),
  ];
}

function linkFaults(link: Link, before: Link): readonly Fault[] {
  const most = (supplies: readonly string[]) => Math.max(0, ...supplies.map(volts));
  return [
    ...(most(link.supply) > most(before.supply)
      ? [
          {
            at: ['supply'],
            message: `${link.name} takes ${before.supply.join(' or ')}: for another link ${ownName}`,
          },
        ]
      : []),
    ...(['inverted', 'directions'] as const).flatMap((what) =>
      link[what] === before[what]
        ? []
        : [
            {
              at: [what],
              message: `${what} of ${link.name} is ${before[what]}: for another link ${ownName}`,
            },
          ],
    ),
  ];
}

/** Each stretch within one that is open to as many already, with no more power. */
function regionFaults({ permits }: Region, before: Region): readonly Fault[] {
  return permits.flatMap((permit, index) => {
    const isNarrower = before.permits.some(
      ({ from, to, limit, licence }) =>
        hertz(permit.from) >= hertz(from) &&
        hertz(permit.to) <= hertz(to) &&
        watts(permit.limit) <= watts(limit) * (1 + 1e-9) &&
        (licence === 'none' || licence === permit.licence),
    );
    if (isNarrower) return [];
    const message = `this opens more than ${before.name} does when built in: ${ownName}`;
    return [{ at: ['permits', index], message }];
  });
}

function valueIn(text: string, dimension: string): number {
  return readQuantity(text, dimension).value ?? Number.NaN;
}

const volts = (text: string) => valueIn(text, 'voltage');
const hertz = (text: string) => valueIn(text, 'frequency');
const watts = (text: string) => valueIn(text, 'power');
