import type { Outcome } from '../../board/learn/confirm';
import type { Conversion } from '../../board/learn/convert/taken';
import type { Sureness } from '../../board/learn/propose/proposal';
import type { Learned } from '../../features/board/learning';
import { withoutTails } from '../../units/number-text';

/** For the person who confirms: what was taken and what it comes to, then what may stand for what. */
export function learnedText(
  { summary, rows }: Learned,
  outcomes: readonly Outcome[],
  portKeys: ReadonlySet<string>,
): readonly string[] {
  const said = new Set(outcomes.filter(({ is }) => is !== 'left').map(({ key }) => key));
  const open = rows.filter(({ key }) => !said.has(key) && !portKeys.has(key));
  return [
    summary,
    ...outcomes.flatMap(outcomeText),
    ...open.map(({ key, value, sureness, proposals }) => {
      const [first, ...others] = proposals
        .slice(0, 3)
        .map(({ parameter, meaning }) => `${parameter} (${meaning})`);
      if (sureness === null || first === undefined) return `${key} ${value}: nothing near`;
      const joint = sureness === 'possible' ? ', ' : '; else ';
      const rest = others.length === 0 ? '' : `${joint}${others.join(', ')}`;
      return `${key} ${value}: ${howSure[sureness]} ${first}${rest}`;
    }),
    'Say --confirm "setting=parameter" for each that is right, with how it counts where that is asked: unit ms, scale 0.1; --sure takes what is surely meant. Nothing is taken by itself.',
  ];
}

const howSure: Readonly<Record<Sureness, string>> = {
  sure: 'surely',
  likely: 'likely',
  possible: 'perhaps',
};

function outcomeText({ key, said, is, why, conversions }: Outcome): readonly string[] {
  const { means } = said;
  if (is === 'left') return [`not taken: ${key} as ${means}: ${why}`, ...conversions.flatMap(waysText)];
  if (is === 'taken')
    return conversions.map((conversion) => `taken: ${key}: ${previewText(conversion)} (${means}; ${why})`);
  return [`by its role: ${key} for ${means}, without a figure: ${why}`, ...conversions.flatMap(waysText)];
}

/** `225 is 22.5 Hz, and usual is 8 Hz to 200 Hz`. */
function previewText({ preview: { token, quantity, usual, lies } }: Pick<Conversion, 'preview'>): string {
  const is = `${token} is ${withoutTails(quantity ?? 'nothing known')}`;
  if (usual === null || lies === null) return is;
  return lies === 'usual' ? `${is}, which is usual` : `${is}, and usual is ${usual}`;
}

/** How it may be counted, as the command line takes it. */
function waysText({ meant, candidates }: Conversion): readonly string[] {
  if (meant !== null) return [];
  return candidates.map(({ meant: { counts = {} }, title, preview }) => {
    const { unit, scale } = counts;
    const said = [
      ...(unit === undefined ? [] : [`unit ${unit === '' ? '""' : unit}`]),
      ...(scale === undefined ? [] : [`scale ${1 / scale}`]),
    ].join(' ');
    return `  ${said === '' ? 'plain' : said}: ${title}, ${previewText({ preview })}`;
  });
}
