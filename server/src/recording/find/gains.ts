import { fileName } from '../../craft/include-path';
import type { CraftView } from '../../craft/view';
import { fromBase, unitOf } from '../../units/unit';
import type { MeasuredSpan, RecordingReport } from '../report';
import type { FoundInFlight } from './found';
import { likelyText, measuredText } from './measured-text';

/** So many half spans off, a gain is another one: spans are of nine in ten, and of flights that others made. */
const other = 2.5;

/** A gain that works otherwise than the script says, and gains that are only known as the board's own numbers. */
export function gainsFound({ gains }: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  const told = (gains.told ?? []).flatMap(({ axis, term, gain }) =>
    term !== 'proportional' || gain.told === null ? [] : [{ axis, gain: gain.told }],
  );
  const differing = told.flatMap(({ axis, gain }): readonly FoundInFlight[] => {
    const path = `control.${axis}.proportional`;
    const base = view.isSet(path) ? view.quantity(path) : null;
    if (base === null || !isOther(gain, fromBase(base, unitOf(gain.unit)))) return [];
    const values = { axis, measured: measuredText(gain), written: view.shown(path) };
    return [{ id: 'gains/differ', values, proposals: [] }];
  });
  const text = view.craft.boardText();
  const open = told.filter(({ axis }) => !view.isSet(`control.${axis}.proportional`));
  if (text === undefined || open.length === 0) return differing;
  const values = {
    gains: open.map(({ axis, gain }) => `${likelyText(gain)} about ${axis}`).join(', '),
    text: fileName(text.uri),
  };
  return [...differing, { id: 'gains/own-numbers', values, proposals: [] }];
}

function isOther({ likely, low, high }: MeasuredSpan, value: number): boolean {
  return Math.abs(value - likely) > (other * (high - low)) / 2;
}
