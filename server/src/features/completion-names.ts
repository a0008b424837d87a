import type { KnownParameter } from '../catalog/known-parameter';
import { inputKeys } from '../craft/keys';
import type { ScriptLine } from '../language/script-line';
import type { CompletionOptions } from './completion';
import type { TypingContext } from './completion-context';
import { type CompletionItem, snippetText, tabChoice, tabStop } from './completion-item';
import { sectionHeaderItems } from './completion-sections';
import type { Range } from './range';
import type { Snapshot } from './snapshot';

const stages = ['wire', 'obey', 'turn', 'tune', 'see', 'safe', 'remember'];

/** Parameters that can stand on a line: those of the open section, what is not set yet first. */
export function nameItems(
  snapshot: Snapshot,
  line: ScriptLine,
  context: Extract<TypingContext, { kind: 'name' }>,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const section = line.section.path ?? '';
  const places = section === '' ? wholePaths(snapshot) : below(snapshot, section);
  const own = places
    .map((place) => ({ ...place, isSet: isSetHere(snapshot, line, section, place.rest) }))
    .filter(({ isSet }) => !isSet)
    .sort(
      (one, other) => stages.indexOf(one.known.parameter.stage) - stages.indexOf(other.known.parameter.stage),
    );
  const items = own.map(({ known, rest }) => nameItem(snapshot, known, rest, context, options));
  const alone = context.isAlone
    ? [...keywordItems(context.range, options), ...sectionHeaderItems(snapshot, context.range, options)]
    : [];
  return [...items, ...alone];
}

interface Below {
  readonly known: KnownParameter;
  readonly rest: string;
}

function below({ catalog }: Snapshot, section: string): readonly Below[] {
  return catalog.parametersUnder(section).filter(({ rest }) => !rest.includes('<'));
}

/** Before any section a path is whole. */
function wholePaths({ catalog }: Snapshot): readonly Below[] {
  return [...catalog.parameters.values()].flatMap((known) =>
    known.name.includes('<') ? [] : [{ known, rest: known.name }],
  );
}

/** Whether another line of this script sets it for the same packs. */
function isSetHere({ script }: Snapshot, line: ScriptLine, section: string, rest: string): boolean {
  const path = section === '' ? rest : `${section}.${rest}`;
  return script.lines(inputKeys.setting(path, line.section.pack)).some((other) => other !== line);
}

function nameItem(
  snapshot: Snapshot,
  known: KnownParameter,
  rest: string,
  { range, hasValue }: Extract<TypingContext, { kind: 'name' }>,
  { snippets }: CompletionOptions,
): CompletionItem {
  const value = snippets ? valueSnippet(snapshot, known) : '';
  return {
    label: rest,
    kind: 'parameter',
    detail: known.parameter.title,
    range,
    insertText: hasValue ? rest : `${rest} = ${value}`,
    isSnippet: !hasValue && snippets,
    filterText: rest,
    subject: { kind: 'parameter', name: known.name },
  };
}

/** A first value to type over: the default, the choices, or the low end of what is usual. */
function valueSnippet({ catalog, craft }: Snapshot, known: KnownParameter): string {
  const { parameter } = known;
  switch (parameter.kind) {
    case 'quantity':
      return tabStop(1, parameter.default?.value ?? parameter.usual[0]);
    case 'count':
      return tabStop(1, parameter.default?.value ?? String(parameter.usual[0]));
    case 'flag':
      return tabChoice(1, ['on', 'off']);
    case 'word': {
      if (parameter.permutationOf !== undefined) return tabStop(1, parameter.permutationOf);
      const words =
        craft.words({ ...known, path: known.name, keys: [] }) ??
        catalog.choices(parameter).map(({ name }) => name);
      return tabChoice(1, words);
    }
    case 'words':
      return '[$1]';
    case 'range': {
      const [low, high] = parameter.usual;
      return `${tabStop(1, low.split(' ')[0] ?? '')}..${tabStop(2, high)}`;
    }
    case 'curve': {
      const { across, up } = parameter;
      return snippetText(`${across.range[0]} -> ${up.usual[0]}, ${across.range[1]} -> ${up.usual[1]}`);
    }
    case 'place':
      return `[${tabStop(1, 'row')}, ${tabStop(2, 'column')}]`;
    case 'text':
      return '"$1"';
    case 'date':
      return tabStop(1, 'year-month-day');
  }
}

function keywordItems(range: Range, { snippets }: CompletionOptions): readonly CompletionItem[] {
  const words = [
    ['let', `let ${tabStop(1, 'name')} = ${tabStop(2, 'value')}`, 'A constant: a quantity under a name'],
    ['include', `include "${tabStop(1, 'path')}"`, 'Another script of this workspace'],
  ] as const;
  return words.map(([label, snippet, detail]) => ({
    label,
    kind: 'keyword',
    detail,
    range,
    insertText: snippets ? snippet : `${label} `,
    isSnippet: snippets,
    filterText: label,
    subject: { kind: 'none' },
  }));
}
