import type { FoundParameter } from '../../catalog/catalog';
import type { ReferenceNode } from '../../language/ast';

export type ReferenceMeaning = 'word' | 'pack' | 'constant' | 'parameter';

/**
 * What a bare name in a value stands for: the parameter's kind decides. Without a known parameter, as in a
 * constant's value, it is a constant or the path of a parameter.
 */
export function referenceMeaning(
  { path }: ReferenceNode,
  found: FoundParameter | undefined,
): ReferenceMeaning {
  const calculated = path.text.includes('.') ? 'parameter' : 'constant';
  const parameter = found?.parameter;
  switch (parameter?.kind) {
    case 'word':
    case 'words':
      return parameter.choicesFrom === 'packs' ? 'pack' : 'word';
    case 'flag':
    case 'text':
    case 'date':
      return 'word';
    case 'quantity':
    case 'count':
      return parameter.orWords?.some((word) => word.name === path.text) ? 'word' : calculated;
    default:
      return calculated;
  }
}
