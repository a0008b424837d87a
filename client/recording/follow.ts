import type { AxisResponse, RecordingTold, Told } from '../../server/src/lsp/recording-protocol';
import type { AxisModel } from '../../server/src/sheet/recording-model';
import { element } from '../page/element';
import { question } from './answer';
import { likelyText } from './measured-text';
import { response } from './response';
import { stepDrawing } from './step';
import { type ToldRow, toldTable } from './told-table';

/** Does it follow? */
export function followSection({ report, models }: RecordingTold): HTMLElement {
  return question('follow', report.responses, shortOf, (axes) => [
    ...axes.flatMap((one) => drawings(one, models.find(({ axis }) => axis === one.axis) ?? null)),
    ...toldTable(
      'How it follows',
      axes.map(({ axis }) => axis),
      [
        {
          name: 'Response over frequency',
          cells: axes.map(({ curve }) => ({
            value: curve.told === null ? curve : null,
            beside: curve.told === null ? null : 'drawn above',
          })),
        },
        row('Follows up to (−3 dB)', axes, ({ bandwidth }) => bandwidth),
        row('Most that comes at any frequency', axes, ({ peak }) => peak),
        row('Half of a sudden call after', axes, ({ step }) => partOf(step, ({ half }) => half)),
        row('A sudden call ends at', axes, ({ step }) => partOf(step, ({ endGain }) => endGain)),
      ],
    ),
  ]);
}

type Cell = ToldRow['cells'][number]['value'];

function row(name: string, axes: readonly AxisResponse[], of: (axis: AxisResponse) => Cell): ToldRow {
  return { name, cells: axes.map((axis) => ({ value: of(axis) })) };
}

/** Of an answer that is told, a part with what the whole rests on. */
export function partOf<T, P>(answer: Told<T>, part: (told: T) => P): Told<P> {
  return 'reason' in answer ? answer : { told: part(answer.told), basis: answer.basis };
}

function drawings(
  { axis, curve, bandwidth, step }: AxisResponse,
  model: AxisModel | null,
): readonly HTMLElement[] {
  const name = 'as measured';
  const modelName = model === null ? '' : `the script’s model ${model.place}`;
  const inside = [
    curve.told === null
      ? null
      : response({
          id: `response-${axis}`,
          title: `How ${axis} follows a sine`,
          lines: [{ name, curve: curve.told, bandwidth: bandwidth.told }],
          model: model === null ? null : { name: modelName, curve: model.curve },
        }),
    step.told === null
      ? null
      : stepDrawing({
          id: `step-${axis}`,
          title: `How ${axis} follows a sudden call, %`,
          lines: [{ name, step: step.told }],
          model: model === null || model.step === null ? null : { name: modelName, step: model.step },
        }),
  ].filter((one) => one !== null);
  if (inside.length === 0) return [];
  return [
    element(
      'div',
      { class: 'axis', 'data-axis': axis },
      element('p', {}, `About ${axis}`),
      element('div', { class: 'pair' }, ...inside),
    ),
  ];
}

function shortOf(axes: readonly AxisResponse[]): string {
  const known = axes.flatMap(({ axis, bandwidth }) =>
    bandwidth.told === null ? [] : [`${axis} up to ${likelyText(bandwidth.told)}`],
  );
  return known.length === 0 ? 'not known' : known.join(', ');
}
