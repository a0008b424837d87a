import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { figureText, intervalText } from '../which-pack';

/** Where the motors hum: what any filter has to take off, known before a filter is; null where that is not known. */
export function tonesText(craft: Craft, packs: readonly (string | null)[]): string | null {
  const sentences = packs.flatMap((pack) => {
    const view = new CraftView(craft, pack);
    const [hover, full] = (['hover-tone', 'full-tone'] as const).map((id) => shown(view, id));
    if (hover == null || full == null) return [];
    return [`${pack === null ? '' : `with pack ${pack} `}${hover} in the hover and ${full} at full throttle`];
  });
  if (sentences.length === 0) return null;
  return `What filters have to take off is known already: the motors hum ${sentences.join('; ')}, their blades at a multiple of that.`;
}

function shown(view: CraftView, id: 'hover-tone' | 'full-tone'): string | null {
  const figure = figureOf(view, id);
  if (figure === null) return null;
  const span = intervalText(figure);
  return `at ${figureText(figure)}${span === null ? '' : ` (${span})`}`;
}
