import type { CraftView } from '../../craft/view';

/** Whether the craft has something; null where that can't be told. `why` follows "it has none". */
export interface Fitted {
  readonly has: boolean | null;
  readonly why: string;
}

export function hasPosition(view: CraftView): Fitted {
  return { has: hasLine(view, 'position.port'), why: ': position.port is not set' };
}

/** Whether a line sets it; null where the board may hold it in a setting whose meaning nobody has said. */
function hasLine(view: CraftView, path: string): boolean | null {
  if (view.isSet(path)) return true;
  return view.mayBeUnsaid(path) ? null : false;
}

function hasBarometer(view: CraftView): Fitted {
  if (view.isSet('board.barometer')) {
    return { has: view.flag('board.barometer'), why: ': board.barometer is off' };
  }
  const { sensors } = view.hardware;
  if (sensors === undefined) return { has: null, why: '' };
  return { has: sensors.includes('barometer'), why: `: ${view.boardTitle} has no barometer` };
}

/** Height from the air's pressure or from satellites. */
export function hasHeight(view: CraftView): Fitted {
  const position = hasPosition(view);
  if (position.has) return { has: true, why: '' };
  const barometer = hasBarometer(view);
  if (barometer.has !== false) return { has: barometer.has, why: '' };
  if (position.has === null) return { has: null, why: '' };
  return { has: false, why: `${barometer.why} and position.port is not set` };
}

/** A way to measure the pack's current. */
export function hasCurrent(view: CraftView): Fitted {
  if (view.isSet('power.current-measure')) {
    const way = view.word('power.current-measure');
    return { has: way === null ? null : way !== 'off', why: ': power.current-measure is off' };
  }
  if (view.hardware.packInput?.currentShunt !== false || view.mayBeUnsaid('power.current-measure'))
    return { has: null, why: '' };
  const why = `: ${view.boardTitle} has no input for it, and power.current-measure is not set`;
  return { has: false, why };
}

/** Temperatures that the speed controllers report over a line of their own. */
export function hasEscReport(view: CraftView): Fitted {
  return { has: hasLine(view, 'esc.telemetry-port'), why: ': esc.telemetry-port is not set' };
}
