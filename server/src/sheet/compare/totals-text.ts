import type { Totals } from './compare';

/** How much differs and what it moves, in a sentence or two, for the top of a comparison. */
export function totalsText(count: number, { better, worse, otherwise, gained, lost }: Totals): string {
  if (count === 0) return 'No setting differs.';
  const differ = count === 1 ? 'One setting differs' : `${count} settings differ`;
  const moved = [
    ...(worse === 0 ? [] : [`${worse} worse`]),
    ...(better === 0 ? [] : [`${better} better`]),
    ...(otherwise === 0 ? [] : [`${otherwise} otherwise`]),
  ];
  const findings = [...(gained === 0 ? [] : [`${gained} new`]), ...(lost === 0 ? [] : [`${lost} gone`])];
  return [
    `${differ}.`,
    moved.length === 0 ? 'No figure moves.' : `Figures: ${moved.join(', ')}.`,
    findings.length === 0 ? 'No finding comes or goes.' : `Findings: ${findings.join(', ')}.`,
  ].join(' ');
}
