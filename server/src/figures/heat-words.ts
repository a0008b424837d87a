import type { CraftView } from '../craft/view';
import type { Figure } from './figure';
import { bellReadings } from './hot-motors';
import { figureOf } from './index';
import { noiseSentences, noiseWords } from './noise-words';

/** What makes the motors warm with the pack in view, and what would make it less: steady turning, then noise. */
export function warmingSentences(view: CraftView): readonly string[] {
  const losses = [...heatSentences(view), ...notYetSentences(view)];
  const { words, through } = noiseWords(view);
  if (through === null) return losses;
  return [...losses, 'What shakes the gyro heats them beside that.', ...noiseSentences(words)];
}

/** How to make the temperatures known that are not. */
function notYetSentences(view: CraftView): readonly string[] {
  const { pack } = view;
  if (bellReadings(view).length === 0)
    return [
      `How warm they get is not known yet: only a flight tells how well the air cools them. Note flight.<name>.motor-temperature, read off the warmest bell soon after landing, of a flight${pack === null ? '' : ` with pack ${pack}`}.`,
    ];
  return view.isSet('craft.longest-full-throttle') || view.isSet('craft.flying')
    ? []
    : ['How hot full throttle makes the windings is told once craft.longest-full-throttle is written.'];
}

/** Where the watts of a motor's heat go, in sentences, with what makes them fewer; none where they are not known. */
export function heatSentences(view: CraftView): readonly string[] {
  const hover = splitOf(view, 'hover');
  const full = splitOf(view, 'full');
  return [
    ...(hover === null ? [] : [`In the hover a motor turns ${partsText(view, hover)}. ${cureFor(hover)}`]),
    ...(full === null
      ? []
      : [
          `At full throttle with a full pack it turns ${partsText(view, full)}. The winding’s part goes with the square of the current: a lower motor.output-limit, smaller or flatter propellers, or fewer cells make it less.`,
        ]),
  ];
}

/** W */
interface Split {
  readonly copper: number;
  readonly iron: number;
}

function splitOf(view: CraftView, place: 'hover' | 'full'): Split | null {
  const [copper, iron] = [`${place}-copper-loss`, `${place}-iron-loss`].map((id) => figureOf(view, id));
  return copper == null || iron == null ? null : { copper: wattsOf(copper), iron: wattsOf(iron) };
}

function wattsOf({ likely }: Figure): number {
  return likely;
}

function partsText(view: CraftView, { copper, iron }: Split): string {
  const share = view.short(copper / (copper + iron), '%');
  return `about ${view.short(copper + iron, 'W')} into heat, ${share} of it in the winding and the rest in iron and bearings`;
}

function cureFor({ copper, iron }: Split): string {
  return copper > iron
    ? 'Less weight, propellers with less drag, or larger motors make it less.'
    : 'Propellers that carry the craft at fewer turns, or motors that draw less without a load, make it less.';
}
