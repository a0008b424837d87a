import type { FoundParameter } from '../../catalog/catalog';
import type { Snapshot } from '../snapshot';
import { likelyChoices } from './choices-here';
import { snippetText, tabChoice, tabStop } from './item';
import { bestValue } from './proposals';

/**
 * A first value to type over: the best of what is proposed, or the choices; else just a place. A number is typed over
 * without its unit. `pack`: that of the line's section.
 */
export function valueSnippet(snapshot: Snapshot, found: FoundParameter, pack: string | null): string {
  const { parameter } = found;
  const best = bestValue.get(snapshot.craft, found.path, pack) ?? undefined;
  switch (parameter.kind) {
    case 'quantity':
    case 'count':
      return best === undefined ? emptyStop(found) : numberStop(1, best);
    case 'flag':
      return tabChoice(1, ['on', 'off']);
    case 'word':
      return parameter.permutationOf === undefined
        ? tabChoice(1, wordsOf(snapshot, found, best))
        : tabStop(1, best ?? parameter.permutationOf);
    case 'words':
      return best === undefined ? '[$1]' : tabStop(1, best);
    case 'range': {
      const [low = '', high = ''] = best?.split('..') ?? [];
      return best === undefined ? `$1..$2${unitOf(found)}` : `${tabStop(1, low)}..${numberStop(2, high)}`;
    }
    case 'curve':
      return best === undefined ? '$1' : tabStop(1, best);
    case 'place': {
      const [, row = 'row', column = 'column'] = /^\[(\d+), (\d+)\]$/.exec(best ?? '') ?? [];
      return `[${tabStop(1, row)}, ${tabStop(2, column)}]`;
    }
    case 'text':
      return '"$1"';
    case 'date':
      return tabStop(1, 'year-month-day');
    case 'bare':
      return '$1';
  }
}

/** `$1 g` */
function emptyStop(found: FoundParameter): string {
  return `$1${unitOf(found)}`;
}

function unitOf({ unit = '' }: FoundParameter): string {
  return unit === '' ? '' : ` ${snippetText(unit)}`;
}

/** `${1:120} Hz`: the unit stays while the number is typed. */
function numberStop(index: number, text: string): string {
  const [, number = text, rest = ''] = /^(\S+)( .*)?$/.exec(text) ?? [];
  return tabStop(index, number) + snippetText(rest);
}

/** The likely word first, else the one that is assumed: it is what the client puts in to begin with. */
function wordsOf(snapshot: Snapshot, found: FoundParameter, likely: string | undefined): readonly string[] {
  const names = likelyChoices(snapshot, found).map(({ name }) => name);
  const first = [likely, found.parameter.default?.value].find(
    (one) => one !== undefined && names.includes(one),
  );
  return first === undefined ? names : [first, ...names.filter((name) => name !== first)];
}
