import { element } from '../../page/element';

export interface Readable {
  readonly id: string;
  /** What is drawn, for a screen reader. */
  readonly label: string;
  /** How many places can be read. */
  readonly count: number;
  /** Shows what is read at a place (null: nothing is read) and gives it in words. */
  readonly describe: (index: number | null) => string;
  /** Between pixels and places. */
  readonly indexAt: (x: number, width: number) => number;
  readonly placeOf: (index: number, width: number) => number;
  readonly drawn: HTMLElement;
}

/** Where each drawing was read last, so that it is still read there when it is drawn again. */
const readAt = new Map<string, number>();

/** A drawing that is read like a ruler: by the pointer, or by the arrow keys as a slider is moved. */
export function readable({ id, label, count, describe, indexAt, placeOf, drawn }: Readable): HTMLElement {
  const cursor = element('div', { class: 'cursor', hidden: true });
  const frame = element(
    'div',
    {
      class: 'readable',
      tabindex: '0',
      role: 'slider',
      'aria-label': label,
      'aria-valuemin': '0',
      'aria-valuemax': String(count - 1),
      onpointermove: (event) => read(indexOf(event as PointerEvent)),
      onpointerleave: () => read(null),
      onblur: () => read(null),
      onkeydown: (event) => move(event as KeyboardEvent),
    },
    drawn,
    cursor,
  );
  const middle = Math.floor(count / 2);

  function indexOf(event: PointerEvent): number {
    const { left, width } = frame.getBoundingClientRect();
    return indexAt(event.clientX - left, width);
  }

  function read(index: number | null): void {
    const words = describe(index);
    cursor.hidden = index === null;
    if (index === null) {
      readAt.delete(id);
      return;
    }
    readAt.set(id, index);
    cursor.style.left = `${placeOf(index, frame.getBoundingClientRect().width)}px`;
    frame.setAttribute('aria-valuenow', String(index));
    frame.setAttribute('aria-valuetext', words);
  }

  function move(event: KeyboardEvent): void {
    const at = readAt.get(id) ?? middle;
    const step = Math.max(1, Math.round(count / 50));
    const to: Readonly<Record<string, number | null>> = {
      ArrowLeft: at - step,
      ArrowRight: at + step,
      Home: 0,
      End: count - 1,
      Escape: null,
    };
    const wanted = to[event.key];
    if (wanted === undefined) return;
    event.preventDefault();
    read(wanted === null ? null : Math.min(count - 1, Math.max(0, wanted)));
  }

  frame.setAttribute('aria-valuenow', String(middle));
  frame.setAttribute('aria-valuetext', 'Arrow keys read values');
  return frame;
}
