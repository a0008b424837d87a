import type {
  RecordingFinding,
  RecordingProposal,
  RecordingReported,
} from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { markOf } from '../page/mark';
import { post } from './extension-side';

/** What was left out, mended or not known: it comes before all that is told. */
export function leftOutSection(sentences: readonly string[]): readonly HTMLElement[] {
  if (sentences.length === 0) return [];
  return [
    element(
      'section',
      { id: 'left-out' },
      element('h2', {}, 'What was left out'),
      element('ul', { class: 'sentences' }, ...sentences.map((text) => element('li', {}, text))),
    ),
  ];
}

/** What was found, with what may be written for it. */
export function findingsSection(reported: RecordingReported, canWrite: boolean): HTMLElement {
  const { findings } = reported.report;
  return element(
    'section',
    { id: 'findings' },
    element(
      'h2',
      {},
      'What was found',
      element('span', { class: 'brief' }, ` ${countText(findings.length)}`),
    ),
    findings.length === 0
      ? element('p', { class: 'aside' }, 'Nothing stands out. What could not be judged says so below.')
      : element('ul', {}, ...findings.map((finding) => item(finding, reported, canWrite))),
  );
}

/** What has grown from one flight to another; nothing where nothing has. */
export function grownList(grown: readonly RecordingFinding[]): readonly HTMLElement[] {
  if (grown.length === 0) return [];
  const none = { lines: [] };
  return [element('ul', { class: 'grown-findings' }, ...grown.map((finding) => item(finding, none, false)))];
}

function countText(count: number): string {
  if (count === 0) return 'nothing';
  return count === 1 ? '1 finding' : `${count} findings`;
}

function item(
  finding: RecordingFinding,
  reported: Pick<RecordingReported, 'lines'>,
  canWrite: boolean,
): HTMLElement {
  const { id, level, sentence, advice, proposals } = finding;
  return element(
    'li',
    { class: `finding ${level}`, 'data-finding': id },
    markOf(level),
    element(
      'span',
      {},
      sentence,
      ' ',
      element('span', { class: 'aside' }, advice),
      ...proposals.map((one) => proposalRow(one, reported, canWrite)),
    ),
  );
}

/** What may be written as it was measured. */
export function proposalsSection(reported: RecordingReported, canWrite: boolean): readonly HTMLElement[] {
  const { proposals } = reported.report;
  if (proposals.length === 0) return [];
  return [
    element(
      'section',
      { id: 'proposals' },
      element('h2', {}, 'What may be written as it was measured'),
      canWrite
        ? null
        : element('p', { class: 'aside' }, 'Choose the craft’s script first: it is written there.'),
      ...proposals.map((one) => proposalRow(one, reported, canWrite)),
    ),
  ];
}

/** A press that writes it, with the lines, and ways to those that stand there now. */
function proposalRow(
  proposal: RecordingProposal,
  { lines }: Pick<RecordingReported, 'lines'>,
  canWrite: boolean,
): HTMLElement {
  const { title, sets } = proposal;
  const write = element(
    'button',
    { type: 'button', class: 'write', onclick: () => post({ kind: 'write', title }) },
    title,
  );
  write.disabled = !canWrite;
  return element(
    'div',
    { class: 'proposal' },
    write,
    ...sets.map(({ path, value, comment }, at) => {
      const target = lines.find((line) => line.path === path)?.target;
      return element(
        'p',
        {},
        target === undefined
          ? null
          : element(
              'button',
              {
                type: 'button',
                class: 'link',
                'aria-label': `${path}: go to line ${target.line + 1}`,
                onclick: () => post({ kind: 'go', target }),
              },
              `line ${target.line + 1}`,
            ),
        element('code', {}, `${path} = ${value}`),
        // What several lines say alike is said once.
        comment === sets[at - 1]?.comment ? null : element('span', { class: 'aside' }, ` ${comment}`),
      );
    }),
  );
}
