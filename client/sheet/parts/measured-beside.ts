import type { LearnedPart, SheetFlight } from '../../../server/src/sheet/learned';
import { element } from '../../page/element';
import type { RecordingBrief } from '../../recording/brief';
import { send } from '../extension-side';

/** Rows below a figure that say what was measured of it, by the figure; a sheet may be drawn before that is known. */
const mark = 'data-measured';
let flights: readonly SheetFlight[] = [];
let briefs: ReadonlyMap<string, RecordingBrief> = new Map();

/** Below a figure's row: what the last flight with a recording that tells it measured. Hidden where none does. */
export function measuredRow(figure: string, cells: number): HTMLElement {
  const place = element('td', { colspan: String(cells + 1) });
  const row = element('tr', { class: 'measured', [mark]: figure, hidden: true }, place);
  fill(row);
  return row;
}

/** The flights of the sheet that is shown. */
export function flightsShown(part: LearnedPart | undefined): void {
  flights = part?.flights ?? [];
  fillAll();
}

/** What recordings said, by their files. */
export function measuredSaid(said: ReadonlyMap<string, RecordingBrief>): void {
  briefs = said;
  fillAll();
}

function fillAll(): void {
  for (const row of document.querySelectorAll<HTMLElement>(`tr[${mark}]`)) fill(row);
}

function fill(row: HTMLElement): void {
  const last = lastAnswer(row.getAttribute(mark) ?? '');
  row.hidden = last === null;
  row.classList.add('wide-only');
  if (last === null) return;
  const { flight, text, uri } = last;
  const when = [flight.date ?? flight.name.replaceAll('-', ' '), flight.pack].filter((word) => word !== null);
  const press = () => send({ kind: 'open-recording', uri });
  row.firstElementChild?.replaceChildren(
    element('button', { type: 'button', class: 'value', onclick: press }, `measured on ${when.join(', ')}`),
    `: ${text}`,
  );
}

/** The flights stand newest first. */
function lastAnswer(figure: string) {
  for (const flight of flights) {
    const uri = flight.recording?.uri;
    const brief = uri === undefined ? undefined : briefs.get(plainUri(uri));
    const text = brief?.answers?.find((one) => one.figure === figure)?.text;
    if (uri !== undefined && text !== undefined) return { flight, uri, text };
  }
  return null;
}

/** One spelling: an editor escapes more characters than a script's reader does. */
export function plainUri(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}
