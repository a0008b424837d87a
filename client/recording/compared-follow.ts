import type { AxisResponse } from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import type { ComparedRecording } from './messages';
import { response } from './response';
import { stepDrawing } from './step';

/** Of each axis how it followed on both flights, one over the other. */
export function comparedFollow(before: ComparedRecording, after: ComparedRecording): readonly HTMLElement[] {
  const of = ({ reported }: ComparedRecording) => reported.report.responses.told ?? [];
  const axes = [...new Set([...of(before), ...of(after)].map(({ axis }) => axis))];
  return axes.flatMap((axis) => {
    const both = [before, after].flatMap((one) =>
      of(one)
        .filter((own) => own.axis === axis)
        .map((own) => ({ name: one.name, own })),
    );
    const drawn = [...responses(axis, both), ...steps(axis, both)];
    return drawn.length === 0 ? [] : [element('div', { class: 'pair' }, ...drawn)];
  });
}

type Both = readonly { readonly name: string; readonly own: AxisResponse }[];

function responses(axis: string, both: Both): readonly HTMLElement[] {
  const lines = both.flatMap(({ name, own }) =>
    own.curve.told === null ? [] : [{ name, curve: own.curve.told, bandwidth: own.bandwidth.told }],
  );
  if (lines.length === 0) return [];
  return [
    response({ id: `compared-response-${axis}`, title: `How ${axis} follows a sine`, lines, model: null }),
  ];
}

function steps(axis: string, both: Both): readonly HTMLElement[] {
  const lines = both.flatMap(({ name, own }) =>
    own.step.told === null ? [] : [{ name, step: own.step.told }],
  );
  if (lines.length === 0) return [];
  return [
    stepDrawing({
      id: `compared-step-${axis}`,
      title: `How ${axis} follows a sudden call, %`,
      lines,
      model: null,
    }),
  ];
}
