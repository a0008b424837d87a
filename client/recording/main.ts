import type { RecordingReport, RecordingReported } from '../../server/src/lsp/recording-protocol';
import { shortNumber } from '../../server/src/units/number-text';
import { element } from '../page/element';
import { columnsPart, showColumnsFault } from './columns';
import { comparedSections } from './compared';
import { post } from './extension-side';
import { findingsSection, grownList, leftOutSection, proposalsSection } from './findings';
import { followSection } from './follow';
import { gainsSection } from './gains';
import { historySections } from './history';
import { lateSection } from './late';
import type { RecordingName, ToRecording } from './messages';
import { motorsSection } from './motors';
import { hoverSection, linkSection, packSection } from './pack';
import { shakeSection } from './shake';

import '../page/page.css';
import '../page/wide.css';
import '../page/document.css';
import '../page/drawing.css';
import './recording.css';

const page = document.getElementById('recording');
const live = document.getElementById('live');
/** The progress that is shown, so that a step changes it in place. */
let progress: { readonly bar: HTMLProgressElement; readonly doing: HTMLElement } | null = null;

function received(message: ToRecording): void {
  switch (message.kind) {
    case 'reading':
      return void showProgress(message);
    case 'written':
      return void showWritten(message.title);
    case 'columns-refused':
      return void showColumnsFault(message.why);
    default:
      progress = null;
      show(...pageOf(message));
  }
}

/** What is shown, and what is said of it to a screen reader. */
function pageOf(
  message: Exclude<ToRecording, { kind: 'reading' | 'written' | 'columns-refused' }>,
): readonly [inside: readonly HTMLElement[], said: string] {
  switch (message.kind) {
    case 'told':
      return [reportPage(message.name, message.reported), spoken(message.reported.report)];
    case 'nothing':
      return [[heading(message.name), element('p', {}, message.why), ...ways(message.name)], message.why];
    case 'columns':
      return [
        [heading(message.name), ...columnsPart(message.asked)],
        `${message.asked.columns.length} columns to confirm`,
      ];
    case 'history':
      return [
        [
          element('h1', {}, 'Noise from flight to flight'),
          backRow(),
          ...grownList(message.grown),
          ...historySections(message.flights),
        ],
        `${message.flights.length} flights`,
      ];
    case 'compared':
      return comparedPage(message);
  }
}

function comparedPage(compared: Extract<ToRecording, { kind: 'compared' }>): ReturnType<typeof pageOf> {
  const { before, after, changes, grown, isSame } = compared;
  const count = (which: 'better' | 'worse') => changes.filter(({ turn }) => turn === which).length;
  const sums = `${count('better')} better, ${count('worse')} worse; the rest is the same or can’t be told apart.`;
  const inside = [
    element('h1', {}, isSame ? 'What the change does' : 'Two recordings'),
    backRow(),
    element('p', {}, element('b', {}, before.name), ' → ', element('b', {}, after.name)),
    element('p', {}, sums),
    isSame
      ? element(
          'p',
          { class: 'aside' },
          'The flight is the same: this is what the script’s filters would leave of it. Fly again to know.',
        )
      : null,
    ...grownList(grown),
    ...comparedSections(compared),
  ];
  return [inside.filter((one) => one !== null), sums];
}

function show(inside: readonly HTMLElement[], said: string): void {
  page?.replaceChildren(...inside);
  if (live !== null) live.textContent = said;
}

function heading({ file }: RecordingName): HTMLElement {
  return element('h1', {}, `Recording: ${file}`);
}

function showProgress({ name, share, doing }: Extract<ToRecording, { kind: 'reading' }>): void {
  if (progress === null) {
    const bar = element('progress', { max: '1', 'aria-label': `Reading ${name.file}` });
    progress = { bar, doing: element('span', { class: 'aside' }) };
    const stop = element('button', { type: 'button', onclick: () => post({ kind: 'stop' }) }, 'Stop');
    const row = element('p', { class: 'progress waiting' }, bar, progress.doing, stop);
    show([heading(name), row], `Reading ${name.file}`);
  }
  progress.bar.value = share;
  progress.doing.textContent = `${doing}, ${Math.round(100 * share)} %`;
}

function showWritten(title: string): void {
  const text = `“${title}” stands in the script now, as one edit that can be undone. A test hover decides.`;
  const row = element(
    'p',
    { id: 'written' },
    text,
    ' ',
    button('See What It Changes', { kind: 'read-again' }),
  );
  document.getElementById('written')?.remove();
  document.getElementById('ways')?.after(row);
  if (live !== null) live.textContent = text;
}

function button(title: string, message: Parameters<typeof post>[0]): HTMLElement {
  return element('button', { type: 'button', onclick: () => post(message) }, title);
}

function backRow(): HTMLElement {
  return element('p', {}, button('Back to the Recording', { kind: 'back' }));
}

function ways({ script }: RecordingName): readonly HTMLElement[] {
  return [
    element(
      'p',
      { id: 'ways', class: 'ways' },
      button(script === null ? 'Choose the Craft’s Script…' : 'Another Script…', { kind: 'script' }),
      button('Compare with Another…', { kind: 'compare' }),
      script === null ? null : button('Noise from Flight to Flight', { kind: 'history' }),
      button('What the Columns Hold…', { kind: 'confirm-anew' }),
      button('Read Again', { kind: 'read-again' }),
    ),
  ];
}

function reportPage(name: RecordingName, reported: RecordingReported): readonly HTMLElement[] {
  const { report } = reported;
  const canWrite = name.script !== null;
  return [
    heading(name),
    element('p', { class: 'aside about' }, aboutText(name, report)),
    ...(report.isSimulated
      ? [
          element(
            'p',
            {},
            element('b', {}, 'Simulated: '),
            'no craft flew this. It shows what a recording tells.',
          ),
        ]
      : []),
    ...chooser(report),
    ...ways(name),
    ...leftOutSection(report.leftOut),
    findingsSection(reported, canWrite),
    shakeSection(reported),
    followSection(reported),
    lateSection(reported),
    motorsSection(report),
    packSection(report),
    hoverSection(report),
    linkSection(report),
    gainsSection(reported),
    ...proposalsSection(reported, canWrite),
  ];
}

function aboutText({ script }: RecordingName, { seconds, rate }: RecordingReport): string {
  const craft =
    script === null ? 'no script chosen: filters and expectations are not known' : `told for ${script}`;
  return `${shortNumber(Number(seconds.toPrecision(3)))} s, ${shortNumber(Math.round(rate))} rows a second · ${craft}`;
}

/** Which flight, where the file holds several. */
function chooser({ flight, flights }: RecordingReport): readonly HTMLElement[] {
  if (flights < 2) return [];
  const select = element('select', {
    id: 'flight',
    onchange: () => post({ kind: 'flight', flight: Number(select.value) }),
  });
  for (let number = 1; number <= flights; number += 1)
    select.append(
      element(
        'option',
        { value: String(number), selected: number === flight },
        `Flight ${number} of ${flights}`,
      ),
    );
  return [element('p', {}, element('label', { for: 'flight' }, 'Which flight: '), select)];
}

function spoken({ findings, leftOut }: RecordingReport): string {
  return `${findings.length} findings, ${leftOut.length} left out`;
}

window.addEventListener('message', (event: MessageEvent<ToRecording>) => received(event.data));
post({ kind: 'ready' });
