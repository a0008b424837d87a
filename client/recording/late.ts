import type {
  AxisResponse,
  MeasuredSpan,
  RecordingTold,
  Told,
} from '../../server/src/lsp/recording-protocol';
import type { AxisModel, EstimateBeside } from '../../server/src/sheet/recording-model';
import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { question } from './answer';
import { partOf } from './follow';
import { likelyText, measuredText } from './measured-text';
import { type ToldRow, toldTable } from './told-table';

type Estimates = AxisModel['estimates'];

/** Is it late? And how much may it be later before it swings? */
export function lateSection({ report, models }: RecordingTold): HTMLElement {
  return question('late', report.responses, shortOf, (axes) => {
    const row = (
      name: string,
      of: (axis: AxisResponse) => Told<MeasuredSpan> | null,
      estimate?: keyof Estimates,
    ): ToldRow => ({
      name,
      cells: axes.map((one) => ({
        value: of(one),
        beside: besideText(
          estimate === undefined
            ? undefined
            : models.find(({ axis }) => axis === one.axis)?.estimates[estimate],
        ),
      })),
    });
    const margin =
      (part: (margins: NonNullable<AxisResponse['margins']['told']>) => MeasuredSpan) =>
      ({ margins }: AxisResponse) =>
        partOf(margins, part);
    return [
      ...toldTable(
        'How late it is, and what is left before it swings',
        axes.map(({ axis }) => axis),
        [
          row('Delay from motor command to gyro', ({ delay }) => delay, 'delay'),
          row('Time constant of motors and propellers', ({ lag }) => lag, 'lag'),
          row('Phase delay from sticks to gyro', ({ phaseDelay }) => phaseDelay),
          row(
            'Crossover',
            margin(({ crossover }) => crossover),
            'crossover',
          ),
          row(
            'Phase margin',
            margin(({ phaseMargin }) => phaseMargin),
            'phaseMargin',
          ),
          row('Gain margin, times', gainMarginOf, 'gainMargin'),
          row(
            'A disturbance grows at most, times',
            margin(({ sensitivityPeak }) => sensitivityPeak),
          ),
        ],
      ),
      element('p', { class: 'aside' }, waysOf(axes)),
    ];
  });
}

function gainMarginOf({ margins }: AxisResponse): Told<MeasuredSpan> {
  if ('reason' in margins) return margins;
  const { gainMargin } = margins.told;
  if (gainMargin !== null) return { told: gainMargin, basis: margins.basis };
  return {
    told: null,
    reason: 'It lies above the frequencies that were flown.',
    advice: 'Fly quicker, small movements; a large gain margin needs no more.',
  };
}

/** By which way margins were found, for those that were. */
function waysOf(axes: readonly AxisResponse[]): string {
  const ways = new Set(axes.flatMap(({ margins }) => margins.told?.by ?? []));
  const behind = ways.has('controller')
    ? 'Margins are those of the craft as it was measured with the controller that the script describes.'
    : '';
  const alone = ways.has('answer') ? 'Margins about some axes follow from the answer alone.' : '';
  return [behind, alone, 'A test hover decides.'].filter((text) => text !== '').join(' ');
}

/** "script: 59 deg in the hover; 58.6 deg (38.6 to 75.7 deg) at the worst place" */
export function besideText(estimate: EstimateBeside | undefined): string | null {
  if (estimate === undefined) return null;
  const { inHover, figure, unit } = estimate;
  const said = [
    ...(inHover === null ? [] : [`${figureText(inHover, unit)} in the hover`]),
    ...(figure === null || isSame(inHover, figure) ? [] : [`${measuredText(figure)} at the worst place`]),
  ];
  const span = figure !== null && isSame(inHover, figure) && figure.low < figure.high;
  const within = span ? `, ${measuredText(figure).replace(/^[^(]*\(|\)$/g, '')}` : '';
  return said.length === 0 ? null : `script: ${said.join('; ')}${within}`;
}

function isSame(inHover: number | null, { likely }: MeasuredSpan): boolean {
  return inHover !== null && Math.abs(inHover - likely) < 1e-3 * Math.abs(likely);
}

function shortOf(axes: readonly AxisResponse[]): string {
  const margins = axes.flatMap(({ axis, margins: { told } }) =>
    told === null ? [] : [{ axis, margin: told.phaseMargin }],
  );
  const [least] = [...margins].sort((one, other) => one.margin.likely - other.margin.likely);
  const delays = axes.flatMap(({ delay }) => delay.told ?? []);
  const [longest] = [...delays].sort((one, other) => other.likely - one.likely);
  const said = [
    ...(longest === undefined ? [] : [`by ${likelyText(longest)}`]),
    ...(least === undefined ? [] : [`phase margin ${likelyText(least.margin)} about ${least.axis}`]),
  ];
  return said.length === 0 ? 'not known' : said.join(', ');
}
