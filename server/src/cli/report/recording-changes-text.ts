import type { RecordingFinding, RecordingReport } from '../../recording/report';
import { recordingQuestions } from '../../sheet/compare/recording-questions';
import type { RecordingChange } from '../../sheet/compare/recordings';
import { painted, type Terminal } from '../terminal';
import { spanText } from './measured-span-text';
import { foundLines, linesText, summaryLine } from './recording-text';
import { visible } from './visible';

/** What has changed between two recordings, for people: what was left out of either, then by the pilot’s questions. */
export function recordingChangesText(
  before: RecordingReport,
  after: RecordingReport,
  {
    changes,
    grown,
  }: { readonly changes: readonly RecordingChange[]; readonly grown: readonly RecordingFinding[] },
  terminal: Terminal,
): string {
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const leftOut = [before, after].flatMap(({ name, leftOut: all }) =>
    all.map((one) => `  ${visible(`${name}: ${one}`)}`),
  );
  const asked = Object.entries(recordingQuestions).flatMap(([question, words]) => {
    const rows = changes.filter((change) => change.question === question);
    return rows.length === 0 ? [] : [...title(words), ...rows.map((change) => changeLine(change, terminal))];
  });
  return linesText(
    [
      `before: ${summaryLine(before)}`,
      `after: ${summaryLine(after)}`,
      ...(leftOut.length === 0 ? [] : [...title('Not read, or to be known'), ...leftOut]),
      ...(grown.length === 0 ? [] : [...title('What has grown'), ...foundLines(grown, terminal)]),
      ...(changes.length === 0
        ? ['', 'Neither of them tells anything that can be put side by side.']
        : asked),
      '',
      'Better or worse is said where the spans do not overlap; everything else may be chance.',
    ],
    terminal,
  );
}

function changeLine({ title, before, after, turn }: RecordingChange, terminal: Terminal): string {
  const [was, is] = [before, after].map((span) => (span === null ? 'not told' : spanText(span)));
  const said = turn === null ? '' : `, ${painted(turn, turn === 'worse' ? 'yellow' : 'blue', terminal)}`;
  return `  ${visible(title)}: ${was} → ${is}${said}`;
}
