import type { ListedSetting, Listing } from '../../../server/src/board/listing/listing';
import { boardForms } from '../../../server/src/catalog/model/board-forms';
import { quoteAround } from './agreement';
import type { PrintedListing, TrueSetting } from './listing';

/** The reading that gets all of a printed listing right. */
export function perfectReading({ text, settings, comments }: PrintedListing): Listing {
  return {
    text,
    forms: boardForms.parse({ container: 'lines' }),
    settings: settings.map((setting) => listed(text, setting)),
    headings: groupsOf(settings).map((groups) => ({ groups, at: { start: 0, end: 0 } })),
    comments,
    openings: [],
    closings: [],
    left: [],
    lines: [],
    breaksAt: null,
    echoes: [],
    understood: 1,
    refused: null,
  };
}

function groupsOf(settings: readonly TrueSetting[]): readonly (readonly string[])[] {
  const all = settings.flatMap(({ groups }) => groups.map((_, index) => groups.slice(0, index + 1)));
  return [...new Map(all.map((groups) => [JSON.stringify(groups), groups])).values()];
}

function listed(text: string, { groups, name, occurrence, value, at, stated }: TrueSetting): ListedSetting {
  const place = at.value ?? { start: at.name.start, end: at.name.start };
  const mark = quoteAround(text, place.start, place.end);
  const style = mark === null ? ({ kind: 'plain' } as const) : ({ kind: 'quoted', mark } as const);
  return {
    groups,
    name,
    occurrence,
    value: value.text,
    style: at.value === null ? { kind: 'presence', negation: '' } : style,
    at: { name: at.name, value: place },
    stated:
      stated === null && value.unit === null
        ? null
        : {
            range: stated?.range ?? null,
            words: stated?.words ?? null,
            default: stated?.default ?? null,
            remark: stated?.remark ?? null,
            unit: value.unit?.text ?? null,
            at: place,
          },
  };
}
