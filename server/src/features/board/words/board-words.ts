import type { BoardLayer } from '../../../board/layer/layer';
import { capturedPack } from '../../../board/meaning/parameter-path';
import type { Catalog } from '../../../catalog/catalog';
import { wordSlot } from '../../../checks/data/data-template';
import type { Finding, Fix, Related } from '../../../checks/report/finding';
import { listed as inList } from '../../../checks/report/listed';
import { sentenceOf } from '../../../checks/report/render';
import { code, escaped } from '../../markdown';
import type { TextEdit } from '../../range';
import { BoardNames } from './board-names';
import { BoardValues } from './board-values';
import { withNames } from './with-names';
import { withoutEnd } from './without-end';

/** What a sentence is about: settings by their paths in a script, its own first. */
type SentencePaths = readonly string[];

/** Where it is said: at the text itself, or in the script that includes it, where a path stands behind each name. */
export type SaidIn = 'text' | 'script';

const known: Readonly<Record<SaidIn, WeakMap<BoardLayer, BoardWords>>> = {
  text: new WeakMap(),
  script: new WeakMap(),
};

/** The words for a text as it stands. */
export function boardWords(layer: BoardLayer, catalog: Catalog, saidIn: SaidIn = 'text'): BoardWords {
  const before = known[saidIn].get(layer);
  if (before?.catalog === catalog) return before;
  const made = new BoardWords(layer, catalog, saidIn);
  known[saidIn].set(layer, made);
  return made;
}

/** Says what was found in a board's text in its own names, numbers and words. */
export class BoardWords {
  private readonly names: BoardNames;
  private readonly values: BoardValues;

  constructor(
    private readonly layer: BoardLayer,
    readonly catalog: Catalog,
    private readonly saidIn: SaidIn = 'text',
  ) {
    this.names = new BoardNames(layer, catalog);
    this.values = new BoardValues(layer, catalog, this.names);
  }

  /** The sentence that says what is wrong, with the pack in front where a craft's script knows several. */
  message(finding: Finding): string {
    const about = this.aboutOf(finding);
    const sentence = sentenceOf(this.template(finding.check.message, about), this.filled(finding, about));
    const { pack } = finding;
    return pack === null || pack === capturedPack ? sentence : `With pack ${pack}: ${sentence}`;
  }

  /** The sentence that says what to do. */
  advice(finding: Finding): string {
    const about = this.aboutOf(finding);
    const template = this.numbers(this.template(finding.check.advice, about), about);
    return sentenceOf(template, {
      ...this.filled(finding, about),
      'where it is accepted': this.acceptedIn(),
    });
  }

  /** What a board without comments is told is kept beside its text. */
  private acceptedIn(): string {
    const [mark] = this.layer.forms.comments;
    return mark === undefined
      ? 'in the .board.json beside the text'
      : `in a comment above it (${mark} accept …)`;
  }

  /** What is said of another place. */
  related({ message, values = {}, place }: Related): string {
    const { settingPath } = place.line;
    const about = settingPath === null ? [] : [settingPath];
    const told = Object.entries(values).map(([slot, value]) => [slot, this.value(value, about)]);
    return sentenceOf(this.template(message, about), Object.fromEntries(told));
  }

  /** What a fix does: made of its words and values as a sentence is. It says what it writes. */
  title({ title, values, set }: Pick<Fix, 'title' | 'values' | 'set'>, edits: readonly TextEdit[]): string {
    const about = set === null ? [] : [set];
    const written = edits.map(({ newText }) => newText.trim()).filter((text) => text !== '');
    const isSaid = title.includes('{to}') && edits.every(({ newText }) => !newText.includes('\n'));
    const told = Object.entries(values).map(([slot, value]) => [
      slot,
      slot === 'to' && isSaid ? this.written(value, written, about) : this.value(value, about),
    ]);
    const sentence = sentenceOf(this.template(title, about), Object.fromEntries(told));
    return isSaid || written.length === 0 ? sentence : `${sentence}: write ${inList(written)}`;
  }

  /** What stands in the text once it is written, and the quantity that it is where a script says it otherwise. */
  private written(said: string, texts: readonly string[], about: SentencePaths): string {
    const text = texts.join(' and ');
    const [, number, unit] = /^(-?\d+(?:\.\d+)?) (\S.*)$/.exec(said) ?? [];
    if (number === undefined || unit === undefined) return text;
    const isSame =
      Number(number) === Number(text) && (Number(number) !== 0 || this.values.isCountedAs(unit, about));
    return isSame ? `${text} ${unit}` : `${text} (${said})`;
  }

  /** What is told of a setting: names, values and numbers of it. `path`: null where it is about no one of them. */
  markdown(text: string, path: string | null): string {
    const about = path === null ? [] : [path];
    return text
      .split(codeSpan)
      .map((part) =>
        codeSpan.test(part) ? this.codeSpan(part.slice(1, -1), about) : this.prose(part, about),
      )
      .join('');
  }

  private codeSpan(text: string, about: SentencePaths): string {
    const whole = this.named(text) ?? this.named(this.withMember(text, about)) ?? this.names.parameter(text);
    if (whole !== null) return whole.endsWith(inScript) ? code(text) + inScript : code(whole);
    const [own] = about;
    const isFlag = own !== undefined && (text === 'on' || text === 'off');
    const flag = isFlag ? this.values.flag(text === 'on', own) : null;
    const value = flag ?? this.standing(text, about) ?? this.word(text, about) ?? this.numbers(text, about);
    const [, number, quantity] = /^(\S+) (\(.+\))$/.exec(value) ?? [];
    return number === undefined || quantity === undefined
      ? code(value)
      : `${code(number)} ${escaped(quantity)}`;
  }

  /** `gyro.filter.<number>.kind`, of the member that is talked of. */
  private withMember(text: string, about: SentencePaths): string {
    const at = text.indexOf('<');
    const own = about.find((path) => at > 0 && path.startsWith(text.slice(0, at)));
    const member = own?.slice(at).split('.')[0];
    return member === undefined ? text : text.replace(/<[a-z]+>/, member);
  }

  private prose(text: string, about: SentencePaths): string {
    return this.ofText(text)
      .replace(escapedPath, (whole) => {
        const name = this.named(unescaped(whole));
        return name === null ? whole : escaped(name);
      })
      .replace(escapedQuantity, (whole: string, at: number, all: string) => {
        // The same in another unit was said before it.
        if (all.slice(0, at).endsWith('≈ ')) return whole;
        const plain = unescaped(whole);
        const told = this.numbers(plain, about);
        return told === plain ? whole : escaped(told);
      });
  }

  private aboutOf({ place, related, check, values }: Finding): SentencePaths {
    const lines = place.line.statement.kind === 'include' ? related : [{ place }, ...related];
    const paths = lines.flatMap(({ place: { line } }) => line.settingPath ?? []);
    const told = [check.message, check.advice, ...Object.keys(values), ...Object.values(values)];
    const named = told.flatMap((text) => text.match(pathPattern) ?? []);
    return [...new Set([...paths, ...named])].filter((path) => this.catalog.parameter(path) !== undefined);
  }

  private filled({ values }: Finding, about: SentencePaths): Readonly<Record<string, string>> {
    return Object.fromEntries(
      Object.entries(values).map(([slot, value]) => {
        const isPath = this.catalog.parameter(slot) !== undefined;
        const isFlag = isPath && (value === 'on' || value === 'off');
        const flag = isFlag ? this.values.flag(value === 'on', slot) : null;
        if (flag !== null) return [slot, flag];
        // Of another setting only numbers are told as the own one counts them.
        return [slot, isPath ? this.value(value, [slot], [slot, ...about]) : this.value(value, about)];
      }),
    );
  }

  /** What a sentence shows in one of its slots. */
  private value(text: string, about: SentencePaths, counted = about): string {
    const name = this.catalog.parameter(text) === undefined ? null : this.named(text);
    if (name !== null) return name;
    const whole = this.standing(text, about) ?? this.word(text, about);
    if (whole !== null) return whole;
    const parts = text.split(listed);
    const spelled = parts.map((part, index) => (index % 2 === 1 ? part : this.word(part, about)));
    if (parts.length > 1 && spelled.every((part) => part !== null)) return spelled.join('');
    return this.numbers(this.paths(text, about), counted);
  }

  private standing(text: string, about: SentencePaths): string | null {
    for (const path of about) {
      const found = this.values.standingAs(text, path);
      if (found !== null) return withUnit(found, text);
    }
    return null;
  }

  private word(word: string, about: SentencePaths): string | null {
    for (const path of about) {
      const found = this.values.word(word, path) ?? this.names.memberWord(path, word);
      if (found !== null) return found;
    }
    return null;
  }

  /** A sentence of the catalogue, its slots left as they are. */
  private template(text: string, about: SentencePaths): string {
    return text
      .split(/(\{[^{}]*\})/)
      .map((part) => (part.startsWith('{') ? this.slot(part, about) : this.paths(this.ofText(part), about)))
      .join('');
  }

  /** `{find.on has switch}` as the board writes that word; any other slot is filled later. */
  private slot(slot: string, about: SentencePaths): string {
    const [, path, word] = wordSlot.exec(slot.slice(1, -1)) ?? [];
    if (path === undefined || word === undefined) return slot;
    return this.values.word(word, this.withMember(path, about)) ?? slot;
  }

  /** Puts names of the board for paths of a script, and says where what the board does not have stands. */
  private paths(text: string, about: SentencePaths): string {
    return withNames(text, {
      called: (name) => this.called(name, about),
      section: (path) => this.named(path),
      turned: (name, isOn) => this.turned(name, isOn, about),
    });
  }

  /** A path, or the end of one. */
  private called(name: string, about: SentencePaths): string | null {
    const path = name.includes('.') ? name : this.pathOfStep(name, about);
    return path === null ? null : this.named(path);
  }

  /** What the engine calls the script is the text here, and a comment begins as the board has it. */
  private ofText(text: string): string {
    if (this.saidIn === 'script') return text;
    const [mark] = this.layer.forms.comments;
    return text
      .replace(/\b([Tt])he script(’s|'s)?(?= |$)/g, '$1his text$2')
      .replace(/# accept\b/g, mark === undefined ? 'accept' : `${mark} accept`);
  }

  private named(path: string): string | null {
    const isParameter = this.catalog.parameter(path) !== undefined;
    const name = isParameter ? this.names.parameter(path) : this.names.member(path);
    if (this.saidIn === 'script') return name === null ? null : `${name} (${path})`;
    if (name !== null) return name;
    return isParameter || this.catalog.parametersUnder(path).length > 0 ? path + inScript : null;
  }

  /** `motors-report-speed to yes` for `esc.speed-feedback on` */
  private turned(step: string, isOn: boolean, about: SentencePaths): string | null {
    const path = step.includes('.') ? step : this.pathOfStep(step, about);
    const flag = path === null ? null : this.values.flag(isOn, path);
    const name = path === null ? null : this.named(path);
    return flag === null || name === null ? null : `${name} to ${flag}`;
  }

  /** The setting that a sentence calls by the end of its path: one beside those that it is about. */
  private pathOfStep(step: string, about: SentencePaths): string | null {
    for (const path of about) {
      const beside = path.slice(0, path.lastIndexOf('.') + 1) + step;
      if (this.catalog.parameter(beside) !== undefined && this.names.parameter(beside) !== null)
        return beside;
    }
    return null;
  }

  /** Puts the board's numbers before those with units, where they differ. */
  private numbers(text: string, about: SentencePaths): string {
    return text
      .replace(
        rangePattern,
        (_, low: string, high: string, unit: string) => `${low} ${unit} to ${high} ${unit}`,
      )
      .replace(quantityPattern, (whole, number: string, rest: string) => {
        const [given, behind] = balanced(rest, withoutEnd(rest, /[).;:,]/));
        const spelled = this.values.quantity(`${number} ${given}`, number, about);
        const isSame =
          Number(spelled) === Number(number) &&
          (Number(number) !== 0 || this.values.isCountedAs(given, about));
        if (spelled === null || isSame) return whole;
        return `${spelled} (${number} ${given})${behind}`;
      });
  }
}

const pathPattern = /(?<![\w./-])[a-z][a-z0-9-]*(?:\.[a-z0-9][a-z0-9-]*)+(?![\w/-])/g;
const inScript = ' in the script';
const codeSpan = /(`[^`]+`)/;
/** A number with its unit in Markdown of ours, where marks stand behind a backslash. */
const escapedQuantity = /(?<![\w.(/\\-])(?:\\?-)?\d+(?:\\\.\d+)? (?:\\.|[%°\p{L}])(?:\\.|[^\s,;:.*\\])*/gu;
const escapedPath = /(?<![\w.\\/-])[a-z](?:[a-z0-9]|\\-)*(?:\\\.[a-z0-9](?:[a-z0-9]|\\-)*)+(?![\w/])/g;
/** Splits into words, each with what stands behind it. */
const listed = /(, | and | or )/;
const rangePattern = /(?<!\d)(-?\d+(?:\.\d+)?)\.\.(-?\d+(?:\.\d+)?) ([^\s),;]+)/g;
const quantityPattern = /(?<![\w.(/-])(-?\d+(?:\.\d+)?) ([%°\p{L}][^\s,;:]*)/gu;

function unescaped(text: string): string {
  return text.replace(/\\(.)/g, '$1');
}

/** A unit may end in a bracket of its own; one that is none of it stands behind. */
function balanced(rest: string, without: string): readonly [string, string] {
  const count = (text: string, sign: string) => text.split(sign).length - 1;
  let unit = without;
  while (unit.length < rest.length && rest[unit.length] === ')' && count(unit, '(') > count(unit, ')'))
    unit += ')';
  return [unit, rest.slice(unit.length)];
}

/** `1700 us to 2100 us`, where the board counts as the script does. */
function withUnit(raw: string, said: string): string {
  const [range = '', unit = '', ...more] = said.split(' ');
  const isRange = range.includes('..') && unit !== '' && more.length === 0;
  return isRange && raw === range.replace('..', ' to ')
    ? `${raw.replace(' to ', ` ${unit} to `)} ${unit}`
    : raw;
}
