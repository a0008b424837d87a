import type { SheetFlight } from '../../../server/src/sheet/learned';
import { drawing, element } from '../../page/element';
import type { RecordingBrief } from '../../recording/brief';
import { send } from '../extension-side';
import { measuredSaid, plainUri } from './measured-beside';

/** By file: what it said when it was read last. */
const said = new Map<string, RecordingBrief>();
/** Places that show it, by file; the sheet may be drawn before it is known. */
const mark = 'data-recording';

/** A flight's recording: what it said when it was read, and a press that opens it. */
export function recordingRow({ path, uri }: NonNullable<SheetFlight['recording']>): HTMLElement {
  const place = element('span', { class: 'said-last', [mark]: uri });
  fill(place, uri);
  const press = () => send({ kind: 'open-recording', uri });
  return element(
    'p',
    { class: 'recording wide-only' },
    element(
      'button',
      { type: 'button', class: 'value', 'aria-label': `Open Recording ${path}`, onclick: press },
      path,
    ),
    place,
  );
}

export function recordingsSaid(briefs: readonly RecordingBrief[]): void {
  said.clear();
  for (const brief of briefs) said.set(plainUri(brief.uri), brief);
  measuredSaid(said);
  for (const place of document.querySelectorAll<HTMLElement>(`[${mark}]`))
    fill(place, place.getAttribute(mark) ?? '');
}

function fill(place: HTMLElement, uri: string): void {
  const brief = said.get(plainUri(uri));
  if (brief === undefined) place.replaceChildren(element('span', { class: 'aside' }, 'not read yet'));
  else place.replaceChildren(`${brief.text} `, ...curve(brief.curve));
}

/** Pixels. */
const [width, height] = [120, 20];

/** The noise of the loudest axis over frequency, as small as a word: told in words beside it. */
function curve(decibels: readonly number[]): readonly SVGElement[] {
  if (decibels.length < 2) return [];
  const [low, high] = [Math.min(...decibels), Math.max(...decibels)];
  const x = (at: number) => (at / (decibels.length - 1)) * width;
  const y = (value: number) => 1 + (height - 2) * (1 - (value - low) / Math.max(1, high - low));
  const path = decibels.map(
    (value, at) => `${at === 0 ? 'M' : 'L'}${x(at).toFixed(1)} ${y(value).toFixed(1)}`,
  );
  return [
    drawing(
      'svg',
      { class: 'spark', width: String(width), height: String(height), 'aria-hidden': 'true' },
      drawing('path', { class: 'curve curve-0', d: path.join('') }),
    ),
  ];
}
