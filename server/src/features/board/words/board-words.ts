import type { BoardLayer } from '../../../board/layer/layer';
import { capturedPack } from '../../../board/meaning/parameter-path';
import type { Catalog } from '../../../catalog/catalog';
import type { Finding, Related } from '../../../checks/report/finding';
import { sentenceOf } from '../../../checks/report/render';
import { code, escaped } from '../../markdown';
import type { TextEdit } from '../../range';
import { BoardNames } from './board-names';
import { BoardValues } from './board-values';
import { withoutEnd } from './without-end';

/** What a sentence is about: settings by their paths in a script, its own first. */
type About = readonly string[];

const known = new WeakMap<BoardLayer, BoardWords>();

/** The words for a text as it stands. */
export function boardWords(layer: BoardLayer, catalog: Catalog): BoardWords {
  const before = known.get(layer);
  if (before?.catalog === catalog) return before;
  const made = new BoardWords(layer, catalog);
  known.set(layer, made);
  return made;
}

/** Says what was found in a board's text in its own names, numbers and words. */
export class BoardWords {
  private readonly names: BoardNames;
  private readonly values: BoardValues;

  constructor(
    private readonly layer: BoardLayer,
    readonly catalog: Catalog,
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
    const template = this.chosen(this.template(finding.check.advice, about), about);
    return sentenceOf(this.numbers(template, about), this.filled(finding, about));
  }

  /** What is said of another place. */
  related({ message, place }: Related): string {
    const { settingPath } = place.line;
    const about = settingPath === null ? [] : [settingPath];
    const told = this.numbers(this.template(message, about), about);
    return told.replace(/[a-z][a-z0-9-]*/g, (word) => this.standing(word, about) ?? word);
  }

  /** The title of a fix, which says what it will write. `set`: the setting that it changes. */
  title(title: string, set: string | null, edits: readonly TextEdit[]): string {
    const about = set === null ? [] : [set];
    const told = this.numbers(this.template(title, about), about)
      .replace(/[a-z][a-z0-9-]*/g, (word) => (/^o(n|ff)$/.test(word) ? null : this.word(word, about)) ?? word)
      .replace(/\[(\d+), (\d+)\]/g, 'row $1, column $2');
    const written = edits.map(({ newText }) => newText.trim()).filter((text) => text !== '');
    const inLook = written.reduce(withNumberAs, told);
    if (written.every((text) => holds(inLook, text))) return inLook;
    const whole = written.join(' and ');
    return inLook.startsWith('Write ') && written.length === 1
      ? `Write ${whole}`
      : `${inLook}: write ${whole}`;
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

  private codeSpan(text: string, about: About): string {
    const whole = this.named(text) ?? this.named(this.withMember(text, about));
    if (whole !== null) return whole.endsWith(inScript) ? code(text) + inScript : code(whole);
    const value = this.standing(text, about) ?? this.word(text, about) ?? this.numbers(text, about);
    const [, number, quantity] = /^(\S+) (\(.+\))$/.exec(value) ?? [];
    return number === undefined || quantity === undefined
      ? code(value)
      : `${code(number)} ${escaped(quantity)}`;
  }

  /** `gyro.filter.<number>.kind`, of the member that is talked of. */
  private withMember(text: string, about: About): string {
    const at = text.indexOf('<');
    const own = about.find((path) => at > 0 && path.startsWith(text.slice(0, at)));
    const member = own?.slice(at).split('.')[0];
    return member === undefined ? text : text.replace(/<[a-z]+>/, member);
  }

  private prose(text: string, about: About): string {
    return this.ofText(text)
      .replace(escapedPath, (whole) => {
        const name = this.named(unescaped(whole));
        return name === null ? whole : escaped(name);
      })
      .replace(escapedQuantity, (whole) => {
        const plain = unescaped(whole);
        const told = this.numbers(plain, about);
        return told === plain ? whole : escaped(told);
      });
  }

  private aboutOf({ place, related, check, values }: Finding): About {
    const lines = place.line.statement.kind === 'include' ? related : [{ place }, ...related];
    const paths = lines.flatMap(({ place: { line } }) => line.settingPath ?? []);
    const told = [check.message, check.advice, ...Object.keys(values), ...Object.values(values)];
    const named = told.flatMap((text) => text.match(pathPattern) ?? []);
    return [...new Set([...paths, ...named])].filter((path) => this.catalog.parameter(path) !== undefined);
  }

  private filled({ values }: Finding, about: About): Readonly<Record<string, string>> {
    return Object.fromEntries(
      Object.entries(values).map(([slot, value]) => {
        const isPath = this.catalog.parameter(slot) !== undefined;
        // Of another setting only numbers are told as the own one counts them.
        return [slot, isPath ? this.value(value, [slot], [slot, ...about]) : this.value(value, about)];
      }),
    );
  }

  /** What a sentence shows in one of its slots. */
  private value(text: string, about: About, counted = about): string {
    const whole = this.standing(text, about) ?? this.word(text, about);
    if (whole !== null) return whole;
    const parts = text.split(listed);
    const spelled = parts.map((part, index) => (index % 2 === 1 ? part : this.word(part, about)));
    if (parts.length > 1 && spelled.every((part) => part !== null)) return spelled.join('');
    return this.numbers(this.paths(text, about), counted);
  }

  private standing(text: string, about: About): string | null {
    for (const path of about) {
      const found = this.values.standingAs(text, path);
      if (found !== null) return withUnit(found, text);
    }
    return null;
  }

  private word(word: string, about: About): string | null {
    for (const path of about) {
      const found = this.values.word(word, path) ?? this.names.memberWord(path, word);
      if (found !== null) return found;
    }
    return null;
  }

  /** A sentence of the catalogue, its slots left as they are. */
  private template(text: string, about: About): string {
    return text
      .split(/(\{[^{}]*\})/)
      .map((part) => (part.startsWith('{') ? part : this.paths(this.ofText(part), about)))
      .join('');
  }

  /** Puts names of the board for paths of a script, and says where what the board does not have stands. */
  private paths(text: string, about: About): string {
    return text
      .replace(
        pathWithFlag,
        (whole, verb: string, path: string, word: string) => this.turned(verb, path, word, about) ?? whole,
      )
      .replace(bracketed, (whole, path: string) => this.named(path) ?? whole)
      .replace(pathPattern, (path) => this.named(path) ?? path)
      .replace(lastStep, (step) => {
        const path = this.pathOfStep(step, about);
        return path === null ? step : (this.names.parameter(path) ?? step);
      });
  }

  /** What the engine calls the script is the text here, and a comment begins as the board has it. */
  private ofText(text: string): string {
    const [mark] = this.layer.forms.comments;
    return text
      .replace(/\b([Tt])he script(’s|'s)?(?= |$)/g, '$1his text$2')
      .replace(/# accept\b/g, mark === undefined ? 'accept' : `${mark} accept`);
  }

  private named(path: string): string | null {
    const isParameter = this.catalog.parameter(path) !== undefined;
    const name = isParameter ? this.names.parameter(path) : this.names.member(path);
    if (name !== null) return name;
    return isParameter || this.catalog.parametersUnder(path).length > 0 ? path + inScript : null;
  }

  /** `Set esc.speed-feedback on` */
  private turned(verb: string, step: string, word: string, about: About): string | null {
    const path = step.includes('.') ? step : this.pathOfStep(step, about);
    const flag = path === null ? null : this.values.flag(word === 'on', path);
    const name = path === null ? null : this.names.parameter(path);
    return flag === null || name === null ? null : `${verb === '' ? '' : 'Set '}${name} to ${flag}`;
  }

  /** The setting that a sentence calls by the end of its path: one beside those that it is about. */
  private pathOfStep(step: string, about: About): string | null {
    for (const path of about) {
      const beside = path.slice(0, path.lastIndexOf('.') + 1) + step;
      if (this.catalog.parameter(beside) !== undefined && this.names.parameter(beside) !== null)
        return beside;
    }
    return null;
  }

  /** Puts the board's numbers before those with units, where they differ. */
  private numbers(text: string, about: About): string {
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

  /** A word that is to be written, as the board writes it. */
  private chosen(text: string, about: About): string {
    const [own] = about;
    if (own === undefined) return text;
    return text.replace(/\b(Write|Choose|Pick) ([a-z][a-z-]*)\b/, (whole, verb: string, word: string) => {
      const spelled = this.values.word(word, own);
      return spelled === null ? whole : `${verb} ${spelled}`;
    });
  }
}

const pathPattern = /(?<![\w./-])[a-z][a-z0-9-]*(?:\.[a-z0-9][a-z0-9-]*)+(?![\w/-])/g;
const bracketed = /\[([a-z][a-z0-9-]*(?:\.[a-z0-9-]+)*)\]/g;
const pathWithFlag = /((?:\b(?:Turn|Set) )?)(?<![\w./-])([a-z][a-z0-9]*[.-][a-z0-9.-]+) (on|off)\b/g;
const inScript = ' in the script';
const codeSpan = /(`[^`]+`)/;
/** A number with its unit in Markdown of ours, where marks stand behind a backslash. */
const escapedQuantity = /(?<![\w.(/\\-])(?:\\?-)?\d+(?:\\\.\d+)? (?:\\.|[%°\p{L}])(?:\\.|[^\s,;:.*\\])*/gu;
const escapedPath = /(?<![\w.\\/-])[a-z](?:[a-z0-9]|\\-)*(?:\\\.[a-z0-9](?:[a-z0-9]|\\-)*)+(?![\w/])/g;
/** Names of one word are words of a sentence too. */
const lastStep = /(?<![\w./-])[a-z]+(?:-[a-z]+)+(?![\w./-])/g;
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

/** `1700 to 2100 us`, where the board counts as the script does. */
function withUnit(raw: string, said: string): string {
  const [range = '', unit = '', ...more] = said.split(' ');
  const isRange = range.includes('..') && unit !== '' && more.length === 0;
  return isRange && raw === range.replace('..', ' to ') ? `${raw} ${unit}` : raw;
}

/** The same number as the board writes it: `800.0` for `800`. */
function withNumberAs(text: string, written: string): string {
  if (!/^-?\d+(\.\d+)?$/.test(written) || holds(text, written)) return text;
  return text.replace(/(?<![\w.])-?\d+(?:\.\d+)?(?![\w.])/, (number) =>
    Number(number) === Number(written) ? written : number,
  );
}

function holds(text: string, part: string): boolean {
  return ` ${text} `
    .split(/[\s,;:()]+/)
    .join(' ')
    .includes(` ${part} `);
}
