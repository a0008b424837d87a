import type { Link } from '../catalog/model/hardware';
import type { CraftView } from '../craft/view';
import { bitsPerByte, frameTime } from '../physics/serial';
import { parseQuantity } from '../units/quantity';
import type { FigureSource } from './figure';

/** How often the sticks come and how long a frame of them takes on the line. */
export const receiverFigures: readonly FigureSource[] = [
  {
    id: 'receiver-frame-interval',
    title: 'Time between control frames',
    unit: 'ms',
    from: ['receiver.frame-interval', 'receiver.link'],
    compute(view) {
      const set = view.quantityOr('receiver.frame-interval', null);
      if (set !== null) return { likely: set * 1e3, why: 'receiver.frame-interval, as the script sets it' };
      const link = linkOf(view);
      if (link === undefined || view.isSet('receiver.frame-interval')) return null;
      const usual = parseQuantity(link.frameInterval)?.value;
      if (usual === undefined) return null;
      const assumed = [`${link.title} at its usual ${link.frameInterval} a frame`];
      return { likely: usual * 1e3, why: `the usual interval of ${link.title}`, assumed };
    },
  },
  {
    id: 'receiver-frame-time',
    title: 'Time of a control frame on the line',
    unit: 'ms',
    from: ['receiver.link'],
    compute(view) {
      const link = linkOf(view);
      const speed = link && parseQuantity(link.baud)?.value;
      if (link === undefined || speed === undefined) return null;
      const why = `${link.frameBytes} bytes × ${bitsPerByte(link)} bits / ${link.baud}`;
      return { likely: frameTime(link.frameBytes, link, speed) * 1e3, why };
    },
  },
];

export function linkOf(view: CraftView): Link | undefined {
  return view.catalog.link(view.word('receiver.link') ?? '');
}
