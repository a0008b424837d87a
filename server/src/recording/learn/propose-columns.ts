import type { ColumnKind, RecordingColumns } from '../../catalog/model/recording-columns';
import type { LayoutColumn } from '../../catalog/model/recording-layout';
import { type AxisName, axisNames } from '../../figures/axis-names';
import type { RowSurvey, SurveyedColumn } from '../read/survey';
import { type Behaviour, behaviourOf, jointBehaviour } from './behaviour';
import { columnClock } from './column-clock';
import { armOf, isNumbered, kindsOf, type SpokenKind } from './column-kind';
import { columnOutput } from './column-output';
import { columnUnit, type UnitFound } from './column-unit';
import { type SaidHeading, saidHeading } from './heading-words';
import type { ColumnQuestion, ProposedColumn, WhyLeftOut } from './proposed-column';
import { together } from './together';
import { unnamedColumns } from './unnamed-columns';

/** A column with all that is known of it by itself. */
interface KnownColumn {
  readonly column: SurveyedColumn;
  readonly said: SaidHeading;
  readonly behaviour: Behaviour;
  readonly kinds: readonly SpokenKind[];
}

/** What the columns of a file may hold, each with its reason; what nobody can know is asked. */
export function proposeColumns(survey: RowSurvey, words: RecordingColumns): readonly ProposedColumn[] {
  const known = survey.columns.map((column): KnownColumn => {
    const said = saidHeading(column.heading, words);
    const behaviour = behaviourOf(column);
    return {
      column,
      said,
      behaviour,
      kinds: kindsOf(said, words).filter((one) => isPossible(one, behaviour)),
    };
  });
  const proposed =
    survey.head.headingLine === null
      ? unnamedColumns(known, words)
      : known.map((one) => proposedFor(one, known, words));
  return together(proposed, survey);
}

/** A weak word needs numbers that do what such a column does. */
function isPossible({ kind, isWeak }: SpokenKind, behaviour: Behaviour): boolean {
  if (kind.kind === 'other') return true;
  const isConstant = behaviour.least === behaviour.most;
  if (behaviour.count === 0 || (isConstant && isWeak)) return false;
  if (kind.kind === 'time') return behaviour.rises;
  if (!isWeak) return true;
  if (kind.kind === 'gyro' || kind.kind === 'wanted')
    return Math.abs(behaviour.middle) < 0.5 * behaviour.large && behaviour.least < 0 && behaviour.most > 0;
  return kind.kind === 'speed' ? behaviour.most > 300 : behaviour.least >= 0;
}

function proposedFor(one: KnownColumn, all: readonly KnownColumn[], words: RecordingColumns): ProposedColumn {
  const { column, said, behaviour, kinds } = one;
  const [first, second] = kinds;
  const out = (leftOut: WhyLeftOut, why: string): ProposedColumn => ({
    column,
    means: { heading: column.heading },
    why,
    asks: [],
    leftOut,
  });
  if (behaviour.count === 0) return out('no numbers', 'It holds no numbers.');
  if (first === undefined && isAxisAlone(one, words)) return axisAlone(one, all, words);
  if (first === undefined)
    return behaviour.least === behaviour.most
      ? out('never changes', 'It never changes.')
      : out('unknown', 'Nobody knows what it holds.');
  if (first.kind.kind === 'other')
    return out('not needed', `Its heading says ${first.word}, which no answer needs.`);
  if (isAlwaysZero(alike(one, first.kind, all))) return out('never changes', 'It is always zero.');
  const found = kinds.map(({ kind }) => ({ kind, ...meant(one, kind, all, words) }));
  const likeliest = found[0];
  if (likeliest === undefined) return out('unknown', 'Nobody knows what it holds.');
  const { means, why, asks } = likeliest;
  const isSure = !first.isWeak || said.unit !== null || first.kind.kind === 'time';
  return {
    column,
    means,
    why: `Its heading says ${first.word}; ${why}.`,
    asks: isSure && second === undefined ? asks : [whichKind(found, first.word), ...asks],
    leftOut: null,
  };
}

/** `roll`, and numbers that turn: what turns, or what is asked to turn. */
function isAxisAlone({ said, behaviour }: KnownColumn, { axes }: RecordingColumns): boolean {
  const [word = '', more] = said.words;
  const isAxis = axisNames.some((axis) => word.length > 1 && axes[axis].includes(word));
  return isAxis && more === undefined && behaviour.least < 0 && behaviour.most > 0;
}

function axisAlone(one: KnownColumn, all: readonly KnownColumn[], words: RecordingColumns): ProposedColumn {
  const found = words.kinds
    .filter(({ kind }) => kind === 'gyro' || kind === 'wanted')
    .map((kind) => ({ kind, ...meant(one, kind, all, words) }));
  const asks = found[0]?.asks ?? [];
  const means = found[0]?.means ?? { heading: one.column.heading };
  const question = whichKind(found, one.said.words[0] ?? '');
  return {
    column: one.column,
    means,
    why: 'Its heading names an axis alone.',
    asks: [question, ...asks],
    leftOut: null,
  };
}

type MeantUnit = UnitFound & { readonly kind: ColumnKind };

function whichKind(found: readonly MeantUnit[], word: string): ColumnQuestion {
  return {
    sentence: `Its heading says “${word}”, which may be ${found.map(({ kind }) => kind.title).join(' or ')}${found.length === 1 ? ' or something else' : ''}: what is it?`,
    keepsOut: true,
    choices: found.map(({ kind, means }) => ({
      title: `${kind.title}${means.unit === undefined || means.unit === '' ? '' : `, in ${means.unit}`}`,
      means,
    })),
  };
}

function meant(
  one: KnownColumn,
  kind: ColumnKind,
  all: readonly KnownColumn[],
  words: RecordingColumns,
): UnitFound {
  const { column, said } = one;
  const named = channelOf(one, kind, all, words);
  const bare: LayoutColumn = { heading: column.heading, channel: named.channel };
  const found = foundUnit(bare, kind, one, all, words);
  const isArm = isNumbered(kind) && said.numbers.length === 0;
  const asksArm: readonly ColumnQuestion[] = isArm
    ? [
        {
          sentence: `Its heading names the arm “${armOf(said) ?? ''}” and no number: which motor of the script is it?`,
          keepsOut: true,
          choices: all
            .filter(({ kinds }) => kinds.some((spoken) => spoken.kind === kind))
            .map((_, at) => ({
              title: `motor ${at + 1}`,
              means: { ...found.means, channel: `${kind.kind}.${at + 1}` },
            })),
        },
      ]
    : [];
  return { ...found, asks: [...named.asks, ...asksArm, ...found.asks] };
}

function foundUnit(
  bare: LayoutColumn,
  kind: ColumnKind,
  one: KnownColumn,
  all: readonly KnownColumn[],
  words: RecordingColumns,
): UnitFound {
  const { said, behaviour } = one;
  if (kind.kind === 'time') return columnClock(bare, said, behaviour);
  const joint = alike(one, kind, all);
  return kind.kind === 'motor' || kind.kind === 'throttle'
    ? columnOutput(bare, said.unit, joint, words)
    : columnUnit(bare, kind, said, isOfSeveral(kind) ? joint : behaviour);
}

/** What all columns of its kind do together. */
function alike({ behaviour }: KnownColumn, kind: ColumnKind, all: readonly KnownColumn[]): Behaviour {
  const others = all.filter(({ kinds }) => kinds[0]?.kind === kind);
  return jointBehaviour([behaviour, ...others.map((one) => one.behaviour)]);
}

function isAlwaysZero({ least, most }: Behaviour): boolean {
  return least === 0 && most === 0;
}

/** What stands in several columns, all of which count alike. */
function isOfSeveral({ kind }: ColumnKind): boolean {
  return ['gyro', 'unfiltered-gyro', 'wanted', 'speed'].includes(kind);
}

/** The channel of a kind that a heading speaks of, with what it leaves open. */
function channelOf(
  { column, said }: KnownColumn,
  kind: ColumnKind,
  all: readonly KnownColumn[],
  words: RecordingColumns,
): { readonly channel: string; readonly asks: readonly ColumnQuestion[] } {
  const family = all.filter(({ kinds }) => kinds.some((spoken) => spoken.kind === kind));
  const numbers = family.flatMap((one) => one.said.numbers.at(-1) ?? []);
  const first = Math.min(...numbers);
  const number = said.numbers.at(-1);
  if (isNumbered(kind)) {
    const from = first === 0 ? 1 : 0;
    const place = number === undefined ? family.findIndex((one) => one.column === column) + 1 : number + from;
    return { channel: `${kind.kind}.${Math.max(1, place)}`, asks: [] };
  }
  if (!['gyro', 'unfiltered-gyro', 'wanted'].includes(kind.kind)) return { channel: kind.kind, asks: [] };
  const numbered = axisNames[(number ?? Number.NaN) - (first === 1 ? 1 : 0)];
  const axis = (column.part === null ? axisOf(said, words) : undefined) ?? numbered;
  if (axis !== undefined) return { channel: `${kind.kind}.${axis}`, asks: [] };
  const choices = axisNames.map((name) => ({
    title: name,
    means: { heading: column.heading, channel: `${kind.kind}.${name}` },
  }));
  return {
    channel: `${kind.kind}.roll`,
    asks: [{ sentence: 'Its heading names no axis: about which one is it?', keepsOut: true, choices }],
  };
}

/** Words before letters: in `yaw r` r is not the axis. */
function axisOf(said: SaidHeading, { axes }: RecordingColumns): AxisName | undefined {
  const spoken = (isLetter: boolean) =>
    axisNames.find((axis) =>
      axes[axis].some((word) => (word.length === 1) === isLetter && said.words.includes(word)),
    );
  return spoken(false) ?? spoken(true);
}
