import type { AxisNoise, Peak, RecordingReported } from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { question, restsOn, withheld } from './answer';
import { heatMap } from './heat-map';
import { measuredWords } from './measured';
import { likelyText, measuredText } from './measured-text';
import { spectrum } from './spectrum';
import type { SpectrumLine } from './spectrum-data';
import { table } from './table';

const signals = { gyro: 'after the board’s filters', 'unfiltered-gyro': 'before them' } as const;

/** Does it shake, and from what? */
export function shakeSection({ report, filters }: RecordingReported): HTMLElement {
  const { noise, noiseMaps } = report;
  const maps = noiseMaps.told ?? [];
  return question('shake', noise, shortOf, (axes) => [
    ...axes.map((axis) =>
      element(
        'div',
        { class: 'axis', 'data-axis': axis.axis },
        element('p', {}, `About ${axis.axis}: `, measuredWords(axis.shaking)),
        element(
          'div',
          { class: 'pair' },
          spectrum({
            id: `spectrum-${axis.axis}`,
            title: `Noise about ${axis.axis}, dB`,
            lines: linesOf(axis),
            filters,
          }),
          ...maps.filter((map) => map.axis === axis.axis).map(heatMap),
        ),
        axis.peaks.length === 0
          ? element('p', { class: 'aside' }, 'No tone stands out of the floor.')
          : peakTable(axis.axis, axis.peaks),
        axis.untold === undefined
          ? null
          : element(
              'p',
              { class: 'aside' },
              `${axis.untold} more come and go: the motors’ speeds, logged, would tell theirs.`,
            ),
      ),
    ),
    noiseMaps.told === null ? withheld(noiseMaps.reason, noiseMaps.advice) : restsOn(noiseMaps.basis),
  ]);
}

export function linesOf({ spectra, peaks, peaksIn }: AxisNoise): readonly SpectrumLine[] {
  return spectra.map(({ signal, frequencies, decibels }) => ({
    name: signals[signal],
    frequencies,
    decibels,
    peaks: signal === peaksIn ? peaks : [],
  }));
}

function shortOf(axes: readonly AxisNoise[]): string {
  const loudest = [...axes].sort((one, other) => other.shaking.likely - one.shaking.likely)[0];
  return loudest === undefined ? '' : `most about ${loudest.axis}: ${likelyText(loudest.shaking)}`;
}

function peakTable(axis: string, peaks: readonly Peak[]): HTMLElement {
  const head = ['Tone', 'Above the floor', 'The script’s filters leave', 'From what'];
  return table(`Tones about ${axis}`, head, peaks.map(peakRow));
}

function peakRow({ frequency, aboveFloor, order, source, mayBeFolded, left }: Peak, index: number) {
  const turns = order === null ? '' : `, ${measuredText(order)} times for each turn`;
  // Of one that comes so many times a turn it is known, and said.
  const folded =
    mayBeFolded && order === null
      ? ' Or a higher tone, which too few rows a second show down here: log more to know.'
      : '';
  return [
    element('span', {}, `${index + 1}: `, measuredWords(frequency)),
    measuredWords(aboveFloor),
    left === null ? 'not known' : figureText(left, 'dB'),
    element('span', { class: 'words' }, `${source}${turns}.`, element('span', { class: 'aside' }, folded)),
  ];
}
