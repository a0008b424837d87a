import { fileName } from '../../../craft/include-path';
import { groupsLikeCraft } from '../../../craft/read-as';
import type { CraftView } from '../../../craft/view';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFix } from '../../rule';

/** What looks like a craft and is read as a part says so, unless a script that includes it is at hand. */
const readAsPart: CodeRule = {
  ids: ['safe/read-as-part'],
  scope: 'craft',
  check(view, report) {
    const said = groupsLikeCraft(view.craft);
    if (said.length === 0 || view.craft.isIncluded()) return;
    report({
      id: 'safe/read-as-part',
      at: 'craft.name',
      values: { said: listed(said) },
      fixes: [craftWritten(view)],
    });
  },
};

/** What only a whole craft has, with the words for it. */
const parts: readonly (readonly [group: string, words: string])[] = [
  ['pack', 'packs'],
  ['motor', 'motors'],
  ['prop', 'propellers'],
  ['receiver', 'a receiver'],
];

/** `[craft]` was forgotten: the script is held to all that a craft needs, and says why. */
const craftUnsaid: CodeRule = {
  ids: ['safe/craft-unsaid'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    if (view.craft.hasGroup('craft')) return;
    const said = parts.flatMap(([group, words]) => (view.craft.hasGroup(group) ? [words] : []));
    report({
      id: 'safe/craft-unsaid',
      at: 'craft.name',
      values: { said: said.join(', ') },
      fixes: [craftWritten(view)],
    });
  },
};

function craftWritten(view: CraftView): RuleFix {
  const name = nameFrom(view);
  return { title: 'Write [craft] with the name {to}', set: 'craft.name', to: `"${name}"` };
}

/** The file's name as a craft's: without its ending, and with nothing that a text can't hold as it is. */
function nameFrom({ craft, catalog }: CraftView): string {
  const parameter = catalog.parameter('craft.name')?.parameter;
  const longest = parameter?.kind === 'text' ? parameter.longest : 1;
  const name = fileName(craft.root.uri)
    .replace(/\.craft$/, '')
    .replace(/[^\p{L}\p{N} -]/gu, ' ')
    .trim();
  return [...(name === '' ? 'My craft' : name)].slice(0, longest).join('').trim();
}

export const readAsRules: readonly CodeRule[] = [readAsPart, craftUnsaid];
