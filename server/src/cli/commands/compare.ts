import type { Craft } from '../../craft/craft';
import { type CheckedSide, type Comparison, compare } from '../../sheet/compare/compare';
import { command, jsonOption, nameOption } from '../command';
import { type OneScript, oneFile, openedScript, usable } from '../files/one-script';
import type { ScriptFile } from '../files/scripts';
import { asksVariant, comparedVariant, variantOptions } from '../files/variant';
import { exitCodes, UsageError } from '../outcome';
import { comparisonText } from '../report/compare-text';
import { jsonText } from '../report/visible';

/** `propsoff compare`: what differs between two scripts, or two packs of one, and what each difference does. */
export const compareCommand = command({
  name: 'compare',
  summary: 'what differs between two scripts or two packs, and what each difference does',
  usage: [
    '<script | -> <script | -> [--pack <name>]... [options]',
    '<script | -> --pack <one> --pack <other> [options]',
    '<script | -> (--without payload | --cold | --if <setting>)... [options]',
  ],
  about: [
    'The settings that differ, in the order of the job, and the three things that matter most of what they come to; with --all the rest, and what each change does by itself.',
  ],
  options: {
    pack: {
      type: 'string',
      multiple: true,
      value: 'name',
      about: 'the pack to look at; said twice, one for each side',
    },
    name: nameOption,
    ...variantOptions,
    all: { type: 'boolean', about: 'also all other figures, and what each change does alone' },
    json: jsonOption('compare', 'one JSON object'),
  },
  examples: [
    ['propsoff compare old.craft my.craft', 'two scripts'],
    ['propsoff compare my.craft --pack sprint --pack cruise', 'two packs of one script'],
    ['propsoff compare my.craft --without payload', 'what the camera costs'],
    ['git show HEAD~1:my.craft | propsoff compare - my.craft', 'an earlier revision, through a pipe'],
  ],
  exit: { fine: 'the comparison was made, whatever differs', findings: null },
  run: async ({ values, positionals }, terminal) => {
    const packs = values.pack ?? [];
    const [first, second] = positionals;
    if (first === undefined || positionals.length > 2 || packs.length > 2)
      throw new UsageError('compare takes two scripts, or one script and two packs');
    const isVariant = asksVariant(values);
    if (isVariant && (second !== undefined || packs.length > 1))
      throw new UsageError('--without, --cold and --if take one script and one pack');
    if (second === undefined && packs.length < 2 && !isVariant)
      throw new UsageError('compare takes a second script, or two packs: --pack <one> --pack <other>');
    if (first === '-' && second === '-') throw new UsageError('only one of the two can be standard input');
    if (values.name !== undefined && !positionals.includes('-'))
      throw new UsageError('--name names standard input: add - to the paths');
    const around = await usable();
    const file = (path: string) =>
      oneFile({ command: 'compare', path, name: path === '-' ? values.name : undefined }, terminal);
    const one = await file(first);
    const other = second === undefined ? one : await file(second);
    const before = await openedScript(beside(one, other), packs[0], around);
    const tell = async (result: Comparison) =>
      terminal.out(
        values.json === true
          ? jsonText({ version: 1, ...result })
          : comparisonText(result, terminal, { isWhole: values.all === true }),
      );
    if (isVariant) {
      await tell(comparedVariant(before, nameOf(one), values));
      return exitCodes.fine;
    }
    const after = await openedScript(beside(other, one), packs[1] ?? packs[0], around);
    // That there is one is all that is told of them without --all.
    const mostAlone = values.all === true || values.json === true ? undefined : 1;
    const check = (craft: Craft) => before.workspace.check(craft);
    const result = compare(sideOf(before, one), sideOf(after, other), check, mostAlone);
    await tell(result);
    return exitCodes.fine;
  },
});

/** Standard input without a name stands where the other script does, so that both include the same files. */
function beside(script: ScriptFile, other: ScriptFile): ScriptFile {
  return script.path === '-' ? { ...script, uri: other.uri } : script;
}

function sideOf({ craft, view, findings }: OneScript, file: ScriptFile): CheckedSide {
  return { craft, pack: view.pack, findings, file: nameOf(file) };
}

function nameOf({ path }: ScriptFile): string {
  return path === '-' ? 'standard input' : path;
}
