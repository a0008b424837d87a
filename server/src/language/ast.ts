import type { Unit } from '../units/unit';

/** A half-open stretch of one line, in UTF-16 units from its start. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Name extends Span {
  readonly text: string;
}

/** `gyro.filter.1.cutoff`. The names of its steps are without the quotes that some are written in. */
export interface Path extends Span {
  /** As `pathText` writes it, which is how it stands there but for quotes that need not be. */
  readonly text: string;
  readonly names: readonly Name[];
}

/** A number with its unit, if it has one: `120 Hz`. `digits` is the number as written. */
export interface NumberNode extends Span {
  readonly kind: 'number';
  readonly value: number;
  readonly digits: string;
  readonly unit: Unit | null;
  readonly unitSpan: Span | null;
}

/** A bare name: a word, a constant or another parameter, as the parameter's kind says. */
export interface ReferenceNode extends Span {
  readonly kind: 'reference';
  readonly path: Path;
}

export interface NegativeNode extends Span {
  readonly kind: 'negative';
  readonly of: ExpressionNode;
}

/** `a + b - c`: every term after the first with its sign. Flat, so that long sums need no deep stack. */
export interface SumNode extends Span {
  readonly kind: 'sum';
  readonly terms: readonly { readonly sign: '+' | '-'; readonly node: ExpressionNode }[];
}

export interface ProductNode extends Span {
  readonly kind: 'product';
  readonly factors: readonly { readonly sign: '*' | '/'; readonly node: ExpressionNode }[];
}

export interface CallNode extends Span {
  readonly kind: 'call';
  readonly name: Name;
  readonly args: readonly ExpressionNode[];
}

export type ExpressionNode = NumberNode | ReferenceNode | NegativeNode | SumNode | ProductNode | CallNode;

export interface TextNode extends Span {
  readonly kind: 'text';
  readonly value: string;
}

/** What only the board understands: the characters as they were written, without quotes around them. */
export interface BareNode extends Span {
  readonly kind: 'bare';
  readonly text: string;
}

export interface DateNode extends Span {
  readonly kind: 'date';
  /** `2026-05-14` */
  readonly text: string;
}

export interface RangeNode extends Span {
  readonly kind: 'range';
  readonly low: ExpressionNode;
  readonly high: ExpressionNode;
}

export interface ListNode extends Span {
  readonly kind: 'list';
  readonly items: readonly ValueNode[];
}

export interface CurveNode extends Span {
  readonly kind: 'curve';
  readonly points: readonly { readonly x: ExpressionNode; readonly y: ExpressionNode }[];
}

export type ValueNode = ExpressionNode | TextNode | BareNode | DateNode | RangeNode | ListNode | CurveNode;

/** A change that mends a problem, within the same line. */
export interface LineEdit extends Span {
  readonly newText: string;
}

export interface LineFix {
  /** Words with slots such as `{to}`. */
  readonly title: string;
  /** What fills the slots; nothing: the title is told as it stands. */
  readonly values?: Readonly<Record<string, string>>;
  readonly edits: readonly LineEdit[];
}

/** Something wrong in one line: the id of a check, with the values that its sentence needs. */
export interface Problem extends Span {
  readonly id: string;
  readonly values: Readonly<Record<string, string>>;
  readonly fixes: readonly LineFix[];
  /** Paths that an unknown name may stand for which can't be written where it stands. */
  readonly elsewhere?: readonly string[];
}

/** `# accept tune/derivative-unfiltered: one short test hover` */
export interface Acceptance extends Span {
  readonly check: string;
  readonly reason: string;
}

interface Common {
  /** The comment with its mark, to the end of the line. */
  readonly comment: Span | null;
  readonly acceptance: Acceptance | null;
  readonly problems: readonly Problem[];
}

export interface BlankStatement extends Common {
  readonly kind: 'blank';
}

export interface IncludeStatement extends Common {
  readonly kind: 'include';
  readonly path: TextNode;
}

export interface ConstantStatement extends Common {
  readonly kind: 'constant';
  readonly name: Name;
  readonly equals: number;
  /** null: could not be understood; the constant is set, its value unknown. */
  readonly value: ValueNode | null;
}

export interface SectionStatement extends Common {
  readonly kind: 'section';
  readonly path: Path;
  readonly pack: Name | null;
}

export interface SettingStatement extends Common {
  readonly kind: 'setting';
  readonly path: Path;
  /** Offset of the equals sign; -1 when it is missing. */
  readonly equals: number;
  /** null: could not be understood; the parameter is set, its value unknown. */
  readonly value: ValueNode | null;
}

/** `own`: one whose settings are kept as they are written. */
export type SectionKind = 'own' | 'known';

/** A line of which not even the beginning could be understood. */
export interface BrokenStatement extends Common {
  readonly kind: 'broken';
  /** The line was to open a section, but which one can't be said: what follows belongs to none that is known. */
  readonly opensSection: SectionKind | null;
}

export type Statement =
  | BlankStatement
  | IncludeStatement
  | ConstantStatement
  | SectionStatement
  | SettingStatement
  | BrokenStatement;
