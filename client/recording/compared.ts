import type { AxisNoise, MeasuredSpan } from '../../server/src/lsp/recording-protocol';
import { recordingQuestions } from '../../server/src/sheet/compare/recording-questions';
import type { RecordingChange } from '../../server/src/sheet/compare/recordings';
import type { LinePlot } from '../../server/src/sheet/plots/plot';
import { element } from '../page/element';
import { turnWords } from '../page/words';
import { comparedFollow } from './compared-follow';
import { measuredWords } from './measured';
import { measuredText } from './measured-text';
import type { ComparedRecording, ToRecording } from './messages';
import { linesOf } from './shake';
import { spectrum } from './spectrum';
import { table } from './table';

type ComparedMessage = Extract<ToRecording, { kind: 'compared' }>;

/** Two recordings side by side: by question, what each told. */
export function comparedSections({
  before,
  after,
  changes,
  isSame,
}: ComparedMessage): readonly HTMLElement[] {
  const heads = ['', before.name, after.name, 'Change'];
  // Of one recording all that was measured is the same: only what the script makes of it differs.
  const shown = isSame ? changes.filter((one) => textOf(one.before) !== textOf(one.after)) : changes;
  return Object.entries(recordingQuestions).flatMap(([id, title]) => {
    const own = shown.filter(({ question }) => question === id);
    const drawn = drawnFor(id, before, after, isSame);
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

function drawnFor(
  question: string,
  before: ComparedRecording,
  after: ComparedRecording,
  isSame: boolean,
): readonly HTMLElement[] {
  if (question === 'shake') return isSame ? asLeft(before, after) : drawings(before, after);
  return question === 'follow' && !isSame ? comparedFollow(before, after) : [];
}

function textOf(measured: MeasuredSpan | null): string {
  return measured === null ? '' : measuredText(measured);
}

function row({ title, before, after, turn }: RecordingChange): readonly (string | HTMLElement)[] {
  return [title, cell(before), cell(after), element('span', { class: turn ?? '' }, turnWords(turn))];
}

function cell(measured: MeasuredSpan | null): string | HTMLElement {
  return measured === null ? 'not known' : measuredWords(measured);
}

/** Of each axis what the script's filters, before the change and after it, would leave of this flight's noise. */
function asLeft(before: ComparedRecording, after: ComparedRecording): readonly HTMLElement[] {
  const [was, is] = [before.reported.filters, after.reported.filters];
  if (was === null || is === null) return [];
  return (after.reported.report.noise.told ?? []).flatMap((axis) => {
    const raw = axis.spectra.find(({ signal }) => signal === 'unfiltered-gyro');
    const spectrumOf = raw ?? axis.spectra[0];
    if (spectrumOf === undefined) return [];
    const line = (name: string, filtered: (frequency: number) => number) => ({
      name,
      peaks: [],
      frequencies: spectrumOf.frequencies,
      decibels: spectrumOf.decibels.map((one, at) => one + filtered(spectrumOf.frequencies[at] ?? 0)),
    });
    // Where only the filtered gyro is logged, the filters of before are in it already.
    const lines = [
      line(before.name, raw === undefined ? () => 0 : (frequency) => leftAt(was, frequency)),
      line(
        after.name,
        (frequency) => leftAt(is, frequency) - (raw === undefined ? leftAt(was, frequency) : 0),
      ),
    ];
    const title = `Noise about ${axis.axis} as the script’s filters leave it, dB`;
    return [spectrum({ id: `left-${axis.axis}`, title, lines, filters: null })];
  });
}

/** dB at a frequency, of the filters in the hover. */
function leftAt({ at, lines }: LinePlot, frequency: number): number {
  const values = lines[0]?.values ?? [];
  const after = at.findIndex((one) => one >= frequency);
  return values[after < 0 ? values.length - 1 : after] ?? 0;
}

/** Of each axis the spectra after the board's filters, one over the other. */
function drawings(before: ComparedRecording, after: ComparedRecording): readonly HTMLElement[] {
  const axes = after.reported.report.noise.told ?? before.reported.report.noise.told ?? [];
  return axes.map(({ axis }) => {
    const line = ({ name, reported }: ComparedRecording) => {
      const own = (reported.report.noise.told ?? []).find((one: AxisNoise) => one.axis === axis);
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
      filters: after.reported.filters,
    });
  });
}
