import type { AxisNoise, MeasuredSpan } from '../../server/src/lsp/recording-protocol';
import type { RecordingChange, RecordingQuestion } from '../../server/src/sheet/compare/recordings';
import { element } from '../page/element';
import { turnWords } from '../page/words';
import { measuredWords } from './measured';
import type { ComparedRecording } from './messages';
import { linesOf } from './shake';
import { spectrum } from './spectrum';
import { table } from './table';

const questions: readonly (readonly [RecordingQuestion, string])[] = [
  ['shake', 'Does it shake, and from what?'],
  ['motors', 'Do the motors work alike?'],
  ['pack', 'What does the pack give?'],
  ['hover', 'How did it hover?'],
  ['link', 'Did the link hold?'],
];

/** Two recordings side by side: by question, what each told. */
export function comparedSections(
  before: ComparedRecording,
  after: ComparedRecording,
  changes: readonly RecordingChange[],
): readonly HTMLElement[] {
  const heads = ['', before.name, after.name, 'Change'];
  return questions.flatMap(([id, title]) => {
    const own = changes.filter(({ question }) => question === id);
    const drawn = id === 'shake' ? drawings(before, after) : [];
    if (own.length === 0 && drawn.length === 0) return [];
    return [
      element(
        'section',
        { id: `compared-${id}` },
        element('h2', {}, title),
        ...drawn,
        own.length === 0 ? null : table(title, heads, own.map(row)),
      ),
    ];
  });
}

function row({ title, before, after, turn }: RecordingChange): readonly (string | HTMLElement)[] {
  return [title, cell(before), cell(after), element('span', { class: turn ?? '' }, turnWords(turn))];
}

function cell(measured: MeasuredSpan | null): string | HTMLElement {
  return measured === null ? 'not known' : measuredWords(measured);
}

/** Of each axis the spectra after the board's filters, one over the other. */
function drawings(before: ComparedRecording, after: ComparedRecording): readonly HTMLElement[] {
  const axes = after.told.report.noise.told ?? before.told.report.noise.told ?? [];
  return axes.map(({ axis }) => {
    const line = ({ name, told }: ComparedRecording) => {
      const own = (told.report.noise.told ?? []).find((one: AxisNoise) => one.axis === axis);
      return own === undefined
        ? []
        : linesOf(own)
            .slice(0, 1)
            .map((one) => ({ ...one, name, peaks: [] }));
    };
    return spectrum({
      id: `compared-${axis}`,
      title: `Noise about ${axis}, dB`,
      lines: [...line(before), ...line(after)],
      filters: after.told.filters,
    });
  });
}
