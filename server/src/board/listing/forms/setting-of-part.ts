import type { ListedSetting, Stretch, Style } from '../listing';
import type { ListingLine } from '../text/line';
import type { CompiledForms } from './compiled';
import { pathOf } from './name-path';
import type { PartRead } from './read-part';
import { statedOf } from './stated';

/** The setting that a part of a line writes. `groups`: those that are open where the line stands. */
export function settingOfPart(
  line: ListingLine,
  part: PartRead,
  groups: readonly string[],
  forms: CompiledForms,
): Omit<ListedSetting, 'occurrence'> {
  const textAt = ({ start, end }: Stretch) => line.text.slice(start, end);
  const { style, called } = part;
  const named =
    called === undefined
      ? pathOf(textAt(part.name), part.name, forms.forms.path)
      : { groups: [], name: called, at: part.name };
  const value = textAt(part.value);
  const own = [...part.groups.map(textAt), ...named.groups];
  return {
    groups: own.length === 0 ? groups : [...groups, ...own],
    name: named.name,
    value: style.kind === 'presence' ? presence(value, style) : value,
    style,
    at: {
      name: line.at(named.at.start, named.at.end),
      value: line.at(part.value.start, part.value.end),
    },
    stated: statedOf(line, part.said, value, forms),
  };
}

/** What the mark before a name says of it. */
function presence(mark: string, { affirmation = '' }: Style & { readonly kind: 'presence' }): string {
  return mark.trimEnd() === affirmation.trimEnd() ? 'on' : 'off';
}
