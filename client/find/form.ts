import type { TypedHolds } from '../../server/src/lsp/values-protocol';
import { typedHold } from '../../server/src/sheet/find/hold-text';
import {
  type MoveName,
  moveNames,
  moveWords,
  usualHolds,
  usualMoves,
} from '../../server/src/sheet/find/wish';
import { element } from '../page/element';
import type { FindChoices } from './messages';

const holdFields: readonly { readonly hold: keyof TypedHolds; readonly title: string }[] = [
  { hold: 'toneLeft', title: 'Taken off every motor tone, at least (dB)' },
  { hold: 'phaseMargin', title: 'Phase margin at every operating point, at least (deg)' },
  { hold: 'gainMargin', title: 'Gain margin at every operating point, at least (times)' },
  { hold: 'minutes', title: 'Hovering until it is time to land, at least (min)' },
];

/** What to look for. */
export interface FindForm {
  readonly element: HTMLElement;
  chosen(): FindChoices;
  showFaults(faults: readonly { readonly hold: keyof TypedHolds; readonly why: string }[]): void;
  setWorking(isWorking: boolean): void;
}

export function findForm(
  packs: readonly string[],
  on: { readonly find: () => void; readonly stop: () => void },
): FindForm {
  const packBoxes = packs.map((pack) => box(pack, pack, true));
  const moveBoxes = moveNames.map((name) =>
    box(name, `${name}: ${moveWords[name]}`, usualMoves.includes(name)),
  );
  const fields = holdFields.map((field) => ({ ...field, ...fieldOf(field) }));
  const start = element('button', { type: 'submit', class: 'main' }, 'Find');
  const stop = element('button', { type: 'button', onclick: on.stop }, 'Stop');
  stop.disabled = true;
  const form = element(
    'form',
    {
      onsubmit: (event) => {
        event.preventDefault();
        on.find();
      },
    },
    packs.length === 0 ? null : group('For which packs', ...packBoxes.map(({ row }) => row)),
    group('What must hold (any: not asked for)', ...fields.map(({ row }) => row)),
    group('What may move', ...moveBoxes.map(({ row }) => row)),
    element('div', { class: 'ways' }, start, stop),
  );
  return {
    element: form,
    chosen: () => ({
      packs: checked(packBoxes),
      moves: moveNames.filter((name) => checked(moveBoxes).includes(name)) satisfies readonly MoveName[],
      holds: {
        toneLeft: typed(fields, 'toneLeft'),
        phaseMargin: typed(fields, 'phaseMargin'),
        gainMargin: typed(fields, 'gainMargin'),
        minutes: typed(fields, 'minutes'),
      },
    }),
    showFaults: (faults) => {
      for (const { hold, input, fault, title } of fields) {
        const why = faults.find((one) => one.hold === hold)?.why;
        input.setAttribute('aria-invalid', String(why !== undefined));
        fault.textContent = why === undefined ? '' : `${title} ${why}.`;
      }
      fields.find(({ hold }) => faults.some((one) => one.hold === hold))?.input.focus();
    },
    setWorking: (isWorking) => {
      start.disabled = isWorking;
      stop.disabled = !isWorking;
    },
  };
}

interface Box {
  readonly name: string;
  readonly input: HTMLInputElement;
  readonly row: HTMLElement;
}

function box(name: string, text: string, isOn: boolean): Box {
  const input = element('input', { type: 'checkbox', value: name, checked: isOn });
  return { name, input, row: element('label', { class: 'box' }, input, text) };
}

function fieldOf({ hold, title }: (typeof holdFields)[number]) {
  const fault = element('span', { class: 'refusal', id: `fault-${hold}` });
  const input = element('input', {
    type: 'text',
    class: 'number',
    value: typedHold(hold, usualHolds[hold]),
    id: `hold-${hold}`,
    'aria-describedby': `fault-${hold}`,
  });
  const row = element(
    'div',
    { class: 'field' },
    element('label', { for: `hold-${hold}` }, title),
    input,
    fault,
  );
  return { input, fault, row };
}

function group(title: string, ...rows: readonly HTMLElement[]): HTMLElement {
  return element('fieldset', {}, element('legend', {}, title), ...rows);
}

function checked(boxes: readonly Box[]): readonly string[] {
  return boxes.filter(({ input }) => input.checked).map(({ name }) => name);
}

function typed(
  fields: readonly { readonly hold: keyof TypedHolds; readonly input: HTMLInputElement }[],
  hold: keyof TypedHolds,
): string {
  return fields.find((one) => one.hold === hold)?.input.value ?? '';
}
