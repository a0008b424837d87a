import type { AxisResponse, RecordingReported } from '../../server/src/lsp/recording-protocol';
import type { AxisModel } from '../../server/src/sheet/recording-model';
import { followRows } from '../../server/src/sheet/recording-rows';
import { element } from '../page/element';
import { question } from './answer';
import { measuredTable } from './measured-table';
import { likelyText } from './measured-text';
import { response } from './response';
import { stepDrawing } from './step';

/** Does it follow? */
export function followSection({ report, models }: RecordingReported): HTMLElement {
  return question('follow', report.responses, shortOf, (axes) => [
    ...axes.flatMap((one) => drawings(one, models.find(({ axis }) => axis === one.axis) ?? null)),
    ...measuredTable('How it follows', followRows(axes, models)),
  ]);
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
