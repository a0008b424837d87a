import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { canvas, shape } from '../sheet/plots/frame';
import { type DrawnResponse, sureFrom } from './response-data';
import { nearest } from './spectrum-legend';

/** Names of the lines with a piece of each, and room for what is read off. */
export function responseLegend({ lines, model }: DrawnResponse) {
  const place = element('span', { class: 'read' });
  const all = [
    ...lines.map(({ name, curve }, index) => ({
      name,
      style: `curve curve-${index % 4}`,
      textAt: (frequency: number) => {
        const at = nearest(curve.frequencies, frequency);
        const gain = figureText(curve.gain[at] ?? null, 'dB');
        const phase = figureText(curve.phase[at] ?? null, '°');
        return `${gain}, ${phase}, coherence ${figureText(curve.coherence[at] ?? null, '')}`;
      },
    })),
    ...(model === null
      ? []
      : [
          {
            name: model.name,
            style: 'filter',
            textAt: (frequency: number) => {
              const at = nearest(model.curve.frequencies, frequency);
              return `${figureText(model.curve.gain[at] ?? null, 'dB')}, ${figureText(model.curve.phase[at] ?? null, '°')}`;
            },
          },
        ]),
  ].map((entry) => ({ ...entry, value: element('span', { class: 'read' }) }));
  const piece = (style: string) => canvas(18, 8, shape('path', { class: style, d: 'M0 4H18' }));
  const rows = all.map(({ name, style, value }) => element('li', {}, piece(style), name, ' ', value));
  const isUnsure = lines.some(({ curve }) => curve.coherence.some((one) => one < sureFrom));
  const unsure = isUnsure
    ? [element('li', {}, piece('unsure'), `coherence below ${sureFrom}: not sure`)]
    : [];
  return {
    element: element('ul', { class: 'legend' }, ...rows, ...unsure, element('li', {}, place)),
    read(frequency: number | null): string {
      place.textContent = frequency === null ? '' : `at ${figureText(frequency, 'Hz')}`;
      for (const { value, textAt } of all) value.textContent = frequency === null ? '' : textAt(frequency);
      if (frequency === null) return '';
      return `${figureText(frequency, 'Hz')}: ${all.map(({ name, textAt }) => `${name} ${textAt(frequency)}`).join('; ')}`;
    },
  };
}
