import type { ControlPath } from '../../physics/loop';
import { axisCurve } from '../../physics/loop-curve';
import { marginsOf, nearly, stabilityOf } from '../../physics/stability';
import type { PackTuning } from './pack-tuning';
import type { Setup } from './search';
import type { Holds } from './wish';

/** What falls short of its margins, and where. */
export interface Narrowest {
  readonly pack: string | null;
  readonly place: string;
  /** deg; 0 for a loop that swings. */
  readonly phase: number;
  /** Times; null: no gain makes it swing. */
  readonly gain: number | null;
}

/** The loops of all axes at all operating points with all packs, and how near to swinging a setup brings them. */
export class LoopsNear {
  /** Those that were too near to swinging last are looked at first. */
  private readonly loops: { readonly pack: number; readonly axis: number }[];

  constructor(private readonly packs: readonly PackTuning[]) {
    this.loops = packs.flatMap(({ axes }, pack) => axes.map((_, axis) => ({ pack, axis })));
  }

  /** The first loop that comes nearer to swinging than it may; null where all keep clear of it. */
  tooNear(setup: Setup, { phaseMargin, gainMargin }: Holds): Narrowest | null {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    for (const [at, loop] of this.loops.entries()) {
      const found = this.nearnessOf(setup, loop, paths);
      if (found === null || (found.phase > 0 && isClear(found, phaseMargin ?? 0, gainMargin ?? 1))) continue;
      this.loops.splice(at, 1);
      this.loops.unshift(loop);
      return found;
    }
    return null;
  }

  /** The least phase and the least gain that are left, wherever each is. */
  narrowest(setup: Setup): { readonly phase: Narrowest | null; readonly gain: Narrowest | null } {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    const all = this.loops.flatMap((loop) => this.nearnessOf(setup, loop, paths) ?? []);
    const byGain = all.filter(({ gain }) => gain !== null);
    return {
      phase: [...all].sort((one, other) => one.phase - other.phase)[0] ?? null,
      gain: byGain.sort((one, other) => (one.gain ?? 0) - (other.gain ?? 0))[0] ?? null,
    };
  }

  /** The least margins with each pack. */
  leastMargins(setup: Setup): ReadonlyMap<string | null, { phase: number; gain: number | null }> {
    const paths = this.packs.map(() => new Map<number, ControlPath>());
    const least = new Map<string | null, { phase: number; gain: number | null }>();
    for (const loop of this.loops) {
      const found = this.nearnessOf(setup, loop, paths);
      if (found === null) continue;
      const known = least.get(found.pack) ?? { phase: found.phase, gain: found.gain };
      known.phase = Math.min(known.phase, found.phase);
      if (found.gain !== null) known.gain = Math.min(known.gain ?? found.gain, found.gain);
      least.set(found.pack, known);
    }
    return least;
  }

  private nearnessOf(
    setup: Setup,
    loop: { readonly pack: number; readonly axis: number },
    paths: readonly Map<number, ControlPath>[],
  ): Narrowest | null {
    const tuning = this.packs[loop.pack];
    const placed = tuning?.axes[loop.axis];
    const known = paths[loop.pack];
    if (tuning === undefined || placed === undefined || known === undefined || tuning.band === null)
      return null;
    const path = known.get(placed.speed) ?? tuning.pathAt(placed, setup);
    known.set(placed.speed, path);
    const { axis, place } = placed.placed;
    const gains = tuning.gainsOf(placed, setup);
    const stability = stabilityOf(axisCurve({ ...axis, path, gains }, tuning.band), nearly);
    const { pack } = tuning.view;
    if (stability.verdict === 'swings') return { pack, place, phase: 0, gain: 1 };
    const margins = marginsOf(stability);
    if (margins === null) return null;
    return { pack, place, phase: (180 / Math.PI) * margins.phaseMargin, gain: margins.gainMargin };
  }
}

function isClear({ phase, gain }: Narrowest, phaseMargin: number, gainMargin: number): boolean {
  return phase >= phaseMargin && (gain === null || gain >= gainMargin);
}
