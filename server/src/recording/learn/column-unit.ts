import type { ColumnKind } from '../../catalog/model/recording-columns';
import type { LayoutColumn } from '../../catalog/model/recording-layout';
import { shortNumber } from '../../units/number-text';
import { unitOf } from '../../units/unit';
import type { Behaviour } from './behaviour';
import type { SaidHeading } from './heading-words';
import type { ColumnQuestion } from './proposed-column';

type UnitWay = ColumnKind['ways'][number];

/** What a column means as far as its unit goes, why, and what is to be asked. */
export interface UnitFound {
  readonly means: LayoutColumn;
  readonly why: string;
  readonly asks: readonly ColumnQuestion[];
}

/** The unit of a column's numbers: what its heading says, if the numbers can be that; else what they can be alone. */
export function columnUnit(
  bare: LayoutColumn,
  kind: ColumnKind,
  said: SaidHeading,
  behaviour: Behaviour,
): UnitFound {
  const fitting = kind.ways.filter((way) => fits(way, kind, behaviour));
  const saidWay = kind.ways.find(({ unit, scale }) => unit === said.unit && scale === 1);
  const size = shortNumber(sizeOf(kind, behaviour));
  const numbers = isSteady(kind) ? `its numbers are about ${size}` : `its numbers go to ${size}`;
  const [only, second] = fitting;
  if (saidWay !== undefined && fitting.includes(saidWay))
    return { means: withWay(bare, saidWay), why: `it gives the unit ${saidWay.unit}`, asks: [] };
  if (saidWay !== undefined)
    return asked(bare, [...fitting, saidWay], {
      why: `it gives the unit ${saidWay.unit}`,
      sentence: `Its heading says ${saidWay.unit}, and ${size} ${saidWay.unit} can hardly be: in which unit is it?`,
    });
  if (
    only !== undefined &&
    !isCount(only, kind) &&
    said.unknownUnit === null &&
    (second === undefined || isTold(only, behaviour))
  )
    return {
      means: withWay(bare, only),
      why: `${numbers}, which fits ${wayText(only)} alone`,
      asks: [],
    };
  return asked(bare, fitting.length > 0 ? fitting : kind.ways, {
    why: 'its unit is not sure',
    sentence:
      said.unknownUnit !== null
        ? `Nobody knows its unit “${said.unknownUnit}”; ${numbers}: which unit is it?`
        : `I${numbers.slice(1)}, which ${fitting.length > 1 ? 'several units allow' : 'is no usual size in any unit'}: in which unit is it?`,
  });
}

/** What a gyro counts hangs on the gyro: nobody can know it by the numbers. */
function isCount({ scale }: UnitWay, { kind }: ColumnKind): boolean {
  return scale !== 1 && kind !== 'voltage' && kind !== 'current';
}

/** A number with digits behind the point is written in the unit itself, not in parts of it. */
function isTold({ unit, scale }: UnitWay, { isWhole }: Behaviour): boolean {
  return !isWhole && scale === 1 && (unit === 'V' || unit === 'A');
}

function asked(
  bare: LayoutColumn,
  ways: readonly UnitWay[],
  { why, sentence }: { readonly why: string; readonly sentence: string },
): UnitFound {
  const choices = ways.map((way) => ({ title: wayText(way), means: withWay(bare, way) }));
  const [likeliest] = choices;
  return { means: likeliest?.means ?? bare, why, asks: [{ sentence, keepsOut: true, choices }] };
}

function withWay(bare: LayoutColumn, { unit, scale }: UnitWay): LayoutColumn {
  return { ...bare, unit, ...(scale === 1 ? {} : { scale }) };
}

function wayText({ unit, scale }: UnitWay): string {
  return scale === 1 ? unit : `${shortNumber(scale)} ${unit}`;
}

function fits({ unit, scale }: UnitWay, kind: ColumnKind, behaviour: Behaviour): boolean {
  // Parts of a unit are counted, and counts are whole.
  if (scale !== 1 && !behaviour.isWhole) return false;
  const [first] = kind.ways;
  if (kind.sizes === undefined || first === undefined) return true;
  const [low, high] = kind.sizes;
  const size = (sizeOf(kind, behaviour) * scale * unitOf(unit).factor) / unitOf(first.unit).factor;
  return size >= low && size <= high;
}

/** A pack is at its voltage all the time, a craft turns at its fastest now and then. */
function isSteady({ kind }: ColumnKind): boolean {
  return kind === 'voltage' || kind === 'frames';
}

function sizeOf(kind: ColumnKind, { middle, large }: Behaviour): number {
  return isSteady(kind) ? middle : large;
}
