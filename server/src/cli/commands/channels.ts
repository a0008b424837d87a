import { CraftView } from '../../craft/view';
import {
  apartText,
  type ChannelPlan,
  type ChannelWish,
  channelPlan,
  channelText,
  channelWishOf,
  mostPilotsPlanned,
  sendsAt,
} from '../../sheet/find/channels';
import { capitalised } from '../../units/capitals';
import { sameDimension } from '../../units/dimension';
import { parseQuantity } from '../../units/quantity';
import { unitOf } from '../../units/unit';
import { command, jsonOption, nameOption } from '../command';
import { currentFolder } from '../files/here';
import { oneScript } from '../files/one-script';
import { exitCodes, UsageError } from '../outcome';
import { jsonText, visible } from '../report/visible';
import { wrapped } from '../report/wrapped';
import { painted, type Terminal } from '../terminal';

/** `propsoff channels`: the video channels of everybody who flies together. */
export const channelsCommand = command({
  name: 'channels',
  summary: 'video channels for everybody who flies together',
  usage: ['--pilots <number> [<script | ->] [options]'],
  about: [
    'The plan with the fewest products of third order on channels in use, of those the one with the widest spacing, inside what the rules listed for the region open. With a script its region, licence and plans hold.',
  ],
  options: {
    pilots: { type: 'string', value: 'number', about: `how many fly together: 1 to ${mostPilotsPlanned}` },
    region: { type: 'string', value: 'name', about: 'whose rules hold; without it the script’s' },
    licence: { type: 'string', value: 'licence', words: ['none', 'amateur'], about: 'none or amateur' },
    plan: {
      type: 'string',
      multiple: true,
      value: 'band',
      about: 'a channel plan that all transmitters know; said again for more; without it all',
    },
    keep: {
      type: 'string',
      multiple: true,
      value: 'frequency',
      about: 'somebody who stays at a frequency, as "5769 MHz"; said again for more',
    },
    'keep-others': { type: 'boolean', about: 'the pilots that the script names stay where they are' },
    name: nameOption,
    json: jsonOption('channels', 'one JSON object'),
  },
  examples: [
    ['propsoff channels --pilots 5 my.craft', 'which channels for five of us'],
    ['propsoff channels --pilots 4 --region european-union --plan r --plan f', 'without a script'],
    ['propsoff channels --pilots 3 --keep-others my.craft', 'beside those who stay'],
  ],
  exit: { fine: 'there is a plan', findings: 'so many don’t fit' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (positionals.length > 1) throw new UsageError('channels takes one script at most');
    const pilots = Number(values.pilots ?? '');
    if (!Number.isInteger(pilots) || pilots < 1 || pilots > mostPilotsPlanned)
      throw new UsageError(
        values.pilots === undefined
          ? 'channels takes --pilots: how many fly together'
          : `--pilots takes 1 to ${mostPilotsPlanned}, not "${values.pilots}"`,
      );
    const script =
      path === undefined
        ? null
        : await oneScript({ command: 'channels', path, name: values.name }, undefined, terminal);
    const { catalog } = script?.craft ?? (await currentFolder()).additions;
    const view = script === null ? null : new CraftView(script.craft, script.view.pack);
    const said = view === null ? null : channelWishOf(view, pilots, values['keep-others'] === true);
    const region = values.region ?? said?.region ?? '';
    if (catalog.region(region) === undefined)
      throw new UsageError(
        `${region === '' ? 'whose rules hold is not known: --region' : `there is no region "${region}"; --region`} takes ${[...catalog.regions.keys()].join(', ')}`,
      );
    const licence = values.licence ?? said?.licence ?? 'none';
    if (licence !== 'none' && licence !== 'amateur')
      throw new UsageError(`--licence takes none or amateur, not "${licence}"`);
    const unknown = values.plan?.find((name) => catalog.videoBand(name) === undefined);
    if (unknown !== undefined)
      throw new UsageError(
        `there is no channel plan "${unknown}"; --plan takes ${[...catalog.videoBands.keys()].join(', ')}`,
      );
    const keep = [...(said?.keep ?? []), ...(values.keep ?? []).map(frequencyOf)];
    if (keep.length > pilots)
      throw new UsageError(`${keep.length} stay where they are, and --pilots says ${pilots} with them`);
    const wish: ChannelWish = {
      pilots,
      region,
      licence,
      plans: values.plan ?? said?.plans ?? null,
      power: null,
      keep,
    };
    const plan = planned(channelPlan(catalog, wish, view === null ? null : sendsAt(view)));
    await terminal.out(values.json === true ? jsonText({ version: 1, ...plan }) : planText(plan, terminal));
    return plan.channels.length === 0 ? exitCodes.findings : exitCodes.fine;
  },
});

function frequencyOf(text: string): number {
  const found = parseQuantity(text);
  if (found === undefined || found.value <= 0 || !sameDimension(found.dimension, unitOf('Hz').dimension))
    throw new UsageError(`--keep takes a frequency such as "5769 MHz", not "${text}"`);
  return found.value;
}

function planned(work: Generator<void, ChannelPlan>): ChannelPlan {
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

function planText(plan: ChannelPlan, terminal: Terminal): string {
  const { channels, answer, caution, pilots } = plan;
  const apart = channels.length === 0 ? answer : sentence(apartText(plan));
  const lines = [
    painted(pilots === 1 ? 'A channel for one pilot' : `Channels for ${pilots} pilots`, 'bold', terminal),
    ...channels.map((one) => {
      const others = one.names.slice(1).map(({ band, channel }) => `${channel} of ${band}`);
      const also = others.length === 0 ? '' : ` (also ${others.join(', ')})`;
      return visible(`  ${channelText(one)}${also}${one.isKept ? ', as it is' : ''}`);
    }),
    ...(apart === null ? [] : [wrapped(visible(apart), terminal.width)]),
    wrapped(caution, terminal.width),
  ];
  return `${lines.join('\n')}\n`;
}

function sentence(words: string | null): string | null {
  return words === null ? null : `${capitalised(words)}.`;
}
