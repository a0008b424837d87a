import type { WholePart } from '../../catalog/model/job';
import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import { Query } from '../../query/query';
import type { Range } from '../range';
import type { Snapshot } from '../snapshot';
import { likelyChoices } from './choices-here';
import {
  type CompletionItem,
  type CompletionOptions,
  completionItem,
  snippetText,
  tabChoice,
  tabStop,
} from './item';
import { bestValue } from './proposals';

/** A part that the script lacks, under the section that it begins with. */
export interface PartItem {
  readonly section: string;
  readonly item: CompletionItem;
}

/**
 * Whole parts with good values, for sections that the script does not open yet: of a numbered collection the next
 * member. `bracket`: whether the header's bracket stands there, so that it is replaced as well.
 */
export function wholePartItems(
  snapshot: Snapshot,
  range: Range,
  options: CompletionOptions,
  bracket = false,
  typed = '',
): readonly PartItem[] {
  const { craft, script } = snapshot;
  return partTexts
    .get(craft, options.snippets ? 'snippets' : 'plain', script.document.lineEnd)
    .filter(({ sections }) => !sections.some((one) => isOpen(snapshot, one)))
    .map(({ part, sections, text }) => {
      const [section = ''] = sections;
      const found = beginningWith(typed, [part.title, section, ...part.words].join(' ').toLowerCase());
      const item = completionItem({
        label: part.title,
        kind: 'part',
        detail: `${sections.map((one) => `[${one}]`).join(', ')} with values`,
        range,
        insertText: text,
        isSnippet: options.snippets,
        filterText: bracket ? `[${found}` : found,
        isHint: true,
      });
      return { section, item };
    });
}

/** The words of a text from the one on that begins with what is typed: a client ranks by how a text begins. */
function beginningWith(typed: string, text: string): string {
  const words = text.split(' ');
  const at = typed === '' ? -1 : words.findIndex((word) => word.startsWith(typed.toLowerCase()));
  return at < 1 ? text : [...words.slice(at), ...words.slice(0, at)].join(' ');
}

/** What all parts come to for a craft; kept until something that their values hang on has another value. */
const partTexts = new Query('whole parts', (craft: Craft, form: 'snippets' | 'plain', lineEnd: string) =>
  craft.catalog.wholeParts.flatMap((part) => {
    const number = nextNumber(craft, part);
    const lines = number === null ? part.lines : part.lines.map((line) => line.replace('<number>', number));
    const text = new PartText(craft, form === 'snippets', lineEnd).of(lines);
    return text === null ? [] : [{ part, sections: lines.flatMap((line) => sectionIn(line) ?? []), text }];
  }),
);

/** The parts that every craft has, as plain text, for those of their sections that a craft lacks. */
export function partTextsFor(craft: Craft): readonly string[] {
  return partTexts
    .get(craft, 'plain', '\n')
    .filter(({ part, sections }) => {
      const isNew = sections.every((one) => craft.lines(inputKeys.section(one)).length === 0);
      return part.isInEach === true && isNew;
    })
    .map(({ text }) => text);
}

/** `[pack.{first}]` is a pack, whatever its name. */
function sectionIn(line: string): string | undefined {
  return /^\[(.+)\]$/.exec(line)?.[1]?.replace(/\{([a-z]+)\}/, '$1');
}

function isOpen({ script, craft }: Snapshot, section: string): boolean {
  const collection = section.slice(0, section.lastIndexOf('.'));
  const isOfOpen = craft.catalog.collection(collection)?.keys.kind === 'open';
  return isOfOpen ? craft.members(collection).length > 0 : script.has(inputKeys.section(section));
}

/** The number of the next member, where a part is one of many. */
function nextNumber(craft: Craft, { lines: [header = ''] }: WholePart): string | null {
  const collection = /^\[(.+)\.<number>\]$/.exec(header)?.[1];
  if (collection === undefined) return null;
  const numbers = craft.members(collection).map(Number);
  return String(Math.max(0, ...numbers) + 1);
}

function nameIn(line: string): string {
  return /^[a-z.-]+/.exec(line)?.[0] ?? '';
}

interface PartLine {
  readonly section: string;
  /** Null for a header. */
  readonly name: string | null;
  readonly value: string;
}

/** Writes the lines of a part: names in columns, a tab stop for each place. */
class PartText {
  private stops = 0;

  constructor(
    private readonly craft: Craft,
    private readonly snippets: boolean,
    private readonly lineEnd: string,
  ) {}

  /** Null where the first setting can't be filled in: the craft has no place for the part. */
  of(lines: readonly string[]): string | null {
    const rows = this.rows(lines);
    const { lineEnd } = this;
    if (rows[1]?.name !== nameIn(lines[1] ?? '')) return null;
    return rows
      .map(({ section, name, value }, index) => {
        if (name === null) return `${index === 0 ? '' : lineEnd}[${value}]`;
        const width = Math.max(
          ...rows.flatMap((row) => (row.section === section ? (row.name?.length ?? 0) : 0)),
        );
        return `${name.padEnd(width)} = ${value}`;
      })
      .join(lineEnd);
  }

  private rows(lines: readonly string[]): readonly PartLine[] {
    let section = '';
    return lines.flatMap((line): readonly PartLine[] => {
      const header = /^\[(.+)\]$/.exec(line)?.[1];
      if (header !== undefined) {
        section = sectionIn(line) ?? '';
        return [{ section, name: null, value: this.filled(header, section) ?? header }];
      }
      const name = nameIn(line);
      const written = line.slice(name.length + ' = '.length);
      const value = this.filled(written, `${section}.${name}`);
      return value === null ? [] : [{ section, name, value }];
    });
  }

  /** A text with its place filled; null where nothing is known to fill it with. */
  private filled(text: string, path: string): string | null {
    const at = text.indexOf('{');
    const end = text.indexOf('}', at);
    const plain = (part: string) => (this.snippets ? snippetText(part) : part);
    if (at < 0 || end < 0) return plain(text);
    const given = text.slice(at + 1, end);
    const stop = given === '' ? this.best(path) : this.stop(given);
    return stop === null ? null : plain(text.slice(0, at)) + stop + plain(text.slice(end + 1));
  }

  private best(path: string): string | null {
    const { craft } = this;
    const found = craft.catalog.parameter(path);
    if (found === undefined) return null;
    const best = bestValue.get(craft, path, null) ?? undefined;
    // The craft's own parts leave nothing to write.
    if (best === undefined && craft.catalog.commonValues.get(found.name)?.from !== undefined) return null;
    if (found.parameter.kind !== 'word' || found.parameter.permutationOf !== undefined)
      return best === undefined ? null : this.stop(best);
    const words = likelyChoices({ craft, catalog: craft.catalog }, found).map(({ name }) => name);
    const first = best !== undefined && words.includes(best) ? best : words[0];
    if (first === undefined) return null;
    const all = [first, ...words.filter((word) => word !== first)];
    if (!this.snippets) return first;
    this.stops += 1;
    return tabChoice(this.stops, all);
  }

  private stop(text: string): string {
    if (!this.snippets) return text;
    this.stops += 1;
    // The unit stays while the number is typed over.
    const [, number = text, rest = ''] = /^(-?[\d.]+)( \S+)$/.exec(text) ?? [];
    return tabStop(this.stops, number) + snippetText(rest);
  }
}
