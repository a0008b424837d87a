const letters = 'etaoinshrdlcumwfgypbvk';

/**
 * One slip of the finger at each place of a name in turn: a letter lost, added, changed, or swapped with
 * the next. Free names of the pilot's own are left as they are: a slip in one makes another good name.
 */
export function typosOf(path: string, seed: number): readonly string[] {
  const own = path.indexOf('sprint');
  const inOwn = (at: number) => own >= 0 && at >= own - 1 && at <= own + 'sprint'.length;
  return [...[...path.slice(1)].keys()]
    .filter((at) => !inOwn(at))
    .map((at) => slipAt(path, at, seed))
    .filter((typo) => typo !== path);
}

function slipAt(path: string, at: number, seed: number): string {
  const letter = letters[(seed * 7 + at * 5) % letters.length] ?? 'e';
  const [before, here, next, after] = [
    path.slice(0, at),
    path[at] ?? '',
    path[at + 1] ?? '',
    path.slice(at + 2),
  ];
  switch ((seed + at) % 4) {
    case 0:
      return before + next + after;
    case 1:
      return before + letter + here + next + after;
    case 2:
      return before + letter + next + after;
    default:
      return before + next + here + after;
  }
}

/** A section that is open, and a key that belongs to a bakery, a brewery, a printer's or a farm. */
export const foreignKeys: readonly (readonly [string, string])[] = [
  ['', 'oven.rack-height'],
  ['', 'dough.proving-time'],
  ['', 'kiln.ramp'],
  ['', 'loom.thread-count'],
  ['', 'press.ink-density'],
  ['', 'boiler.relief-valve'],
  ['', 'tractor.furrow-depth'],
  ['', 'server.listen-address'],
  ['', 'database.pool-size'],
  ['', 'logging.verbosity'],
  ['', 'editor.tab-width'],
  ['', 'piano.hammer-weight'],
  ['', 'ledger.opening-balance'],
  ['', 'garden.sprinkler.zone'],
  ['', 'ship.ballast.trim'],
  ['', 'clock.escapement.beat'],
  ['', 'saddle'],
  ['', 'invoice'],
  ['', 'thermostat'],
  ['', 'spindle.feed'],
  ['gyro', 'crumb-tray'],
  ['gyro', 'brew-strength'],
  ['gyro.filter.1', 'grind-size'],
  ['gyro.filter.1', 'ribbon'],
  ['motor', 'cylinder-head'],
  ['motor', 'gearbox-oil'],
  ['motor', 'sprocket'],
  ['esc', 'keyboard-layout'],
  ['prop', 'stage-curtain'],
  ['prop', 'costume'],
  ['pack.sprint', 'wolf-count'],
  ['pack.sprint', 'bubble-wrap'],
  ['pack.sprint', 'jockey'],
  ['power', 'turbine.blade-root'],
  ['power', 'grid-tariff'],
  ['receiver', 'court-appointed'],
  ['receiver', 'tuner-knob'],
  ['switch.arm', 'elbow'],
  ['switch.arm', 'ip-address'],
  ['stick', 'drum-brand'],
  ['control.roll', 'butter'],
  ['control.roll', 'flour-weight'],
  ['control', 'joy-division'],
  ['arming', 'quartermaster'],
  ['video', 'subtitle-font'],
  ['video', 'codec-profile'],
  ['craft', 'yarn-gauge'],
  ['craft', 'glue-type'],
  ['board', 'chairman'],
  ['rules', 'offside'],
];
