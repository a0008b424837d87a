import type { KnownParameter } from '../../catalog/known-parameter';
import type { Snapshot } from '../snapshot';
import { choicesHere } from './choices-here';
import { snippetText, tabChoice, tabStop } from './item';

/**
 * A first value to type over: what is assumed, the choices, or the low end of what is usual. A number is
 * typed over without its unit.
 */
export function valueSnippet(snapshot: Snapshot, known: KnownParameter): string {
  const { parameter } = known;
  switch (parameter.kind) {
    case 'quantity':
    case 'count':
      return numberStop(1, parameter.default?.value ?? String(parameter.usual[0]));
    case 'flag':
      return tabChoice(1, ['on', 'off']);
    case 'word':
      return parameter.permutationOf === undefined
        ? tabChoice(1, wordsOf(snapshot, known))
        : tabStop(1, parameter.permutationOf);
    case 'words':
      return '[$1]';
    case 'range': {
      const [low, high] = parameter.usual;
      return `${tabStop(1, low.split(' ')[0] ?? '')}..${numberStop(2, high)}`;
    }
    case 'curve': {
      const { across, up } = parameter;
      const [start, end] = [`${across.range[0]} -> ${up.usual[0]}`, across.range[1]];
      return `${snippetText(start)}, ${snippetText(end)} -> ${numberStop(1, up.usual[1])}`;
    }
    case 'place':
      return `[${tabStop(1, 'row')}, ${tabStop(2, 'column')}]`;
    case 'text':
      return '"$1"';
    case 'date':
      return tabStop(1, 'year-month-day');
    case 'bare':
      return '$1';
  }
}

/** `${1:120} Hz`: the unit stays while the number is typed. */
function numberStop(index: number, text: string): string {
  const [, number = text, rest = ''] = /^(\S+)( .*)?$/.exec(text) ?? [];
  return tabStop(index, number) + snippetText(rest);
}

/** The word that is assumed first: it is what the client puts in to begin with. */
function wordsOf(snapshot: Snapshot, known: KnownParameter): readonly string[] {
  const names = choicesHere(snapshot, { ...known, path: known.name, keys: [] }).map(({ name }) => name);
  const assumed = known.parameter.default?.value;
  return assumed !== undefined && names.includes(assumed)
    ? [assumed, ...names.filter((name) => name !== assumed)]
    : names;
}
