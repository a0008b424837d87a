import type { CraftView } from '../craft/view';
import { recordingTime } from '../physics/record';
import { parseQuantity } from '../units/quantity';
import type { FigureSource } from './figure';
import { fine } from './why';

/** How long the log lasts. */
export const recordFigures: readonly FigureSource[] = [
  {
    id: 'log-minutes',
    title: 'Log until the memory is full',
    unit: 'min',
    from: ['record.rate', 'record.fields', 'record.size', 'record.medium'],
    hint: { at: ['record.rate'], words: (figure) => `${figure} of log` },
    concerns: ({ craft }) => craft.hasGroup('record'),
    compute(view) {
      const rate = view.quantity('record.rate');
      const fields = view.words('record.fields');
      const size = memorySize(view);
      if (rate === null || rate <= 0 || fields === null || fields.length === 0 || size === null) return null;
      const bytes = lineHead + fields.reduce((sum, field) => sum + (fieldBytes.get(field) ?? 0), 0);
      const likely = recordingTime(size, rate, bytes) / 60;
      const why = `${fine(size, 'MB')} / (${fine(rate, 'Hz')} × ${bytes} B), so many bytes a line`;
      return { likely, low: likely / 1.5, high: likely * 2, why, assumed: lineForm };
    },
  },
];

const lineForm = ['two bytes for each figure and four for the time; boards that pack their logs last longer'];

/** Bytes: the time of a line. */
const lineHead = 4;

/** Bytes of each kind of figure, at two a figure and four motors. */
const fieldBytes = new Map([
  ['turning-rates', 12],
  ['raw-rates', 6],
  ['loop-parts', 24],
  ['motor-outputs', 8],
  ['motor-speeds', 8],
  ['sticks', 8],
  ['pack-state', 6],
  ['link-state', 4],
  ['tilt-and-shock', 12],
  ['whereabouts', 16],
]);

/** Bytes that the script names, else those of the board's own memory where the log goes there. */
function memorySize(view: CraftView): number | null {
  if (view.isSet('record.size')) return view.quantity('record.size');
  const { log } = view.hardware;
  if (log == null || view.word('record.medium') !== log.medium) return null;
  return parseQuantity(log.size ?? '')?.value ?? null;
}
